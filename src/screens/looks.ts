import type { HoleAssessment } from '../judge/types.ts';
import type { HoleLook, HoleState } from '../ui/index.ts';

/** How far a hole has come, whatever phase is on the screen. */
export function stateOf({ staked, dug, set, poured }: HoleAssessment): HoleState {
  if (poured) return 'poured';
  if (set.done) return 'set';
  if (dug.at !== null) return 'dug';
  return staked.driven ? 'staked' : 'planned';
}

/** A hole's mark once posts are set: the worst of all that is judged of the post, tick only when every part is guarded. */
export function setLook(hole: HoleAssessment): HoleLook {
  const { position, plumb, level } = hole.set;
  const state = stateOf(hole);
  if (!hole.set.done) return { state };
  const checked = position.checked && plumb.checked && level.checked;
  return { state, verdict: hole.set.verdict, checked };
}
