import { add, distance, scale, subtract, type Vec } from './point.ts';

export interface Circle {
  readonly centre: Vec;
  readonly radius: number;
}

/** Points nearer to a line than this share of their spread fix no circle. */
const STRAIGHT = 1e-9;

/**
 * The circle that minimises Σ (|p − c|² − r²)²: linear, but its radius comes out small when points lie on a short arc, so
 * this is a start only (I. Kåsa, IEEE Transactions on Instrumentation and Measurement 25, 1976).
 *
 * @returns null for fewer than three points, or points in a line
 */
export function algebraicCircle(points: readonly Vec[]): Circle | null {
  if (points.length < 3) return null;
  const mean = scale(points.reduce(add, { x: 0, y: 0 }), 1 / points.length);
  let [xx, xy, yy, xz, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (const point of points) {
    const { x, y } = subtract(point, mean);
    const z = x * x + y * y;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
    zz += z;
  }
  const determinant = xx * yy - xy * xy;
  if (!(determinant > STRAIGHT * (xx + yy) ** 2)) return null;
  const a = (xz * yy - yz * xy) / (2 * determinant);
  const b = (yz * xx - xz * xy) / (2 * determinant);
  return { centre: add(mean, { x: a, y: b }), radius: Math.sqrt(a * a + b * b + zz / points.length) };
}

const MOST_ROUNDS = 200;
/** The search ends when a step is below this share of the radius. */
const DONE = 1e-14;
const HARDER = 10;
const EASIER = 0.1;
const MOST_DAMPING = 1e12;

/**
 * The circle that minimises Σ (|p − c| − r)², the distances of the points from it (Gander, Golub & Strebel, "Least-squares
 * fitting of circles and ellipses", BIT 34, 1994, §3): damped Gauss–Newton from the algebraic circle. For given c the best
 * r is the mean distance, which leaves two unknowns.
 *
 * @returns null for fewer than three points, or points in a line
 */
export function fitCircle(points: readonly Vec[]): Circle | null {
  const start = algebraicCircle(points);
  if (!start) return null;
  let circle = about(points, start.centre);
  let misfit = misfitOf(points, circle);
  let damping = 1e-3;
  for (let round = 0; round < MOST_ROUNDS && damping < MOST_DAMPING; round++) {
    const step = stepFor(points, circle, damping);
    if (!step) return circle;
    const next = about(points, add(circle.centre, step));
    const nextMisfit = misfitOf(points, next);
    if (nextMisfit <= misfit) {
      circle = next;
      misfit = nextMisfit;
      damping *= EASIER;
    } else damping *= HARDER;
    if (distance(step, { x: 0, y: 0 }) < DONE * circle.radius) return circle;
  }
  return circle;
}

function about(points: readonly Vec[], centre: Vec): Circle {
  return { centre, radius: points.reduce((sum, p) => sum + distance(p, centre), 0) / points.length };
}

function misfitOf(points: readonly Vec[], { centre, radius }: Circle): number {
  return points.reduce((sum, p) => sum + (distance(p, centre) - radius) ** 2, 0);
}

/** One damped Gauss–Newton step of the centre; null when a point lies on it. */
function stepFor(points: readonly Vec[], { centre, radius }: Circle, damping: number): Vec | null {
  const ways = points.map((p) => scale(subtract(p, centre), 1 / distance(p, centre)));
  const mean = scale(ways.reduce(add, { x: 0, y: 0 }), 1 / points.length);
  let [xx, xy, yy, gx, gy] = [0, 0, 0, 0, 0];
  points.forEach((p, i) => {
    // Moving the centre by δ changes |p − c| − r by −(u − ū)·δ.
    const u = subtract(ways[i]!, mean);
    const off = distance(p, centre) - radius;
    xx += u.x * u.x;
    xy += u.x * u.y;
    yy += u.y * u.y;
    gx += u.x * off;
    gy += u.y * off;
  });
  const ridge = damping * (xx + yy);
  const determinant = (xx + ridge) * (yy + ridge) - xy * xy;
  if (!(determinant > 0)) return null;
  return {
    x: ((yy + ridge) * gx - xy * gy) / determinant,
    y: ((xx + ridge) * gy - xy * gx) / determinant,
  };
}
