import type { Plan, Ring, Rows } from '../../job/plan-schema.ts';
import { FIELDS, rowsFields } from '../../plan/index.ts';
import { type Choice, ChoiceField, LengthField } from '../../ui/index.ts';
import { fromDefault } from './default-hint.ts';
import { Group } from './group.tsx';
import type { GroupFor } from './group-for.ts';
import { PlacesGroup } from './places-group.tsx';
import { withRing, withRows } from './plan-edits.ts';
import { ringSizesLine, sectionOfEach, sizeLine } from './plan-text.ts';
import type { ChangePlan } from './use-plan-edits.ts';

const RING_SIZES: readonly Choice<Ring['sizeBy']>[] = [
  { value: 'radius', label: 'Middle to centres', hint: 'half of a diameter' },
  { value: 'outer-faces', label: 'Middle to outer faces', hint: 'half of the circle over the faces' },
  { value: 'flat-to-flat', label: 'Flat to flat', hint: 'right across, between centres' },
  { value: 'side', label: 'Side', hint: 'neighbour to neighbour, between centres' },
];

const MEASURED_TO: readonly Choice<Rows['measuredTo']>[] = [
  { value: 'centres', label: 'Centre to centre', hint: 'from one post to the next' },
  { value: 'out-to-out', label: 'Out to out', hint: 'the whole, over the outer faces' },
];

/** How large the shape is, by whichever number the drawing gives. */
export function SizeGroup({ plan, change }: GroupFor) {
  const { shape } = plan;
  if (shape.kind === 'points') return <PlacesGroup plan={plan} shape={shape} change={change} />;
  return (
    <Group title="Size" line={sizeLine(shape)}>
      {shape.kind === 'ring' ? (
        <RingSize plan={plan} ring={shape} change={change} />
      ) : (
        <RowsSize plan={plan} rows={shape} change={change} />
      )}
    </Group>
  );
}

interface RingSizeProps {
  readonly plan: Plan;
  readonly ring: Ring;
  readonly change: ChangePlan;
}

function RingSize({ plan, ring, change }: RingSizeProps) {
  const others = ringSizesLine(ring, sectionOfEach(plan), plan.units);
  return (
    <>
      <ChoiceField
        label="The drawing gives"
        value={ring.sizeBy}
        choices={RING_SIZES}
        onChange={(sizeBy) => change((before) => withRing(before, { sizeBy }))}
      />
      <LengthField
        label={FIELDS.size}
        value={ring.size}
        units={plan.units}
        {...fromDefault('shape.size', ring.size, plan.units)}
        onChange={(size) => change((before) => withRing(before, { size }))}
      />
      {others && <p>{others}</p>}
    </>
  );
}

interface RowsSizeProps {
  readonly plan: Plan;
  readonly rows: Rows;
  readonly change: ChangePlan;
}

function RowsSize({ plan, rows, change }: RowsSizeProps) {
  return (
    <>
      <ChoiceField
        label="The drawing gives"
        value={rows.measuredTo}
        choices={MEASURED_TO}
        onChange={(measuredTo) => change((before) => withRows(before, { measuredTo }))}
      />
      {rows.columns > 1 && (
        <LengthField
          label={rowsFields(rows).columns}
          value={rows.columnSpacing}
          units={plan.units}
          {...fromDefault('shape.size', rows.columnSpacing, plan.units)}
          onChange={(columnSpacing) => change((before) => withRows(before, { columnSpacing }))}
        />
      )}
      {rows.rows > 1 && (
        <LengthField
          label={rowsFields(rows).rows}
          value={rows.rowSpacing}
          units={plan.units}
          {...fromDefault('shape.size', rows.rowSpacing, plan.units)}
          onChange={(rowSpacing) => change((before) => withRows(before, { rowSpacing }))}
        />
      )}
    </>
  );
}
