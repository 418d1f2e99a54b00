import type { HoleAssessment } from '../judge/types.ts';
import type { HoleLook } from '../ui/index.ts';
import { stateOf } from './drawn-site.ts';

/** Whether a spare reading guards all that is judged of a set post. */
export const isGuarded = ({ set: { position, plumb, level } }: Pick<HoleAssessment, 'set'>): boolean =>
  position.checked && plumb.checked && level.checked;

/** A post that needs no more: all of it in, and all of it guarded. */
export const isProved = (hole: Pick<HoleAssessment, 'set'>): boolean =>
  hole.set.verdict === 'in' && isGuarded(hole);

/** Its concrete went in, and nothing tells yet whether the post still stands as it was measured before. */
export const isBeforePour = ({ poured }: Pick<HoleAssessment, 'poured'>): boolean =>
  poured !== null && !poured.readSince;

/** A hole's mark once posts are set: the worst of all that is judged of the post, tick only when every part is guarded. */
export function setLook(hole: HoleAssessment): HoleLook {
  const state = stateOf(hole);
  if (!hole.set.done) return { state };
  const look = { state, verdict: hole.set.verdict, checked: isGuarded(hole) };
  return isBeforePour(hole) ? { ...look, beforePour: true } : look;
}
