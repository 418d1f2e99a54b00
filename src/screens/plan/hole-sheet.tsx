import { FIELDS } from '../../plan/index.ts';
import { Button, LengthField, Sheet } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import type { GroupFor } from './group-for.ts';
import { HoldsFields } from './holds-fields.tsx';
import { ANY_HEIGHT } from './limits.ts';
import { isMiddlePier, ownOf, specOf, withOwn, withoutOwn } from './plan-edits.ts';
import { ownWords } from './plan-text.ts';

export interface HoleSheetProps extends GroupFor {
  readonly hole: string;
  readonly onClose: () => void;
}

/** What one hole holds, and its size and height, where they differ from all the others'. */
export function HoleSheet({ plan, change, hole, onClose }: HoleSheetProps) {
  const spec = specOf(plan, hole);
  const own = ownOf(plan, hole);
  const { units } = plan;
  const clear = () => {
    change((before) => withoutOwn(before, hole));
    onClose();
  };
  return (
    <Sheet
      title={`Hole ${hole}`}
      onClose={onClose}
      actions={own && <Button onPress={clear}>Make it like the others</Button>}
    >
      <p>{unbroken(standing(isMiddlePier(plan, hole), own && ownWords(own, units)))}</p>
      <HoldsFields
        holds={spec.holds}
        units={units}
        turned={plan.shape.kind === 'ring' ? 'centre' : 'grid'}
        onChange={(holds) => change((before) => withOwn(before, hole, { holds }))}
      />
      <LengthField
        label={FIELDS.holeDiameter}
        value={spec.holeDiameter}
        units={units}
        onChange={(holeDiameter) => change((before) => withOwn(before, hole, { holeDiameter }))}
      />
      <LengthField
        label={FIELDS.top}
        hint="Above the benchmark; a minus in front puts it below."
        value={spec.top}
        units={units}
        bounds={ANY_HEIGHT}
        onChange={(top) => change((before) => withOwn(before, hole, { top }))}
      />
    </Sheet>
  );
}

function standing(middle: boolean, own: string | null): string {
  if (middle) return 'The pier in the middle. What is changed here is saved at once.';
  if (own) return `Of its own it has: ${own}.`;
  return 'Now like the others. What is changed here is saved at once, for this hole alone.';
}
