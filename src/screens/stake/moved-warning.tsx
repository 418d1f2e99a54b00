import { Caution } from '../../ui/index.ts';

/** Before A and B are moved: what it costs. */
export function MovedWarning() {
  return (
    <Caution title="stakes driven before">
      Once A and B have other places, every stake driven from the old ones no longer fits, and its pulls no
      longer count: A, B and all holes are staked anew.
    </Caution>
  );
}
