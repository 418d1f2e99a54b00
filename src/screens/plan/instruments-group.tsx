import { FIELDS } from '../../plan/index.ts';
import { Button, LengthField } from '../../ui/index.ts';
import { fromDefault } from './default-hint.ts';
import { GapField } from './gap-field.tsx';
import { Group } from './group.tsx';
import type { GroupFor } from './group-for.ts';
import { leanBase, tapeBase } from './lean-base.ts';
import { LEAN_LIMITS, TAPE_GROWTH_LIMITS, TAPE_LENGTH } from './limits.ts';
import { withInstruments, withoutRodLength } from './plan-edits.ts';
import { instrumentsLine } from './plan-text.ts';
import { TapeList } from './tape-list.tsx';

/** The tape, the level and the rod, and how well they read. */
export function InstrumentsGroup({ plan, change }: GroupFor) {
  const { instruments, units } = plan;
  return (
    <Group title="Tape and level" line={instrumentsLine(plan)}>
      <p>An error here is how near to the truth two of three careful readings lie.</p>
      <LengthField
        label={FIELDS.tapeLength}
        value={instruments.tapeLength}
        units={units}
        bounds={TAPE_LENGTH}
        {...fromDefault('instruments.tapeLength', instruments.tapeLength, units)}
        onChange={(tapeLength) => change((before) => withInstruments(before, { tapeLength }))}
      />
      <LengthField
        label={FIELDS.tapeError}
        hint="Of one pull, however short."
        value={instruments.tapeError}
        units={units}
        {...fromDefault('instruments.tapeError', instruments.tapeError, units)}
        onChange={(tapeError) => change((before) => withInstruments(before, { tapeError }))}
      />
      <GapField
        label={FIELDS.tapeErrorPerMetre}
        hint={`What a pull of ${tapeBase(units).words} adds to it.`}
        ratio={instruments.tapeErrorPerMetre}
        over={tapeBase(units).metres}
        units={units}
        {...TAPE_GROWTH_LIMITS}
        {...fromDefault('instruments.tapeErrorPerMetre', instruments.tapeErrorPerMetre, units)}
        onChange={(tapeErrorPerMetre) => change((before) => withInstruments(before, { tapeErrorPerMetre }))}
      />
      <TapeList plan={plan} change={change} />
      <GapField
        label={FIELDS.plumbError}
        hint={`Of the level held upright, in ${leanBase(units).words}.`}
        ratio={instruments.plumbError}
        over={leanBase(units).metres}
        units={units}
        {...LEAN_LIMITS}
        {...fromDefault('instruments.plumbError', instruments.plumbError, units)}
        onChange={(plumbError) => change((before) => withInstruments(before, { plumbError }))}
      />
      <LengthField
        label={FIELDS.rodError}
        hint="Of one reading."
        value={instruments.rodError}
        units={units}
        {...fromDefault('instruments.rodError', instruments.rodError, units)}
        onChange={(rodError) => change((before) => withInstruments(before, { rodError }))}
      />
      <LengthField
        label={FIELDS.rodLength}
        hint={
          instruments.rodLength
            ? 'From its foot to its head, as it is used.'
            : 'From its foot to its head. Not given: a rod that stood on its head is then not told.'
        }
        value={instruments.rodLength ?? null}
        units={units}
        onChange={(rodLength) => change((before) => withInstruments(before, { rodLength }))}
      />
      {instruments.rodLength && (
        <Button onPress={() => change(withoutRodLength)}>Rod length not given</Button>
      )}
    </Group>
  );
}
