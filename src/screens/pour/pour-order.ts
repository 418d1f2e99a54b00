import type { HoleAssessment } from '../../judge/types.ts';
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
