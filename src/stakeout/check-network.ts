import { distance, length, type SitePoint, type Vec } from '../geometry/point.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { GUARDED_FROM, shiftOfUnnoticed, smallestCaught, unnoticed } from '../measure/reliability.ts';
import { tapeSigma } from '../measure/sigma.ts';

/** A place that no tape has reached yet may be anywhere: ten metres, one sigma, far beyond what any reading leaves open. */
const ANYWHERE = 10;

/** Nearer than this two places have no direction between them: a millimetre. */
export const APART = 1e-3;

const A = -2;
const B = -1;

/** One pull of the network that is planned. */
interface Row {
  /** Share of a misreading that its own residual keeps; NaN until it is asked for. */
  redundancy: number;
  /** Places at its ends: A, B, or the hole's place in the list. */
  readonly ends: readonly [number, number];
  /** Unknowns, and what the length gains with each, metres per metre. */
  readonly unknowns: readonly number[];
  readonly gains: readonly number[];
  readonly sigma: number;
}

/**
 * The stakes of a plan as they will be known: A held, B on the line, every hole by its tapes from A and from B, and check pulls
 * as they are chosen. Covariances by rank-one updates at the planned places (any text on least squares); redundancies, smallest
 * misreadings and what they move as the adjustment will have them (Baarda 1968).
 */
export class CheckNetwork {
  readonly #places: readonly SitePoint[];
  readonly #b: SitePoint;
  readonly #instruments: Instruments;
  readonly #size: number;
  /** Covariance of B along the line, then of every hole, x and y; square metres. */
  readonly #covariance: Float64Array;
  readonly #rows = new Set<Row>();
  /** By hole. */
  readonly #own: Set<Row>[];

