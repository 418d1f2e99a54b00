import { FIELDS } from '../../plan/index.ts';
import { Button, LengthField } from '../../ui/index.ts';
import { fromDefault } from './default-hint.ts';
import { Group } from './group.tsx';
import type { GroupFor } from './group-for.ts';
import { FROM_ZERO, GRAVEL, IN_THE_GROUND } from './limits.ts';
import { withoutCover, withRules } from './plan-edits.ts';
import { rulesLine } from './plan-text.ts';

/** What the depth of every hole follows from. The frost depth is asked for, never assumed. */
export function RulesGroup({ plan, change }: GroupFor) {
  const { rules, units } = plan;
  return (
    <Group title="Depth rules" line={rulesLine(plan)}>
      <LengthField
        label={FIELDS.frostDepth}
        hint={
          rules.frostDepth
            ? 'As the local building office says. 0 where the ground does not freeze.'
            : 'Ask the local building office. 0 where the ground does not freeze.'
        }
        value={rules.frostDepth}
        units={units}
        bounds={IN_THE_GROUND}
        onChange={(frostDepth) => change((before) => withRules(before, { frostDepth }))}
      />
      <LengthField
        label={FIELDS.gravel}
        hint="Under the concrete. 0 for none."
        value={rules.gravel}
        units={units}
        bounds={GRAVEL}
        {...fromDefault('rules.gravel', rules.gravel, units)}
        onChange={(gravel) => change((before) => withRules(before, { gravel }))}
      />
      <LengthField
        label={FIELDS.embedment}
        hint="The least length of post or pier in the ground."
        value={rules.embedment}
        units={units}
        bounds={IN_THE_GROUND}
        {...fromDefault('rules.embedment', rules.embedment, units)}
        onChange={(embedment) => change((before) => withRules(before, { embedment }))}
      />
      <LengthField
        label={FIELDS.cover}
        hint="Between the post and the earth, all round. Empty: 2″ or 50 mm, our choice."
        value={rules.cover ?? null}
        units={units}
        bounds={FROM_ZERO}
        onChange={(cover) => change((before) => withRules(before, { cover }))}
      />
      {rules.cover && <Button onPress={() => change(withoutCover)}>Back to the usual cover</Button>}
    </Group>
  );
}
