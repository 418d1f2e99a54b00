import type { Circle } from './circle-fit.ts';
import { cross, distance, scale, subtract, type Vec } from './point.ts';

/** What rounding may put outside a circle that runs through it: a share of its radius. */
const ROUNDING = 1e-12;

/**
 * The smallest circle that holds every point: exact, and in the order given (E. Welzl, "Smallest enclosing disks", 1991,
 * in its incremental form).
 *
 * @returns null for no points
 */
export function enclosingCircle(points: readonly Vec[]): Circle | null {
  const [first] = points;
  if (!first) return null;
  let circle: Circle = { centre: first, radius: 0 };
  points.forEach((p, i) => {
    if (!holds(circle, p)) circle = throughOne(points.slice(0, i), p);
  });
  return circle;
}

function throughOne(before: readonly Vec[], p: Vec): Circle {
  let circle: Circle = { centre: p, radius: 0 };
  before.forEach((q, i) => {
    if (!holds(circle, q)) circle = throughTwo(before.slice(0, i), p, q);
  });
  return circle;
}

function throughTwo(before: readonly Vec[], p: Vec, q: Vec): Circle {
  let circle = onDiameter(p, q);
  for (const r of before) if (!holds(circle, r)) circle = throughThree(p, q, r) ?? circle;
  return circle;
}

const holds = ({ centre, radius }: Circle, p: Vec): boolean =>
  distance(centre, p) <= radius * (1 + ROUNDING) + Number.MIN_VALUE;

const onDiameter = (p: Vec, q: Vec): Circle => ({
  centre: scale({ x: p.x + q.x, y: p.y + q.y }, 1 / 2),
  radius: distance(p, q) / 2,
});

/** The circumcircle; null for points in a line. */
function throughThree(p: Vec, q: Vec, r: Vec): Circle | null {
  const a = subtract(q, p);
  const b = subtract(r, p);
  const twice = 2 * cross(a, b);
  if (twice === 0) return null;
  const aa = a.x * a.x + a.y * a.y;
  const bb = b.x * b.x + b.y * b.y;
  const off = { x: (b.y * aa - a.y * bb) / twice, y: (a.x * bb - b.x * aa) / twice };
  return { centre: { x: p.x + off.x, y: p.y + off.y }, radius: Math.hypot(off.x, off.y) };
}
