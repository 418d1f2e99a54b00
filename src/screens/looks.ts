import type { HoleAssessment } from '../judge/types.ts';
import type { HoleLook } from '../ui/index.ts';
import { stateOf } from './drawn-site.ts';

/** A hole's mark once posts are set: the worst of all that is judged of the post, tick only when every part is guarded. */
export function setLook(hole: HoleAssessment): HoleLook {
  const { position, plumb, level } = hole.set;
  const state = stateOf(hole);
  if (!hole.set.done) return { state };
  const checked = position.checked && plumb.checked && level.checked;
  return { state, verdict: hole.set.verdict, checked };
}
