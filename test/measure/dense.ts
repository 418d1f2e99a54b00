import type { Network } from '../../src/measure/network.ts';

/**
 * A second way to the same answer, as plain as can be: unknowns in one list, derivatives by central differences, dense
 * matrices inverted by Gauss–Jordan with full row exchange. Shares no line with `src/measure` but the list of readings.
 */
export interface DenseProblem {
  readonly unknowns: number;
  /** What reading k would be for these values. */
  readonly predict: (values: readonly number[], k: number) => number;
  readonly readings: readonly number[];
  readonly sigmas: readonly number[];
}

/** Index of node's x in the list of unknowns; y follows; lean follows at +2 where the node leans. */
export function denseProblem(network: Network, a: number, b: number) {
  const first: number[] = [];
  let unknowns = 0;
  network.nodes.forEach((node, i) => {
    first.push(unknowns);
    unknowns += i === a ? 0 : i === b ? 1 : node.leans ? 4 : 2;
  });
  const at = (values: readonly number[], node: number, height: number) => {
    if (node === a) return { x: 0, y: 0 };
    const p = first[node]!;
    if (node === b) return { x: values[p]!, y: 0 };
    const lean = height === 0 ? { x: 0, y: 0 } : { x: values[p + 2]! * height, y: values[p + 3]! * height };
    return { x: values[p]! + lean.x, y: values[p + 1]! + lean.y };
  };
  const predict = (values: readonly number[], k: number): number => {
    const pull = network.pulls[k];
    const off = network.offsets[k - network.pulls.length];
    if (off) {
      const from = at(values, off.from, 0);
      const to = at(values, off.to, 0);
      const of = at(values, off.of, off.height);
      const string = Math.hypot(to.x - from.x, to.y - from.y);
      const [x, y] = [of.x + off.reach.x - from.x, of.y + off.reach.y - from.y];
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      return off.part === 'station' ? (x * dx + y * dy) / string : (dx * y - dy * x) / string - off.gap;
    }
    if (!pull) {
      const lean = network.leans[k - network.pulls.length - network.offsets.length]!;
      const p = first[lean.node]! + 2;
      return lean.over * (lean.normal.x * values[p]! + lean.normal.y * values[p + 1]!);
    }
    const from = at(values, pull.from, pull.fromHeight);
    const to = at(values, pull.to, pull.toHeight);
    const plan = Math.hypot(to.x - from.x + pull.offset.x, to.y - from.y + pull.offset.y) - pull.gap;
    return Math.hypot(plan, pull.rise);
  };
  const rows = [...network.pulls, ...network.offsets, ...network.leans];
  const problem: DenseProblem = {
    unknowns,
    predict,
    readings: rows.map(({ reading }) => reading),
    sigmas: rows.map(({ sigma }) => sigma),
  };
  return { problem, first };
}

/** Step of the central difference, metres: its error is of the order of h²/d² and of 1e-16 d/h, both near 1e-10. */
const STEP = 1e-5;

export function denseJacobian(
  { unknowns, predict, readings }: DenseProblem,
  values: readonly number[],
): number[][] {
  return readings.map((_, k) =>
    Array.from({ length: unknowns }, (_unused, j) => {
      const moved = (by: number) => values.map((value, i) => (i === j ? value + by : value));
      return (predict(moved(STEP), k) - predict(moved(-STEP), k)) / (2 * STEP);
    }),
  );
}

export function normalMatrix(
  jacobian: readonly (readonly number[])[],
  sigmas: readonly number[],
): number[][] {
  const n = jacobian[0]!.length;
  const out = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  jacobian.forEach((row, k) => {
    const weight = 1 / sigmas[k]! ** 2;
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) out[i]![j]! += weight * row[i]! * row[j]!;
  });
  return out;
}

export function invert(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const work = matrix.map((row, i) => [...row, ...Array.from({ length: n }, (_, j) => (i === j ? 1 : 0))]);
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let i = column; i < n; i++) {
      if (Math.abs(work[i]![column]!) > Math.abs(work[pivot]![column]!)) pivot = i;
    }
    [work[column], work[pivot]] = [work[pivot]!, work[column]!];
    const scale = work[column]![column]!;
    work[column] = work[column]!.map((value) => value / scale);
    for (let i = 0; i < n; i++) {
      if (i === column) continue;
      const factor = work[i]![column]!;
      if (factor !== 0) work[i] = work[i]!.map((value, j) => value - factor * work[column]![j]!);
    }
  }
  return work.map((row) => row.slice(n));
}
