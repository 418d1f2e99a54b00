import { BENCHMARK, collimationKey, type HeightRow, isPoint, setupOf } from './height-rows.ts';
import { guards } from './redundancy.ts';
import type { Tested } from './snooping.ts';
import { addNormal, factorise, setDiagonal, solveInPlace } from './sparse-cholesky.ts';
import { selectedInverse } from './sparse-inverse.ts';
import { analyse, type Symbolic } from './sparse-symbolic.ts';
import type { Collimation } from './two-peg.ts';

/** Rows that the benchmark reaches, directly or through points they share, and the entries of the others. */
export function tiedToBenchmark(rows: readonly HeightRow[]): {
  readonly tied: readonly HeightRow[];
  readonly adrift: readonly string[];
} {
  const stationsAt = new Map<string, Set<string>>();
  const pointsFrom = new Map<string, Set<string>>();
  const put = (map: Map<string, Set<string>>, key: string, value: string) =>
    map.set(key, (map.get(key) ?? new Set()).add(value));
  for (const { station, points } of rows)
    for (const point of points) {
      put(stationsAt, point, station);
      put(pointsFrom, station, point);
    }
  const reached = new Set([BENCHMARK]);
  const stations = new Set<string>();
  // A set that grows while it is walked is walked to its end.
  for (const point of reached)
    for (const station of stationsAt.get(point) ?? []) {
      if (stations.has(station)) continue;
      stations.add(station);
      for (const other of pointsFrom.get(station)!) reached.add(other);
    }
  return {
    tied: rows.filter(({ station }) => stations.has(station)),
    adrift: rows.filter(({ station }) => !stations.has(station)).map(({ entry }) => entry),
  };
}

export interface SolvedHeights {
  readonly weights: Float64Array;
  /** By position. */
  readonly values: Float64Array;
  /** Reading less predicted; after the rows of the readings come those of the tests of the level. */
  readonly residual: Float64Array;
  readonly factor: Float64Array;
  readonly inverse: Float64Array;
  readonly redundancy: Float64Array;
  readonly degreesOfFreedom: number;
  readonly chiSquare: number;
}

/** An unknown of the levelling with what was found of it. */
export interface FoundHeight {
  readonly key: string;
  readonly height: number;
  readonly sigma: number;
}

/** Weight of "within a thousand kilometres": keeps a point solvable when its only reading is left out in thought. */
const LOOSE_HEIGHT = 1e-12;

/**
 * The levelling equations, straight, so that one step solves them. Unknown are the heights of points and of instruments,
 * and the slope of the line of sight where a two-peg test found one: the test is then a reading of it.
 */
export class HeightNetwork {
  readonly rows: readonly HeightRow[];
  readonly symbolic: Symbolic;
  readonly jacobian: Float64Array;
  readonly #unknowns = new Map<string, number>();
  readonly #readings: Float64Array;
  readonly variances: Float64Array;

  constructor(rows: readonly HeightRow[], collimations: readonly Collimation[]) {
    this.rows = rows;
    const all = [...rows, ...collimations.flatMap((each) => testRow(each, rows))];
    const starts = [0];
    const columns: number[] = [];
    const derivatives: number[] = [];
    for (const { terms } of all) {
      for (const [name, factor] of terms) {
        columns.push(this.#unknown(name));
        derivatives.push(factor);
      }
      starts.push(columns.length);
    }
    const unknowns = this.#unknowns.size;
    const groups = Int32Array.from({ length: unknowns }, (_, i) => i);
    const pattern = { starts: new Int32Array(starts), columns: new Int32Array(columns) };
    this.symbolic = analyse({ rows: all.length, unknowns, ...pattern }, groups, unknowns);
    this.jacobian = new Float64Array(derivatives);
    this.#readings = new Float64Array(all.map(({ reading }) => reading));
    this.variances = new Float64Array(all.map(({ variance }) => variance));
  }

  #unknown(name: string): number {
    const at = this.#unknowns.get(name) ?? this.#unknowns.size;
    this.#unknowns.set(name, at);
    return at;
  }

  solve(weights: Float64Array = this.variances.map((variance) => 1 / variance)): SolvedHeights {
    const { symbolic, jacobian } = this;
    const factor = new Float64Array(symbolic.rowIndex.length);
    setDiagonal(symbolic, LOOSE_HEIGHT, factor);
    addNormal(symbolic, jacobian, weights, factor);
    // Cannot fail: every diagonal element carries the ridge.
    if (!factorise(symbolic, factor, new Float64Array(symbolic.size)))
      throw new Error('levels are not positive definite');
    const values = this.#normalRight(weights);
    solveInPlace(symbolic, factor, values);
    const residual = this.#readings.map((reading, k) => reading - this.#predicted(k, values));
    const inverse = selectedInverse(symbolic, factor);
    const chiSquare = residual.reduce((sum, v, k) => sum + weights[k]! * v * v, 0);
    const tests = guards(symbolic, jacobian, weights, inverse);
    return { weights, values, residual, factor, inverse, chiSquare, ...tests };
  }

  #predicted(k: number, values: Float64Array): number {
    const { pattern, position } = this.symbolic;
    let sum = 0;
    for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++)
      sum += this.jacobian[p]! * values[position[pattern.columns[p]!]!]!;
    return sum;
  }

  #normalRight(weights: Float64Array): Float64Array {
    const { pattern, position, size } = this.symbolic;
    const right = new Float64Array(size);
    this.#readings.forEach((reading, k) => {
      for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++)
        right[position[pattern.columns[p]!]!]! += weights[k]! * this.jacobian[p]! * reading;
    });
    return right;
  }

  /** Of every point but the benchmark. */
  points(solved: SolvedHeights): FoundHeight[] {
    return this.#found(solved, isPoint);
  }

  /** Heights of instrument, by set-up. */
  setups(solved: SolvedHeights): FoundHeight[] {
    return this.#found(solved, (key) => setupOf(key) !== null).map((each) => ({
      ...each,
      key: setupOf(each.key)!,
    }));
  }

  #found({ values, inverse }: SolvedHeights, wanted: (key: string) => boolean): FoundHeight[] {
    const { columnStarts } = this.symbolic;
    return [...this.#unknowns.keys()].filter(wanted).map((key) => {
      const at = this.positionOf(key)!;
      return { key, height: values[at]!, sigma: Math.sqrt(inverse[columnStarts[at]!]!) };
    });
  }

  /** Place of an unknown in the solution; null for the benchmark and for what is not in it. */
  positionOf(key: string): number | null {
    const unknown = this.#unknowns.get(key);
    return unknown === undefined ? null : this.symbolic.position[unknown]!;
  }

  tested(solved: SolvedHeights): Tested {
    return {
      symbolic: this.symbolic,
      jacobian: this.jacobian,
      entries: Array.from(this.variances, (_, k) => this.rows[k]?.entry ?? null),
      variances: this.variances,
      mostMisread: this.variances.map(() => Number.POSITIVE_INFINITY),
      ...solved,
      without: (weights) => this.tested(this.solve(weights)),
    };
  }
}

/** The test of the level as a reading of the slope of its line of sight, where any reading is corrected by it. */
function testRow(
  test: Collimation,
  rows: readonly HeightRow[],
): Pick<HeightRow, 'terms' | 'reading' | 'variance'>[] {
  const key = collimationKey(test.entry);
  if (!rows.some(({ terms }) => terms.some(([name]) => name === key))) return [];
  return [{ terms: [[key, 1]], reading: test.slope, variance: test.sigma ** 2 }];
}
