import { roundedLength } from '../../job/length.ts';
import type { FieldWords } from '../../ui/field.tsx';
import { LengthField } from '../../ui/length-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { isMetric, stepOf, type Units } from '../../units/index.ts';
import { gapInMm } from './lean-base.ts';

export interface GapFieldProps extends FieldWords {
  /** Metres per metre. */
  readonly ratio: number;
  /** The length over which the gap is told, metres. */
  readonly over: number;
  readonly units: Units;
  /** Bounds of the ratio, as the plan's schema has them. */
  readonly least: number;
  readonly most: number;
  readonly onChange: (ratio: number) => void;
}

const MM_PER_METRE = 1000;

/** A small slope, typed as a gap over a length: `1/4″` in ten feet, `2` mm in a metre. */
export function GapField({ ratio, over, units, least, most, onChange, ...words }: GapFieldProps) {
  if (isMetric(units)) {
    return (
      <NumberField
        {...words}
        value={gapInMm(ratio * over)}
        min={gapInMm(least * over)}
        max={gapInMm(most * over)}
        suffix="mm"
        onChange={(mm) => onChange(mm / MM_PER_METRE / over)}
      />
    );
  }
  // A least below the tape's own step would be refused as "less than 0".
  const min = least === 0 ? 0 : Math.max(least * over, stepOf(units));
  return (
    <LengthField
      {...words}
      value={roundedLength(ratio * over, units)}
      units={units}
      bounds={{ min, max: most * over }}
      onChange={({ m }) => onChange(m / over)}
    />
  );
}
