import type { Vec } from '../../src/geometry/point.ts';
import type { Instruments } from '../../src/job/plan-schema.ts';
import type { Hole } from '../../src/plan/index.ts';

/** The rules for stakes, written again from their description: clear by 1.2 m, line clear by 50 mm, holes on the left. */
export const CLEAR = 1.2;
const LINE = 0.05;
const LEAST_APART = 0.5;

/** DRMS of the worst hole by the textbook formula, angle and all; Infinity where a rule is broken. */
export function worstDrms(
  a: Vec,
  b: Vec,
  holes: readonly Hole[],
  { tapeError, tapeErrorPerMetre, tapeLength }: Instruments,
): number {
  const apart = Math.hypot(b.x - a.x, b.y - a.y);
  if (apart < LEAST_APART || apart > tapeLength.m) return Infinity;
  let worst = 0;
  for (const { place, holeDiameter } of holes) {
    const fromA = Math.hypot(place.x - a.x, place.y - a.y);
    const fromB = Math.hypot(place.x - b.x, place.y - b.y);
    const left = ((b.x - a.x) * (place.y - a.y) - (b.y - a.y) * (place.x - a.x)) / apart;
    const radius = holeDiameter / 2;
    if (Math.min(fromA, fromB) < radius + CLEAR || left < radius + LINE) return Infinity;
    if (Math.max(fromA, fromB) > tapeLength.m) return Infinity;
    const cosine = (fromA ** 2 + fromB ** 2 - apart ** 2) / (2 * fromA * fromB);
    const variance = 2 * tapeError.m ** 2 + tapeErrorPerMetre ** 2 * (fromA ** 2 + fromB ** 2);
    worst = Math.max(worst, Math.sqrt(variance / (1 - cosine ** 2)));
  }
  return worst;
}

/** The least worst DRMS over all pairs of places on a square grid about the plan. */
export function bruteForce(
  holes: readonly Hole[],
  instruments: Instruments,
  reach: number,
  step: number,
): number {
  const places: Vec[] = [];
  for (let x = -reach; x <= reach; x += step)
    for (let y = -reach; y <= reach; y += step) {
      const clear = holes.every(
        ({ place, holeDiameter }) => Math.hypot(place.x - x, place.y - y) >= holeDiameter / 2 + CLEAR,
      );
      if (clear) places.push({ x, y });
    }
  let best = Infinity;
  for (const a of places) for (const b of places) best = Math.min(best, worstDrms(a, b, holes, instruments));
  return best;
}
