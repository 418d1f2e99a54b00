import { FIELDS } from '../../plan/index.ts';
import { ChoiceField, TextField } from '../../ui/index.ts';
import { MOST_NAME, UNIT_CHOICES } from '../job-choices.ts';
import { Group } from './group.tsx';
import type { GroupFor } from './group-for.ts';
import { withName, withUnits } from './plan-edits.ts';
import { nameLine } from './plan-text.ts';

export function NameGroup({ plan, change }: GroupFor) {
  return (
    <Group title="Name and units" line={nameLine(plan)}>
      <TextField
        label={FIELDS.name}
        value={plan.name}
        maxLength={MOST_NAME}
        required
        onChange={(name) => change((before) => withName(before, name))}
      />
      <ChoiceField
        label="Your tape is marked in"
        hint="Other units change how lengths are written, never how long they are."
        value={plan.units}
        choices={UNIT_CHOICES}
        onChange={(units) => change((before) => withUnits(before, units))}
      />
    </Group>
  );
}
