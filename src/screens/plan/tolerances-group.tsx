import { FIELDS } from '../../plan/index.ts';
import { Button, LengthField } from '../../ui/index.ts';
import { fromDefault } from './default-hint.ts';
import { Group } from './group.tsx';
import type { GroupFor } from './group-for.ts';
import { LeanField } from './lean-field.tsx';
import { LEAN_LIMITS } from './limits.ts';
import { withoutTops, withTolerances } from './plan-edits.ts';
import { tolerancesLine } from './plan-text.ts';

/** How far from the plan is still in. */
export function TolerancesGroup({ plan, change }: GroupFor) {
  const { tolerances, units } = plan;
  return (
    <Group title="Tolerances" line={tolerancesLine(plan)}>
      <LengthField
        label={FIELDS.position}
        hint="How far a post may stand from its mark, at the ground, any way."
        value={tolerances.position}
        units={units}
        {...fromDefault('tolerances.position', tolerances.position, units)}
        onChange={(position) => change((before) => withTolerances(before, { position }))}
      />
      <LengthField
        label={FIELDS.spacing}
        hint="Plus or minus, between the centres of neighbours."
        value={tolerances.spacing}
        units={units}
        {...fromDefault('tolerances.spacing', tolerances.spacing, units)}
        onChange={(spacing) => change((before) => withTolerances(before, { spacing }))}
      />
      <LeanField
        key={units}
        label={FIELDS.plumb}
        hint="The greatest lean."
        ratio={tolerances.plumb}
        units={units}
        {...LEAN_LIMITS}
        {...fromDefault('tolerances.plumb', tolerances.plumb, units)}
        onChange={(plumb) => change((before) => withTolerances(before, { plumb }))}
      />
      <LengthField
        label={FIELDS.level}
        hint="Plus or minus, of a top against the benchmark."
        value={tolerances.level}
        units={units}
        {...fromDefault('tolerances.level', tolerances.level, units)}
        onChange={(level) => change((before) => withTolerances(before, { level }))}
      />
      <LengthField
        label={FIELDS.tops}
        hint={
          tolerances.tops
            ? 'Plus or minus, of the tops among themselves.'
            : 'Plus or minus, of the tops among themselves. Not given: as the level tolerance.'
        }
        value={tolerances.tops ?? null}
        units={units}
        onChange={(tops) => change((before) => withTolerances(before, { tops }))}
      />
      {tolerances.tops && <Button onPress={() => change(withoutTops)}>Tops as the level tolerance</Button>}
    </Group>
  );
}
