import type { Entry, EntryOf } from '../job/entry-schema.ts';
import { isKind } from '../job/log.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { chiSquareChance } from './chi-square.ts';
import { guards } from './redundancy.ts';
import { rodSigma } from './sigma.ts';
import { suspicionsOf, type Tested } from './snooping.ts';
import { addNormal, factorise, setDiagonal, solveInPlace } from './sparse-cholesky.ts';
import { selectedInverse } from './sparse-inverse.ts';
import { analyse, type Symbolic } from './sparse-symbolic.ts';
import type { GlobalTest, MeasuredHeight, Suspicion } from './types.ts';

export interface Heights {
  /** Of everything that rod readings tie to the benchmark, and of the benchmark itself. */
  readonly heights: readonly MeasuredHeight[];
  readonly test: GlobalTest;
  /** Rod readings believed wrong: the misclosure of the levelling, traced as far as it can be. */
  readonly suspicions: readonly Suspicion[];
}

type Rod = EntryOf<'rod'>;
type RodPoint = Rod['body']['on'];

/**
 * Heights above the benchmark from all rod readings: height = height of instrument − reading, each set-up of the level one
 * unknown height of instrument, in one weighted least-squares solution.
 *
 * What changed since counts no more: readings on a post's top or on a stake from before its last stand, and all but the
 * last on the bottom of a hole, which goes down with every shovel.
 *
 * @param entries that stand, in order
 */
export function heights(entries: readonly Entry[], instruments: Instruments): Heights {
  const rods = tiedToBenchmark(stillValid(entries).filter(({ body }) => Math.abs(body.reading.m) < BEYOND_M));
  const levels = new Levels(rods);
  const variance = rodSigma(instruments) ** 2;
  const solved = levels.solve(Float64Array.from(rods, () => 1 / variance));
  const { chiSquare, degreesOfFreedom } = solved;
  return {
    heights: levels.heights(solved),
    test: { chiSquare, degreesOfFreedom, chance: chiSquareChance(chiSquare, degreesOfFreedom) },
    suspicions: suspicionsOf(levels.tested(solved, variance)),
  };
}

/** No rod is longer by far; keeps squares finite. */
const BEYOND_M = 1000;

const BENCHMARK = 'benchmark';

function rodKey(on: RodPoint): string {
  if (on.point === 'benchmark') return BENCHMARK;
  return `${on.point}:${on.point === 'turning-point' || on.point === 'stake' ? on.label : on.hole}`;
}

/** Rod readings that still tell of what stands there now. */
function stillValid(entries: readonly Entry[]): Rod[] {
  const rods: { readonly rod: Rod; readonly order: number }[] = [];
  const since = new Map<string, number>();
  entries.forEach((entry, order) => {
    const { body } = entry;
    if (isKind(entry, 'rod')) {
      rods.push({ rod: entry, order });
      if (entry.body.on.point === 'bottom') since.set(rodKey(entry.body.on), order);
    } else if (body.kind === 'stand') {
      if (body.thing.kind === 'post') since.set(`top:${body.thing.hole}`, order);
      if (body.thing.kind === 'stake') since.set(`stake:${body.thing.label}`, order);
    }
  });
  return rods
    .filter(({ rod, order }) => order >= (since.get(rodKey(rod.body.on)) ?? Number.NEGATIVE_INFINITY))
    .map(({ rod }) => rod);
}

function groupedBy(rods: readonly Rod[], keyOf: (rod: Rod) => string): Map<string, Rod[]> {
  const out = new Map<string, Rod[]>();
  for (const rod of rods) {
    const key = keyOf(rod);
    const group = out.get(key);
    if (group) group.push(rod);
    else out.set(key, [rod]);
  }
  return out;
}

/** Readings from set-ups that the benchmark reaches, directly or through points they share. */
function tiedToBenchmark(rods: readonly Rod[]): Rod[] {
  const bySetup = groupedBy(rods, ({ body }) => body.setup);
  const byPoint = groupedBy(rods, ({ body }) => rodKey(body.on));
  const reachedSetups = new Set<string>();
  const points = [BENCHMARK];
  const reached = new Set(points);
  for (let point = points.pop(); point !== undefined; point = points.pop()) {
    for (const { body } of byPoint.get(point) ?? []) {
      if (reachedSetups.has(body.setup)) continue;
      reachedSetups.add(body.setup);
      for (const other of bySetup.get(body.setup)!) {
        const key = rodKey(other.body.on);
        if (!reached.has(key)) points.push(key);
        reached.add(key);
      }
    }
  }
  return rods.filter(({ body }) => reachedSetups.has(body.setup));
}

