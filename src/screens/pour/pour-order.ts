import { sincePour } from '../../judge/after-pour.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import type { HoleLook } from '../../ui/index.ts';
import { stateOf } from '../drawn-site.ts';
import { setLook } from '../looks.ts';

/** Holes still to pour: those whose gate is open first, then those with the least missing. */
export function pourOrder(holes: readonly HoleAssessment[]): HoleAssessment[] {
  const missing = ({ pourGate }: HoleAssessment) => pourGate.items.filter(({ green }) => !green).length;
  return holes.filter(({ poured }) => poured === null).sort((p, q) => missing(p) - missing(q));
}

/** A hole's mark in the pour: a tick only when its whole gate is open, or it is poured and was in. */
export function pourLook(hole: HoleAssessment): HoleLook {
  if (hole.poured) return setLook(hole);
  return hole.pourGate.open
    ? { state: stateOf(hole), verdict: 'in', checked: true }
    : { ...setLook(hole), checked: false };
}

/** Whether its post was read after its last pour; only such a reading says what the pour did to it. */
export function measuredSincePour(view: JobView, hole: string): boolean {
  const since = sincePour(view, hole);
  return since !== null && (since.place ?? since.plumb ?? since.top) !== null;
}
