import { useState } from 'preact/hooks';
import { Button, ChoiceField, Sheet } from '../ui/index.ts';
import { TextInput } from '../ui/text-input.tsx';
import { EXAMPLES, forceScale, temperatureScale } from '../units/index.ts';
import { useJobBook } from './job-book.ts';
import {
  PULLING_FIELDS,
  type PullingFaults,
  type PullingTexts,
  pullingTexts,
  readPulling,
} from './read-pulling.ts';
import { useChooseTape } from './tape-in-hand.tsx';

/** No tape of the plan is called by nothing. */
const NO_CORRECTION = '';

const NO_FAULTS: PullingFaults = { temperature: null, tension: null, spans: null };

/** Takes a tape in hand: which of the plan's, and where that was noted how warm it is and how it is pulled. */
export function TapeSheet({ onClose }: { readonly onClose: () => void }) {
  const { situation } = useJobBook();
  const choose = useChooseTape();
  const { plan, inHand } = situation;
  const before = inHand?.pulling ?? {};
  const [label, setLabel] = useState(inHand?.tape.label ?? NO_CORRECTION);
  const [texts, setTexts] = useState<PullingTexts>(() => pullingTexts(before, plan?.units ?? 'm'));
  const [faults, setFaults] = useState(NO_FAULTS);
  if (!plan) return null;
  const { units } = plan;
  const tapes = plan.instruments.tapes ?? [];
  const tape = tapes.find((one) => one.label === label) ?? null;
  const take = () => {
    const read = tape ? readPulling(texts, units, before) : null;
    if (read && 'faults' in read) return setFaults(read.faults);
    choose(tape && read ? { tape, pulling: read.pulling } : null);
    onClose();
  };
  const draft = (field: keyof PullingTexts) => ({
    text: texts[field],
    error: faults[field],
    edit: (text: string) => setTexts((now) => ({ ...now, [field]: text })),
    commit: () => {},
  });
  return (
    <Sheet
      title="The tape in hand"
      onClose={onClose}
      actions={
        <Button kind="main" onPress={take}>
          {tape ? `Take tape ${tape.label}` : 'Take a tape as printed'}
        </Button>
      }
    >
      <ChoiceField
        label="Which tape"
        value={label}
        choices={[
          ...tapes.map((one) => ({ value: one.label, label: `Tape ${one.label}` })),
          { value: NO_CORRECTION, label: 'Another', hint: 'It needs no correction.' },
        ]}
        onChange={setLabel}
      />
      {tape && (
        <>
          <p>Leave empty what nobody noted: it is then taken as the tape’s own standard says.</p>
          <TextInput
            label={PULLING_FIELDS.temperature}
            hint="In the sun a tape is warmer than the air."
            suffix={temperatureScale(units).mark}
            draft={draft('temperature')}
          />
          <TextInput
            label={PULLING_FIELDS.tension}
            hint="By a spring balance, or as near as your arm knows."
            suffix={forceScale(units).mark}
            draft={draft('tension')}
          />
          <TextInput
            label={PULLING_FIELDS.spans}
            hint={`Of the next pull: such as ${EXAMPLES[units]}, with a + between two. Empty where it lay on something.`}
            draft={draft('spans')}
          />
        </>
      )}
    </Sheet>
  );
}
