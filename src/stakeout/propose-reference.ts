import { distance, type PlanPoint } from '../geometry/point.ts';
import { SLACK, STAKE_CLEARANCE } from './objections.ts';
import { leastGuard, type ReferenceAsked, triangleOf } from './reference-guard.ts';
import { ROUND } from './round-stakes.ts';
import { surroundingsOf } from './starts.ts';

/** Beyond this many times the plan's own reach nobody wants to walk for a third tape. */
const AROUND = 2;
/** So many round places are looked at along each side: half a thousand holes then still take no second. */
const PER_SIDE = 36;

/**
 * Where a third stake C (or a fourth, and so on) would best stand: in round numbers, clear of holes and spoil, within the
 * tape of A and B, where the triangle A–B–C is nowhere flat, and where its tape to each hole guards the two from A and B best.
 *
 * How well: with three pulls to a hole each has its redundancy, the share of a misreading that stays to be seen; the best
 * place has the greatest mean, over the holes, of the least of the three, times the least angle of the triangle as far as
 * that is under 45°. Derived, not published.
 *
 * @returns null where no place keeps the rules
 */
export function proposeReference(asked: ReferenceAsked): PlanPoint | null {
  let best: { at: PlanPoint; worth: number } | null = null;
  for (const at of roundPlaces(asked)) {
    if (!isAllowed(asked, at)) continue;
    const worth = worthOf(asked, at);
    if (worth > 0 && (!best || worth > best.worth * (1 + BETTER))) best = { at, worth };
  }
  return best?.at ?? null;
}

/** A place must be better by a thousandth to be better: the first of equals is taken, whatever the last bits say. */
const BETTER = 1e-3;

/** Places in round numbers round the holes and the stakes, nearest to their middle first. */
function roundPlaces({ a, b, holes, units }: ReferenceAsked): PlanPoint[] {
  const { middle, clear } = surroundingsOf(holes);
  const half = AROUND * Math.max(clear, distance(a, middle), distance(b, middle));
  const [round = 1] = ROUND[units];
  const step = Math.max(1, Math.ceil((2 * half) / round / PER_SIDE)) * round;
  const along = (from: number) =>
    Array.from(
      { length: Math.ceil((2 * half) / step) },
      (_, i) => (Math.ceil((from - half) / step) + i) * step,
    );
  return along(middle.x)
    .flatMap((x) => along(middle.y).map((y) => ({ x, y })))
    .sort((p, q) => distance(p, middle) - distance(q, middle));
}

function isAllowed({ a, b, others, holes, instruments }: ReferenceAsked, at: PlanPoint): boolean {
  const reach = instruments.tapeLength.m;
  return (
    [a, b].every((stake) => distance(stake, at) <= reach) &&
    [a, b, ...others].every((stake) => distance(stake, at) >= 2 * STAKE_CLEARANCE) &&
    holes.every(
      ({ place, holeDiameter }) => distance(place, at) - holeDiameter / 2 >= STAKE_CLEARANCE - SLACK,
    )
  );
}

/** A triangle whose least angle is greater is as good as any. */
const SHARP_ENOUGH = Math.PI / 4;

function worthOf(asked: ReferenceAsked, at: PlanPoint): number {
  const { a, b, others, holes, instruments } = asked;
  const least = Math.min(...Object.values(triangleOf(a, b, at)));
  const from = [a, b, ...others, at];
  const guard = holes.reduce((sum, { place }) => sum + leastGuard(place, from, instruments), 0);
  return (guard / holes.length) * Math.min(least / SHARP_ENOUGH, 1);
}

/** The name of the next stake after A and B, or of the next nail: `C`, `N1`. */
export function nextReferenceLabel(kind: 'stake' | 'nail', taken: readonly string[]): string {
  const names =
    kind === 'nail'
      ? Array.from({ length: taken.length + 1 }, (_, i) => `N${i + 1}`)
      : [...'CDEFGHJKLMNQRSTUVWXYZ', ...taken.map((_, i) => `C${i + 2}`), `C${taken.length + 2}`];
  return names.find((name) => !taken.includes(name))!;
}
