import type { Vec } from '../geometry/point.ts';

/** Coordinates run along x, then along y. */
type Axis = 'x' | 'y';

/**
 * Places sorted into square cells, about one place to each, so that what lies near a place or beside a line is found without
 * looking at all of them.
 */
export class PlaceGrid {
  readonly places: readonly Vec[];
  readonly #low: Vec;
  readonly #cell: number;
  readonly #columns: number;
  readonly #rows: number;
  readonly #cells = new Map<number, number[]>();

  constructor(places: readonly Vec[]) {
    this.places = places;
    const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
    this.#low = { x: least(xs), y: least(ys) };
    const [wide, deep] = [greatest(xs) - this.#low.x, greatest(ys) - this.#low.y];
    // Also where all of them stand in one line or at one place.
    this.#cell = Math.max(wide, deep, 1) / Math.ceil(Math.sqrt(places.length + 1));
    this.#columns = Math.floor(wide / this.#cell) + 1;
    this.#rows = Math.floor(deep / this.#cell) + 1;
    for (const [i, place] of places.entries()) {
      const key = this.#key(this.#along('x', place.x), this.#along('y', place.y));
      const list = this.#cells.get(key);
      if (list) list.push(i);
      else this.#cells.set(key, [i]);
    }
  }

  /** The places nearest to one of them, nearest first, without itself; fewer where there are no more. */
  nearest(i: number, count: number): number[] {
    const at = this.places[i]!;
    const away = (j: number) => Math.hypot(this.places[j]!.x - at.x, this.places[j]!.y - at.y);
    const whole = this.#cell * (this.#columns + this.#rows);
    for (let reach = 2 * this.#cell; ; reach *= 2) {
      const found = this.#within(at, reach).filter((j) => j !== i && (reach > whole || away(j) <= reach));
      if (found.length >= count || reach > whole)
        return found.sort((p, q) => away(p) - away(q) || p - q).slice(0, count);
    }
  }

  /** Every place within `width` of a line, and some that are a little farther, in no order. */
  beside(through: Vec, along: Vec, width: number): number[] {
    // The cells are run through by columns where the line is nearer to level, else by rows.
    const level = Math.abs(along.x) >= Math.abs(along.y);
    const [run, rise]: [Axis, Axis] = level ? ['x', 'y'] : ['y', 'x'];
    const slope = along[rise] / along[run];
    const half = width * Math.hypot(1, slope);
    const found: number[] = [];
    for (let k = 0; k < (level ? this.#columns : this.#rows); k++) {
      const here = through[rise] + slope * (this.#low[run] + k * this.#cell - through[run]);
      const there = here + slope * this.#cell;
      const first = this.#along(rise, Math.min(here, there) - half);
      const last = this.#along(rise, Math.max(here, there) + half);
      for (let n = first; n <= last; n++) this.#collect(level ? this.#key(k, n) : this.#key(n, k), found);
    }
    return found;
  }

  #within(at: Vec, reach: number): number[] {
    const found: number[] = [];
    for (let k = this.#along('x', at.x - reach); k <= this.#along('x', at.x + reach); k++)
      for (let n = this.#along('y', at.y - reach); n <= this.#along('y', at.y + reach); n++)
        this.#collect(this.#key(k, n), found);
    return found;
  }

  #collect(cell: number, found: number[]): void {
    for (const i of this.#cells.get(cell) ?? []) found.push(i);
  }

  /** Which column or row a coordinate falls into; the outermost where it lies beyond. */
  #along(axis: Axis, at: number): number {
    const most = (axis === 'x' ? this.#columns : this.#rows) - 1;
    return Math.min(most, Math.max(0, Math.floor((at - this.#low[axis]) / this.#cell)));
  }

  #key(column: number, row: number): number {
    return column * this.#rows + row;
  }
}

/** Of none 0. */
const least = (all: readonly number[]): number => all.reduce((p, q) => Math.min(p, q), all[0] ?? 0);
const greatest = (all: readonly number[]): number => all.reduce((p, q) => Math.max(p, q), all[0] ?? 0);
