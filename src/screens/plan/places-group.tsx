import { useState } from 'preact/hooks';
import type { Plan, Points } from '../../job/plan-schema.ts';
import { Button, ButtonRow } from '../../ui/index.ts';
import { CsvSheet } from './csv-sheet.tsx';
import { Group } from './group.tsx';
import { pointWords, sizeLine } from './plan-text.ts';
import { PointSheet } from './point-sheet.tsx';
import type { ChangePlan } from './use-plan-edits.ts';

export interface PlacesGroupProps {
  readonly plan: Plan;
  readonly shape: Points;
  readonly change: ChangePlan;
}

type Open = { readonly what: 'add' | 'csv' } | { readonly what: 'point'; readonly label: string } | null;

/** Rows shown before the rest is asked for. */
const ROWS_SHOWN = 12;

/** The places of free holes: typed one by one, or brought in as a list. */
export function PlacesGroup({ plan, shape, change }: PlacesGroupProps) {
  const [open, setOpen] = useState<Open>(null);
  const [all, setAll] = useState(false);
  const close = () => setOpen(null);
  const shown = all ? shape.points : shape.points.slice(0, ROWS_SHOWN);
  return (
    <Group title="Places" line={sizeLine(shape)}>
      <p>Measured from the plan’s centre: to the right of it, and to the front of it.</p>
      <ul class="plan-points" aria-label="Holes and their places">
        {shown.map((point) => (
          <li key={point.label}>
            <Button onPress={() => setOpen({ what: 'point', label: point.label })}>
              {`Hole ${point.label}: ${pointWords(point, plan.units)}`}
            </Button>
          </li>
        ))}
      </ul>
      {shown.length < shape.points.length && (
        <Button onPress={() => setAll(true)}>Show all {shape.points.length}</Button>
      )}
      <ButtonRow>
        <Button onPress={() => setOpen({ what: 'add' })}>Add a hole</Button>
        <Button onPress={() => setOpen({ what: 'csv' })}>Bring in a list</Button>
      </ButtonRow>
      {open?.what === 'add' && (
        <PointSheet plan={plan} shape={shape} before={null} change={change} onClose={close} />
      )}
      {open?.what === 'point' && (
        <PointSheet plan={plan} shape={shape} before={open.label} change={change} onClose={close} />
      )}
      {open?.what === 'csv' && <CsvSheet plan={plan} change={change} onClose={close} />}
    </Group>
  );
}
