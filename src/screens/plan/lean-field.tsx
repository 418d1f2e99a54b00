import { useState } from 'preact/hooks';
import { roundedLength } from '../../job/length.ts';
import { LengthField } from '../../ui/length-field.tsx';
import type { Units } from '../../units/index.ts';
import { GapField, type GapFieldProps } from './gap-field.tsx';
import { leanBase } from './lean-base.ts';

export interface LeanFieldProps extends Omit<GapFieldProps, 'over'> {
  readonly units: Units;
}

/** Shortest and longest length that a lean is told over, metres: a pocket level, a tall post. */
const SHORTEST_M = 0.1;
const LONGEST_M = 10;

/** A lean as the drawing gives it: so much over such a length. The gap stays as typed when its length changes. */
export function LeanField({ ratio, units, least, most, onChange, ...words }: LeanFieldProps) {
  const [over, setOver] = useState(() => roundedLength(leanBase(units).metres, units));
  const gap = ratio * over.m;
  return (
    <>
      <GapField
        {...words}
        ratio={ratio}
        over={over.m}
        units={units}
        least={least}
        most={most}
        onChange={onChange}
      />
      <LengthField
        label={`${words.label}, over`}
        hint="The length that the lean is given for."
        value={over}
        units={units}
        bounds={{ min: Math.max(SHORTEST_M, gap / most), max: Math.min(LONGEST_M, gap / least) }}
        onChange={(length) => {
          setOver(length);
          onChange(gap / length.m);
        }}
      />
    </>
  );
}