  /** @param baseline A to B, metres */
  constructor(places: readonly SitePoint[], baseline: number, instruments: Instruments) {
    this.#places = places;
    this.#b = { x: baseline, y: 0 };
    this.#instruments = instruments;
    this.#own = places.map(() => new Set());
    this.#size = 1 + 2 * places.length;
    this.#covariance = new Float64Array(this.#size ** 2);
    for (let u = 0; u < this.#size; u++) this.#covariance[u * this.#size + u] = ANYWHERE ** 2;
    // Pulled in two stretches where one tape does not reach.
    if (baseline >= APART) this.put([A, B]);
    for (const hole of places.keys())
      for (const from of [A, B]) if (this.#reaches(from, hole)) this.put([from, hole]);
  }

  /** Chooses a pull. */
  put(ends: readonly [number, number]): void {
    const row = this.#rowOf(ends);
    this.#rows.add(row);
    for (const end of ends) this.#own[end]?.add(row);
    this.#update(row, 1);
  }

  /** Takes a chosen pull back. */
  drop(ends: readonly [number, number]): void {
    const row = [...this.#rows].findLast(({ ends: [p, q] }) => p === ends[0] && q === ends[1]);
    if (!row) return;
    this.#rows.delete(row);
    for (const end of ends) this.#own[end]?.delete(row);
    this.#update(row, -1);
  }

  /** Greatest of the smallest misreadings that the pulls to a hole would show, metres; Infinity where one shows none. */
  caughtAt(hole: number): number {
    const own = this.#own[hole]!;
    return own.size === 0 ? Number.POSITIVE_INFINITY : Math.max(...[...own].map((row) => this.#leastOf(row)));
  }

  /** How far the worst misreading in any pull that would go unseen could move a hole's stake, metres; as the adjustment has it. */
  shiftOf(hole: number): number {
    let shift = 0;
    for (const row of this.#rows) {
      const redundancy = this.#redundancyOf(row);
      const isGuarded = redundancy >= GUARDED_FROM;
      const misreading = unnoticed(row.sigma, redundancy);
      shift = Math.max(shift, shiftOfUnnoticed(isGuarded, misreading, this.#influence(row, hole)));
    }
    return shift;
  }

  #leastOf(row: Row): number {
    const redundancy = this.#redundancyOf(row);
    return redundancy < GUARDED_FROM ? Number.POSITIVE_INFINITY : smallestCaught(row.sigma, redundancy);
  }

  /**
   * What a check pull between two holes would bring: how much redundancy the pulls to them are short of, before less after.
   *
   * @param wanted redundancy that a pull should have
   */
  worthOf(ends: readonly [number, number], wanted: number): number {
    const check = this.#rowOf(ends);
    const s = check.sigma ** 2 + this.#between(check, check);
    let worth = 0;
    for (const end of ends)
      for (const row of this.#own[end]!) {
        const now = this.#redundancyOf(row);
        const then = now + this.#between(row, check) ** 2 / s / row.sigma ** 2;
        worth += Math.max(0, wanted - now) - Math.max(0, wanted - then);
      }
    return worth;
  }

  #reaches(from: number, to: number): boolean {
    const away = distance(this.#at(from), this.#at(to));
    return away >= APART && away <= this.#instruments.tapeLength.m;
  }

  #at(end: number): Vec {
    if (end === A) return { x: 0, y: 0 };
    return end === B ? this.#b : this.#places[end]!;
  }

  #rowOf(ends: readonly [number, number]): Row {
    const [p, q] = [this.#at(ends[0]), this.#at(ends[1])];
    const line = { x: q.x - p.x, y: q.y - p.y };
    const away = length(line);
    const along = { x: line.x / away, y: line.y / away };
    const unknowns: number[] = [];
    const gains: number[] = [];
    for (const [k, end] of ends.entries()) {
      if (end === A) continue;
      const sign = k === 0 ? -1 : 1;
      unknowns.push(end === B ? 0 : 1 + 2 * end);
      gains.push(sign * along.x);
      // B lies on the line by definition.
      if (end === B) continue;
      unknowns.push(2 + 2 * end);
      gains.push(sign * along.y);
    }
    return { ends, unknowns, gains, sigma: tapeSigma(away, this.#instruments), redundancy: Number.NaN };
  }

  /** Q − Q aᵀ a Q / (a Q aᵀ + σ²), a reading more; with `way` −1 and a negative σ² one less. */
  #update(row: Row, way: 1 | -1): void {
    const size = this.#size;
    const gain = new Float64Array(size);
    for (let u = 0; u < size; u++) gain[u] = this.#responseOf(row, u);
    const s = way * row.sigma ** 2 + this.#between(row, row);
    for (const each of this.#rows) each.redundancy = Number.NaN;
    for (let u = 0; u < size; u++) {
      const share = gain[u]! / s;
      for (let v = 0; v < size; v++) this.#covariance[u * size + v]! -= share * gain[v]!;
    }
  }

  /** (Q aᵀ) at one unknown. */
  #responseOf({ unknowns, gains }: Row, u: number): number {
    let sum = 0;
    for (let k = 0; k < unknowns.length; k++)
      sum += gains[k]! * this.#covariance[u * this.#size + unknowns[k]!]!;
    return sum;
  }

  /** a Q bᵀ. */
  #between(one: Row, other: Row): number {
    let sum = 0;
    for (let k = 0; k < one.unknowns.length; k++)
      sum += one.gains[k]! * this.#responseOf(other, one.unknowns[k]!);
    return sum;
  }

  #redundancyOf(row: Row): number {
    if (Number.isNaN(row.redundancy)) row.redundancy = 1 - this.#between(row, row) / row.sigma ** 2;
    return row.redundancy;
  }

  /** Metres that a hole's place moves per metre misread. */
  #influence(row: Row, hole: number): number {
    const [x, y] = [this.#responseOf(row, 1 + 2 * hole), this.#responseOf(row, 2 + 2 * hole)];
    return Math.hypot(x, y) / row.sigma ** 2;
  }
}
