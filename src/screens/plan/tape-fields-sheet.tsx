import { useState } from 'preact/hooks';
import type { Plan, TapeSpec } from '../../job/plan-schema.ts';
import { STANDARD_TEMPERATURE_C } from '../../measure/index.ts';
import { Button, ChoiceField, Problem, Sheet } from '../../ui/index.ts';
import { TextInput } from '../../ui/text-input.tsx';
import { forceScale, isMetric, temperatureScale, weightScale } from '../../units/index.ts';
import { More } from '../more.tsx';
import { withoutTape, withTape } from './plan-edits.ts';
import { NO_TAPE_FAULTS, readTape, TAPE_FIELDS, type TapeFaults, tapeTexts } from './read-tape.ts';
import type { ChangePlan } from './use-plan-edits.ts';

export interface TapeFieldsSheetProps {
  readonly plan: Plan;
  /** The tape that is changed; null to add one. */
  readonly before: TapeSpec | null;
  readonly change: ChangePlan;
  readonly onClose: () => void;
}

/** One tape that does not read true, as far as it is known. Nothing is changed until every field can be read. */
export function TapeFieldsSheet({ plan, before, change, onClose }: TapeFieldsSheetProps) {
  const { units } = plan;
  const [texts, setTexts] = useState(() => tapeTexts(before, units));
  const [faults, setFaults] = useState<TapeFaults>(NO_TAPE_FAULTS);
  const save = () => {
    const others = (plan.instruments.tapes ?? []).filter(({ label }) => label !== before?.label);
    const read = readTape(
      texts,
      units,
      others.map(({ label }) => label),
      before,
    );
    if ('faults' in read) return setFaults(read.faults);
    change((now) => withTape(now, before?.label ?? null, read.tape));
    onClose();
  };
  const remove = (label: string) => {
    change((now) => withoutTape(now, label));
    onClose();
  };
  const set = (part: Partial<typeof texts>) => setTexts((now) => ({ ...now, ...part }));
  const draft = (field: keyof TapeFaults) => ({
    text: texts[field],
    error: faults[field],
    edit: (text: string) => set({ [field]: text }),
    commit: () => {},
  });
  const hundred = isMetric(units) ? '30 m' : '100′ 0″';
  const really = isMetric(units) ? '30.006 m' : '100′ 0 1/4″';
  const bend = isMetric(units) ? '2 mm' : '1/16″';
  const warmth = temperatureScale(units);
  const force = forceScale(units).mark;
  // Its field may be folded away.
  const further = faults.temperature ?? faults.tension ?? faults.stiffness ?? faults.weight;
  return (
    <Sheet
      title={before ? `Tape ${before.label}` : 'Add a tape'}
      onClose={onClose}
      actions={
        <>
          {further && <Problem text={further} />}
          {before && (
            <Button kind="danger" onPress={() => remove(before.label)}>
              Remove tape {before.label}
            </Button>
          )}
          <Button kind="main" onPress={save}>
            {before ? 'Change it' : 'Add it'}
          </Button>
        </>
      }
    >
      <TextInput label={TAPE_FIELDS.label} hint="A word or a colour, such as Red." draft={draft('label')} />
      <TextInput
        label={TAPE_FIELDS.nominal}
        hint={`As printed, such as ${hundred}.`}
        draft={draft('nominal')}
      />
      <TextInput
        label={TAPE_FIELDS.actual}
        hint={`By a tape that is known to be right, such as ${really}. The same length where it reads true.`}
        draft={draft('actual')}
      />
      <ChoiceField
        label="Its end or hook"
        value={texts.end}
        choices={[
          { value: 'none', label: 'Is good' },
          { value: 'long', label: 'Makes readings too long' },
          { value: 'short', label: 'Makes readings too short' },
        ]}
        onChange={(end) => set({ end })}
      />
      {texts.end !== 'none' && (
        <TextInput
          label={TAPE_FIELDS.zero}
          hint={`A hook bent by ${bend}: type ${bend}.`}
          draft={draft('zero')}
        />
      )}
      <ChoiceField
        label="It is made of"
        value={texts.material}
        choices={[
          { value: 'steel', label: 'Steel', hint: 'It grows as it warms.' },
          { value: 'other', label: 'Something else', hint: 'Warmth is left out.' },
        ]}
        onChange={(material) => set({ material })}
      />
      <More label="How warm and how tight it is true">
        <p>It is printed on a good tape. Leave empty what is not.</p>
        <TextInput
          label={TAPE_FIELDS.temperature}
          hint={`Taken as ${warmth.fromSI(STANDARD_TEMPERATURE_C)} when empty.`}
          suffix={warmth.mark}
          draft={draft('temperature')}
        />
        <TextInput
          label={TAPE_FIELDS.tension}
          hint={isMetric(units) ? 'Such as 50.' : 'Such as 11.'}
          suffix={force}
          draft={draft('tension')}
        />
        <TextInput
          label={TAPE_FIELDS.stiffness}
          hint="Its cross-section times its modulus, for one that is pulled harder or softer than that."
          suffix={force}
          draft={draft('stiffness')}
        />
        <TextInput
          label={TAPE_FIELDS.weight}
          hint="For one that hangs free, and so sags."
          suffix={weightScale(units).mark}
          draft={draft('weight')}
        />
      </More>
    </Sheet>
  );
}
