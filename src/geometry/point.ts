/**
 * Points and vectors in a plane. Metres; bearings in radians, anticlockwise from +x.
 *
 * `frame` is a phantom: no value ever carries it. It lets the compiler refuse a plan place where a site place
 * belongs, while a plain `{x, y}` fits either.
 */
export interface Vec {
  readonly x: number;
  readonly y: number;
}

/** Plan frame: origin at the plan's own centre, +y the plan's front. */
export interface PlanPoint extends Vec {
  readonly frame?: 'plan';
}

/** Site frame: origin at reference stake A, +x towards B, +y to the left of a person walking from A to B. */
export interface SitePoint extends Vec {
  readonly frame?: 'site';
}

export const add = (a: Vec, b: Vec): Vec => ({ x: a.x + b.x, y: a.y + b.y });
export const subtract = (a: Vec, b: Vec): Vec => ({ x: a.x - b.x, y: a.y - b.y });
export const scale = (a: Vec, k: number): Vec => ({ x: a.x * k, y: a.y * k });
export const dot = (a: Vec, b: Vec): number => a.x * b.x + a.y * b.y;
/** z of a × b: positive when b lies anticlockwise (left) of a. */
export const cross = (a: Vec, b: Vec): number => a.x * b.y - a.y * b.x;
// Not Math.hypot, which guards against overflow that no site can cause, at ten times the price.
export const length = ({ x, y }: Vec): number => Math.sqrt(x * x + y * y);
export const distance = (a: Vec, b: Vec): number => length(subtract(a, b));
/** Unit vector at `bearing` radians anticlockwise from +x. */
export const unit = (bearing: number): Vec => ({ x: Math.cos(bearing), y: Math.sin(bearing) });
export const bearingOf = (a: Vec): number => Math.atan2(a.y, a.x);