interface SolvedLevels {
  readonly weights: Float64Array;
  /** By position: heights of instrument and of points. */
  readonly values: Float64Array;
  readonly residual: Float64Array;
  readonly factor: Float64Array;
  readonly inverse: Float64Array;
  readonly redundancy: Float64Array;
  readonly degreesOfFreedom: number;
  readonly chiSquare: number;
}

/** The levelling equations: reading = height of instrument − height. Straight, so one step solves them. */
class Levels {
  readonly #rods: readonly Rod[];
  readonly #unknowns = new Map<string, number>();
  readonly #symbolic: Symbolic;
  readonly #jacobian: Float64Array;

  constructor(rods: readonly Rod[]) {
    this.#rods = rods;
    const starts = [0];
    const columns: number[] = [];
    const derivatives: number[] = [];
    for (const { body } of rods) {
      columns.push(this.#unknown(`setup ${body.setup}`));
      derivatives.push(1);
      const key = rodKey(body.on);
      if (key !== BENCHMARK) {
        columns.push(this.#unknown(key));
        derivatives.push(-1);
      }
      starts.push(columns.length);
    }
    const unknowns = this.#unknowns.size;
    const groups = Int32Array.from({ length: unknowns }, (_, i) => i);
    const pattern = { starts: Int32Array.from(starts), columns: Int32Array.from(columns) };
    this.#symbolic = analyse({ rows: rods.length, unknowns, ...pattern }, groups, unknowns);
    this.#jacobian = Float64Array.from(derivatives);
  }

  #unknown(name: string): number {
    const at = this.#unknowns.get(name) ?? this.#unknowns.size;
    this.#unknowns.set(name, at);
    return at;
  }

  solve(weights: Float64Array): SolvedLevels {
    const symbolic = this.#symbolic;
    const { size, rowIndex } = symbolic;
    const factor = new Float64Array(rowIndex.length);
    setDiagonal(symbolic, LOOSE_HEIGHT, factor);
    addNormal(symbolic, this.#jacobian, weights, factor);
    // Cannot fail: every diagonal element carries the ridge.
    if (!factorise(symbolic, factor, new Float64Array(size)))
      throw new Error('levels are not positive definite');
    const values = this.#normalRight(weights);
    solveInPlace(symbolic, factor, values);
    const residual = Float64Array.from(
      this.#rods,
      (rod, k) => rod.body.reading.m - this.#predicted(k, values),
    );
    const inverse = selectedInverse(symbolic, factor);
    const chiSquare = residual.reduce((sum, v, k) => sum + weights[k]! * v * v, 0);
    const tests = guards(symbolic, this.#jacobian, weights, inverse);
    return { weights, values, residual, factor, inverse, chiSquare, ...tests };
  }

  #predicted(k: number, values: Float64Array): number {
    const { pattern, position } = this.#symbolic;
    let sum = 0;
    for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
      sum += this.#jacobian[p]! * values[position[pattern.columns[p]!]!]!;
    }
    return sum;
  }

  #normalRight(weights: Float64Array): Float64Array {
    const { pattern, position, size } = this.#symbolic;
    const right = new Float64Array(size);
    this.#rods.forEach(({ body }, k) => {
      for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
        right[position[pattern.columns[p]!]!]! += weights[k]! * this.#jacobian[p]! * body.reading.m;
      }
    });
    return right;
  }

  heights({ values, inverse }: SolvedLevels): MeasuredHeight[] {
    const { position, columnStarts } = this.#symbolic;
    const out: MeasuredHeight[] = [{ key: BENCHMARK, height: 0, sigma: 0 }];
    for (const [key, unknown] of this.#unknowns) {
      if (key.startsWith('setup ')) continue;
      const at = position[unknown]!;
      out.push({ key, height: values[at]!, sigma: Math.sqrt(inverse[columnStarts[at]!]!) });
    }
    return out;
  }

  tested(solved: SolvedLevels, variance: number): Tested {
    return {
      symbolic: this.#symbolic,
      jacobian: this.#jacobian,
      entries: this.#rods.map(({ id }) => id),
      variances: Float64Array.from(this.#rods, () => variance),
      mostMisread: Float64Array.from(this.#rods, () => Number.POSITIVE_INFINITY),
      ...solved,
      without: (weights) => this.tested(this.solve(weights), variance),
    };
  }
}

/** Weight of "within a thousand kilometres": keeps a point solvable when its only reading is left out in thought. */
const LOOSE_HEIGHT = 1e-12;
