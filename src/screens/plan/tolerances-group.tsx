import { FIELDS, TWIST } from '../../plan/index.ts';
import { Button, LengthField, NumberField } from '../../ui/index.ts';
import { fromDefault } from './default-hint.ts';
import { Group } from './group.tsx';
import type { GroupFor } from './group-for.ts';
import { LeanField } from './lean-field.tsx';
import { LEAN_LIMITS } from './limits.ts';
import { withoutTops, withTolerances } from './plan-edits.ts';
import { tolerancesLine } from './plan-text.ts';

/** Degrees, as the plan's schema takes them. */
const LEAST_TWIST = 0.1;
const MOST_TWIST = 20;

const degreesOf = (radians: number): number => Math.round((radians * 1800) / Math.PI) / 10;

/** How far from the plan is still in. */
export function TolerancesGroup({ plan, change }: GroupFor) {
  const { tolerances, units } = plan;
  return (
    <Group title="Tolerances" line={tolerancesLine(plan)}>
      <LengthField
        label={FIELDS.position}
        hint="How far a post may stand from its mark, at the ground, any way. A stake may stand twice as far out: the hole has room."
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
      <NumberField
        label={FIELDS.twist}
        hint="Plus or minus, of a square post about itself. Nobody has to measure it."
        value={degreesOf(tolerances.twist ?? TWIST.usual)}
        min={LEAST_TWIST}
        max={MOST_TWIST}
        suffix="°"
        {...(tolerances.twist === undefined ? { usual: TWIST.from } : {})}
        onChange={(degrees) =>
          change((before) => withTolerances(before, { twist: (degrees * Math.PI) / 180 }))
        }
      />
      {tolerances.tops && <Button onPress={() => change(withoutTops)}>Tops as the level tolerance</Button>}
    </Group>
  );
}
