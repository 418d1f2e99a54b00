import type { Plan } from '../../src/job/plan-schema.ts';
import { random } from '../measure/build.ts';
import { metres, pointsPlan, ringPlan, rowsPlan } from '../plan/plans.ts';

/** So many plans the stake advice is held to. */
export const RANDOM_PLANS = 200;

/** Closer than this no two free holes are drawn, metres. */
const APART = 1;

/** A plan drawn by chance, the same for the same number: a ring, rows, or up to 30 holes anywhere, up to 14 m across. */
export function randomPlan(seed: number): Plan {
  const uniform = random(seed);
  const between = (least: number, most: number) => least + (most - least) * uniform();
  const whole = (least: number, most: number) => Math.floor(between(least, most + 1));
  const kind = whole(0, 2);
  if (kind === 0)
    return ringPlan({
      count: whole(3, 24),
      size: metres(between(1, 6)),
      front: uniform() < 0.5 ? 'post' : 'flat',
      pier: uniform() < 0.5,
    });
  if (kind === 1)
    return rowsPlan({
      columns: whole(1, 6),
      rows: whole(1, 5),
      columnSpacing: metres(between(1.2, 2.8)),
      rowSpacing: metres(between(1.2, 3)),
    });
  const [wide, deep] = [between(2, 14), between(2, 14)];
  const places: { x: number; y: number }[] = [];
  const wanted = whole(1, 30);
  // A small yard holds fewer than are wanted.
  for (let tries = 0; places.length < wanted && tries < 20 * wanted; tries++) {
    const next = { x: between(-wide / 2, wide / 2), y: between(-deep / 2, deep / 2) };
    if (places.every(({ x, y }) => Math.hypot(x - next.x, y - next.y) >= APART)) places.push(next);
  }
  return pointsPlan(places.map(({ x, y }, i) => [String(i + 1), x, y]));
}
