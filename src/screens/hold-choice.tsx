import type { Hold } from '../job/entry-schema.ts';
import { type Choice, ChoiceField } from '../ui/index.ts';
import { TapeChoice } from './tape-choice.tsx';

type How = Hold['how'];

const HOLDS: readonly Choice<How>[] = [
  { value: 'level', label: 'Level' },
  { value: 'slope', label: 'Sloping' },
];

/** How a pull's tape is held, in the words that stand beside its length. */
export const HELD: Record<How, string> = { level: 'tape level', slope: 'tape along the slope' };

export interface HoldChoiceProps {
  readonly value: How;
  readonly onChange: (how: How) => void;
}

export function HoldChoice({ value, onChange }: HoldChoiceProps) {
  return (
    <>
      <ChoiceField label="I hold the tape" value={value} choices={HOLDS} onChange={onChange} />
      <TapeChoice />
    </>
  );
}
