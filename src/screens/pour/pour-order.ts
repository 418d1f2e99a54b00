import { sincePour } from '../../judge/after-pour.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import type { HoleLook } from '../../ui/index.ts';
import { setLook } from '../looks.ts';
import { missingItems } from './gate-mend.ts';

/** Holes still to pour: those whose gate is open first, then those with the least missing. */
export function pourOrder(holes: readonly HoleAssessment[]): HoleAssessment[] {
  const missing = ({ pourGate }: HoleAssessment) => pourGate.items.filter(({ green }) => !green).length;
  return holes.filter(({ poured }) => poured === null).sort((p, q) => missing(p) - missing(q));
}

/**
 * A hole's mark in the pour: the one that it has in every phase, with what it still wants for concrete beside it. What is in
 * and may not be poured yet must not look ready.
 */
export function pourLook(hole: HoleAssessment): HoleLook & { readonly note?: string } {
  const look = setLook(hole);
  if (hole.poured) return { ...look, note: 'poured' };
  if (hole.pourGate.open) return { ...look, note: 'ready' };
  return { ...look, note: `${missingItems(hole.pourGate).length} missing` };
}

/** Whether its post was read after its last pour; only such a reading says what the pour did to it. */
export function measuredSincePour(view: JobView, hole: string): boolean {
  const since = sincePour(view, hole);
  return since !== null && (since.place ?? since.plumb ?? since.top) !== null;
}
