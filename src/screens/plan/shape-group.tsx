import type { Ring, Rows, Shape } from '../../job/plan-schema.ts';
import { FIELDS } from '../../plan/index.ts';
import { CheckField, type Choice, ChoiceField, NumberField } from '../../ui/index.ts';
import { Group } from './group.tsx';
import type { GroupFor } from './group-for.ts';
import { withRing, withRows, withShapeKind } from './plan-edits.ts';
import { shapeLine } from './plan-text.ts';
import type { ChangePlan } from './use-plan-edits.ts';

const KINDS: readonly Choice<Shape['kind']>[] = [
  { value: 'ring', label: 'Ring', hint: 'round or many-sided' },
  { value: 'rows', label: 'Rows', hint: 'rectangular' },
  { value: 'points', label: 'Points', hint: 'each hole placed by itself' },
];

const FRONTS: readonly Choice<Ring['front']>[] = [
  { value: 'post', label: 'A post' },
  { value: 'flat', label: 'A flat' },
];

/** Bounds of the plan's schema. */
const RING_COUNT = { min: 3, max: 60, whole: true } as const;
const GRID_COUNT = { min: 1, max: 40, whole: true } as const;

/** What the holes form, and how many there are. */
export function ShapeGroup({ plan, change }: GroupFor) {
  const { shape } = plan;
  return (
    <Group title="Shape" line={shapeLine(shape)}>
      <ChoiceField
        label="The holes form"
        value={shape.kind}
        choices={KINDS}
        onChange={(kind) => change((before) => withShapeKind(before, kind))}
      />
      {shape.kind === 'ring' && <RingFields ring={shape} change={change} />}
      {shape.kind === 'rows' && <RowsFields rows={shape} change={change} />}
      {shape.kind === 'points' && <p>The holes’ places are in the next group.</p>}
    </Group>
  );
}

function RingFields({ ring, change }: { readonly ring: Ring; readonly change: ChangePlan }) {
  return (
    <>
      <NumberField
        label={FIELDS.count}
        value={ring.count}
        {...RING_COUNT}
        onChange={(count) => change((plan) => withRing(plan, { count }))}
      />
      <ChoiceField
        label="At the front stands"
        hint="The front is the top of the drawing."
        value={ring.front}
        choices={FRONTS}
        onChange={(front) => change((plan) => withRing(plan, { front }))}
      />
      <CheckField
        label="A pier in the middle, hole P"
        value={ring.pier}
        onChange={(pier) => change((plan) => withRing(plan, { pier }))}
      />
    </>
  );
}

function RowsFields({ rows, change }: { readonly rows: Rows; readonly change: ChangePlan }) {
  return (
    <>
      <NumberField
        label={FIELDS.columns}
        hint="Posts from left to right."
        value={rows.columns}
        {...GRID_COUNT}
        onChange={(columns) => change((plan) => withRows(plan, { columns }))}
      />
      <NumberField
        label={FIELDS.rows}
        hint="Posts from front to back."
        value={rows.rows}
        {...GRID_COUNT}
        onChange={(count) => change((plan) => withRows(plan, { rows: count }))}
      />
    </>
  );
}
