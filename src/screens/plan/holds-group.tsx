import { FIELDS } from '../../plan/index.ts';
import { LengthField } from '../../ui/index.ts';
import { fromDefault } from './default-hint.ts';
import { Group } from './group.tsx';
import type { GroupFor } from './group-for.ts';
import { HoldsFields } from './holds-fields.tsx';
import { withEach, withPier } from './plan-edits.ts';
import { holdsLine } from './plan-text.ts';

/** What every hole holds, how wide it is dug, and the same of the pier in the middle. */
export function HoldsGroup({ plan, change }: GroupFor) {
  const { each, units, shape } = plan;
  return (
    <Group title="What the holes hold" line={holdsLine(plan)}>
      <HoldsFields
        holds={each.holds}
        units={units}
        turned={shape.kind === 'ring' ? 'centre' : 'grid'}
        onChange={(holds) => change((before) => withEach(before, { holds }))}
      />
      <LengthField
        label={FIELDS.holeDiameter}
        value={each.holeDiameter}
        units={units}
        {...fromDefault('each.holeDiameter', each.holeDiameter, units)}
        onChange={(holeDiameter) => change((before) => withEach(before, { holeDiameter }))}
      />
      {shape.kind === 'ring' && shape.pier && <PierFields plan={plan} change={change} />}
    </Group>
  );
}

function PierFields({ plan, change }: GroupFor) {
  const { pier, units } = plan;
  const { holds } = pier;
  return (
    <section aria-label="The pier in the middle" class="plan-part">
      <h2>The pier in the middle</h2>
      {holds.kind === 'pier' ? (
        <LengthField
          label={FIELDS.diameter}
          value={holds.diameter}
          units={units}
          {...fromDefault('pier.diameter', holds.diameter, units)}
          onChange={(diameter) => change((before) => withPier(before, { holds: { ...holds, diameter } }))}
        />
      ) : (
        <HoldsFields
          holds={holds}
          units={units}
          turned="grid"
          onChange={(next) => change((before) => withPier(before, { holds: next }))}
        />
      )}
      <LengthField
        label={`${FIELDS.holeDiameter} of P`}
        value={pier.holeDiameter}
        units={units}
        {...fromDefault('pier.holeDiameter', pier.holeDiameter, units)}
        onChange={(holeDiameter) => change((before) => withPier(before, { holeDiameter }))}
      />
    </section>
  );
}
