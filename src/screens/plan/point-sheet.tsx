import { useState } from 'preact/hooks';
import type { Plan, Points } from '../../job/plan-schema.ts';
import { Button, Sheet } from '../../ui/index.ts';
import { TextInput } from '../../ui/text-input.tsx';
import { nextLabel, withoutPoint, withPoint } from './plan-edits.ts';
import { POINT_FIELDS, type PointFaults, type PointTexts, readPoint, textsOf } from './read-point.ts';
import type { ChangePlan } from './use-plan-edits.ts';

export interface PointSheetProps {
  readonly plan: Plan;
  readonly shape: Points;
  /** Label of the hole that is changed; null to add one. */
  readonly before: string | null;
  readonly change: ChangePlan;
  readonly onClose: () => void;
}

const NO_FAULTS: PointFaults = { label: null, right: null, front: null };

/** One free hole: its label and its place. Nothing is changed until all three can be read. */
export function PointSheet({ plan, shape, before, change, onClose }: PointSheetProps) {
  const { units } = plan;
  const point = shape.points.find(({ label }) => label === before) ?? null;
  const [texts, setTexts] = useState<PointTexts>(() =>
    point ? textsOf(point, units) : { label: nextLabel(shape.points), right: '', front: '' },
  );
  const [faults, setFaults] = useState(NO_FAULTS);
  const save = () => {
    const others = shape.points.filter((other) => other !== point).map(({ label }) => label);
    const read = readPoint(texts, units, others, point);
    if ('faults' in read) return setFaults(read.faults);
    change((plan) => withPoint(plan, point?.label ?? null, read.point));
    onClose();
  };
  const remove = (label: string) => {
    change((plan) => withoutPoint(plan, label));
    onClose();
  };
  const draft = (field: keyof PointTexts) => ({
    text: texts[field],
    error: faults[field],
    edit: (text: string) => setTexts((now) => ({ ...now, [field]: text })),
    commit: () => {},
  });
  const actions = (
    <>
      {point && (
        <Button kind="danger" onPress={() => remove(point.label)}>
          Remove hole {point.label}
        </Button>
      )}
      <Button kind="main" onPress={save}>
        {point ? 'Change it' : 'Add it'}
      </Button>
    </>
  );
  return (
    <Sheet title={point ? `Place of hole ${point.label}` : 'Add a hole'} onClose={onClose} actions={actions}>
      <TextInput label={POINT_FIELDS.label} hint="What is painted on its stake." draft={draft('label')} />
      <TextInput
        label={POINT_FIELDS.right}
        hint="Of the plan’s centre. A minus in front: to the left."
        draft={draft('right')}
      />
      <TextInput
        label={POINT_FIELDS.front}
        hint="Of the plan’s centre. A minus in front: behind it."
        draft={draft('front')}
      />
    </Sheet>
  );
}
