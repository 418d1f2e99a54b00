import { distance, type PlanPoint } from '../geometry/point.ts';
import { barredBy, wallBetween } from './ground.ts';
import { SLACK, STAKE_CLEARANCE } from './objections.ts';
import { guardFrom, type ReferenceAsked, triangleOf } from './reference-guard.ts';
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
 * How well: with three pulls to a hole each has its redundancy, the share of a misreading that stays to be seen. A hole that
 * lies in line with C and A has none for its tape from B, so the worst hole counts first: the best place has the greatest
 * least redundancy of all holes, and of alike ones the greatest mean; times the least angle of the triangle as far as that
 * is under 45°. Derived, not published.
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

function isAllowed({ a, b, others, holes, instruments, lines = [] }: ReferenceAsked, at: PlanPoint): boolean {
  const reach = instruments.tapeLength.m;
  return (
    lines.every((line) => barredBy(line, at) === 0) &&
    [a, b].every((stake) => distance(stake, at) <= reach && !wallBetween(lines, stake, at)) &&
    [a, b, ...others].every((stake) => distance(stake, at) >= 2 * STAKE_CLEARANCE) &&
    holes.every(
      ({ place, holeDiameter }) => distance(place, at) - holeDiameter / 2 >= STAKE_CLEARANCE - SLACK,
    )
  );
}

/** A triangle whose least angle is greater is as good as any. */
const SHARP_ENOUGH = Math.PI / 4;

/** What the mean over the holes weighs against the worst of them. */
const MEAN_WEIGHS = 0.1;

function worthOf(asked: ReferenceAsked, at: PlanPoint): number {
  const { a, b, holes } = asked;
  const flattest = Math.min(...Object.values(triangleOf(a, b, at)));
  let worst = Number.POSITIVE_INFINITY;
  let sum = 0;
  for (const { place } of holes) {
    const guard = guardFrom(asked, at, place);
    worst = Math.min(worst, guard);
    sum += guard;
  }
  return (worst + (MEAN_WEIGHS * sum) / holes.length) * Math.min(flattest / SHARP_ENOUGH, 1);
}

/** The name of the next stake after A and B, or of the next nail: `C`, `N1`. */
export function nextReferenceLabel(kind: 'stake' | 'nail', taken: readonly string[]): string {
  const names =
    kind === 'nail'
      ? Array.from({ length: taken.length + 1 }, (_, i) => `N${i + 1}`)
      : [...'CDEFGHJKLMNQRSTUVWXYZ', ...taken.map((_, i) => `C${i + 2}`), `C${taken.length + 2}`];
  return names.find((name) => !taken.includes(name))!;
}
