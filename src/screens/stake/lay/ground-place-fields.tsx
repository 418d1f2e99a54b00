import { type Choice, ChoiceField, LengthField } from '../../../ui/index.ts';
import { EXAMPLES, type Units } from '../../../units/index.ts';
import { PlaceFields } from '../place-fields.tsx';
import { type Hand, LABELS, type PlaceDraft, type Telling } from './place-draft.ts';

const TELLINGS: Record<Telling, Choice<Telling>> = {
  plan: { value: 'plan', label: 'From the plan’s centre' },
  pulls: { value: 'pulls', label: 'Two tapes', hint: 'From A and from B, held level.' },
  offset: { value: 'offset', label: 'Along and off A–B' },
};

const HANDS: readonly Choice<Hand>[] = [
  { value: 'left', label: 'left' },
  { value: 'right', label: 'right' },
];

export interface GroundPlaceFieldsProps {
  /** `Centre`, `First point`. */
  readonly name: string;
  readonly units: Units;
  /** Ways in which it can be told here. */
  readonly tellings: readonly Telling[];
  readonly draft: PlaceDraft;
  /** What changed, to be put into the draft as it is by then: two fields may be left in one frame. */
  readonly onChange: (change: Partial<PlaceDraft>) => void;
}

/** A place on the ground, told as it was measured: from the plan, by two tapes, or by station and offset. */
export function GroundPlaceFields({ name, units, tellings, draft, onChange: put }: GroundPlaceFieldsProps) {
  return (
    <>
      {tellings.length > 1 && (
        <ChoiceField
          label={`${name}: how it is told`}
          value={draft.by}
          choices={tellings.map((telling) => TELLINGS[telling])}
          onChange={(by) => put({ by })}
        />
      )}
      {draft.by === 'plan' && (
        <PlaceFields name={name} units={units} parts={draft.plan} onParts={(plan) => put({ plan })} />
      )}
      {draft.by === 'pulls' &&
        (['fromA', 'fromB'] as const).map((field) => (
          <LengthField
            key={field}
            label={LABELS[field](name)}
            value={draft[field]}
            units={units}
            bounds={{ min: 0 }}
            onChange={(length) => put({ [field]: length })}
          />
        ))}
      {draft.by === 'offset' && (
        <>
          <LengthField
            label={LABELS.station(name)}
            hint={`Such as ${EXAMPLES[units]}. A minus in front: back from A, away from B.`}
            value={draft.station}
            units={units}
            bounds={{ min: Number.NEGATIVE_INFINITY }}
            onChange={(station) => put({ station })}
          />
          <LengthField
            label={LABELS.offset(name)}
            value={draft.offset}
            units={units}
            bounds={{ min: 0 }}
            onChange={(offset) => put({ offset })}
          />
        </>
      )}
      {draft.by !== 'plan' && (
        <ChoiceField
          label={LABELS.side(name)}
          value={draft.side}
          choices={HANDS}
          onChange={(side) => put({ side })}
        />
      )}
    </>
  );
}
