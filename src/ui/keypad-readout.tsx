import type { Units } from '../units/index.ts';
import { fractionText, goToStage, type KeypadEntry, type Stage } from './keypad-entry.ts';

export interface KeypadReadoutProps {
  readonly entry: KeypadEntry;
  readonly units: Units;
  readonly onEntry: (entry: KeypadEntry) => void;
}

const UNIT_MARKS: Record<Units, string> = { 'ft-in-16': '', 'ft-in-32': '', ft: 'ft', m: 'm', mm: 'mm' };

/** What was entered, in large figures. In pieces, each piece can be tapped to change it. */
export function KeypadReadout({ entry, units, onEntry }: KeypadReadoutProps) {
  if (entry.how === 'typed') {
    const bare = /^[\d.,\s]*$/.test(entry.text);
    return (
      <p class="readout readout-typed">
        {entry.text}
        <span class="readout-caret" aria-hidden="true" />
        {bare && UNIT_MARKS[units] && <span class="readout-unit">{UNIT_MARKS[units]}</span>}
      </p>
    );
  }
  const piece = (stage: Stage, name: string, text: string, mark: string) => (
    <button
      type="button"
      class={`piece piece-${stage}`}
      aria-current={entry.stage === stage ? 'step' : undefined}
      onMouseDown={(event) => event.preventDefault()}
      onClick={() => onEntry(goToStage(entry, stage))}
    >
      <span class="piece-figure">
        <span class="piece-text">{text}</span>
        {text && mark}
      </span>{' '}
      <span class="piece-name">{name}</span>
    </button>
  );
  const fraction = entry.fraction === null ? '' : fractionText(entry.fraction, entry.denominator);
  return (
    <div class="readout">
      {piece('feet', 'feet', entry.feet, '′')}
      {piece('inches', 'inches', entry.inches, '')}
      {piece('fraction', 'fraction', fraction, '″')}
    </div>
  );
}
