import { describe, expect, it } from 'vitest';
import { addNormal, factorise, setDiagonal, solveInPlace } from '../../src/measure/sparse-cholesky.ts';
import { InverseColumns, LANES, selectedInverse } from '../../src/measure/sparse-inverse.ts';
import { type Graph, minimumDegreeOrder } from '../../src/measure/sparse-order.ts';
import { analyse, type JacobianPattern, slotAt } from '../../src/measure/sparse-symbolic.ts';
import { random } from './build.ts';
import { invert } from './dense.ts';

function graphOf(nodes: number, edges: readonly (readonly [number, number])[]): Graph {
  const lists = Array.from({ length: nodes }, (): number[] => []);
  for (const [a, b] of edges) {
    lists[a]!.push(b);
    lists[b]!.push(a);
  }
  const starts = [0];
  for (const list of lists) starts.push(starts.at(-1)! + list.length);
  const neighbours = lists.flatMap((list) => list.sort((a, b) => a - b));
  return { nodes, starts: Int32Array.from(starts), neighbours: Int32Array.from(neighbours) };
}

describe('minimum degree order', () => {
  it('is a permutation', () => {
    const uniform = random(1);
    for (let round = 0; round < 50; round++) {
      const nodes = 1 + Math.floor(uniform() * 40);
      const edges = new Map<string, readonly [number, number]>();
      for (let i = 0; i < nodes * 2; i++) {
        const a = Math.floor(uniform() * nodes);
        const b = Math.floor(uniform() * nodes);
        if (a < b) edges.set(`${a} ${b}`, [a, b]);
      }
      const order = minimumDegreeOrder(graphOf(nodes, [...edges.values()]));
      expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: nodes }, (_, i) => i));
    }
  });

  it('leaves the hub of a star to the end', () => {
    for (const leaves of [5, 400]) {
      const order = minimumDegreeOrder(
        graphOf(
          leaves + 1,
          Array.from({ length: leaves }, (_, i) => [0, i + 1] as const),
        ),
      );
      // With one leaf left, hub and leaf are alike.
      expect([...order].indexOf(0)).toBeGreaterThanOrEqual(leaves - 1);
    }
  });

  it('makes no fill on a tree', () => {
    const uniform = random(2);
    const size = 60;
    const edges = Array.from(
      { length: size - 1 },
      (_, i) => [Math.floor(uniform() * (i + 1)), i + 1] as const,
    );
    const rows = edges.map(([a, b]) => [a, b]);
    const pattern = patternOf(size, rows);
    const symbolic = analyse(
      pattern,
      Int32Array.from({ length: size }, (_, i) => i),
      size,
    );
    expect(symbolic.rowIndex.length).toBe(size + edges.length);
  });
});

function patternOf(unknowns: number, rows: readonly (readonly number[])[]): JacobianPattern {
  const starts = [0];
  for (const row of rows) starts.push(starts.at(-1)! + row.length);
  return {
    rows: rows.length,
    unknowns,
    starts: Int32Array.from(starts),
    columns: Int32Array.from(rows.flat()),
  };
}

/** A random least-squares problem over unknowns in groups of two. */
function problem(seed: number) {
  const uniform = random(seed);
  const groups = 2 + Math.floor(uniform() * 12);
  const rows: number[][] = [];
  for (let k = 0; k < groups * 3; k++) {
    const a = Math.floor(uniform() * groups);
    const b = Math.floor(uniform() * groups);
    rows.push(a === b ? [2 * a, 2 * a + 1] : [2 * a, 2 * a + 1, 2 * b, 2 * b + 1]);
  }
  for (let a = 0; a < groups; a++) rows.push([2 * a], [2 * a + 1]);
  const pattern = patternOf(2 * groups, rows);
  const jacobian = Float64Array.from(pattern.columns, () => uniform() * 2 - 1);
  const weights = Float64Array.from(rows, () => 10 ** (4 * uniform() - 2));
  const groupOf = Int32Array.from({ length: 2 * groups }, (_, i) => i >> 1);
  const symbolic = analyse(pattern, groupOf, groups);
  const dense = Array.from({ length: 2 * groups }, () => new Array<number>(2 * groups).fill(0));
  const ridge = 0.01;
  for (let i = 0; i < 2 * groups; i++) dense[i]![i] = ridge;
  rows.forEach((row, k) => {
    row.forEach((i, p) => {
      row.forEach((j, q) => {
        const at = pattern.starts[k]!;
        dense[i]![j]! += weights[k]! * jacobian[at + p]! * jacobian[at + q]!;
      });
    });
  });
  const matrix = new Float64Array(symbolic.rowIndex.length);
  setDiagonal(symbolic, ridge, matrix);
  addNormal(symbolic, jacobian, weights, matrix);
  return { symbolic, matrix, dense, uniform };
}

const CASES = 40;
/** Relative to the greatest element; the matrices have condition numbers up to about 1e6. */
const WITHIN = 1e-9;

describe('sparse Cholesky against dense Gauss–Jordan, 40 random problems', () => {
  for (let seed = 1; seed <= CASES; seed++) {
    it(`problem ${seed}`, () => {
      const { symbolic, matrix, dense, uniform } = problem(seed);
      const { size, position, rowIndex, columnStarts } = symbolic;
      const inverse = invert(dense);
      const greatest = Math.max(...inverse.flat().map(Math.abs));
      expect(factorise(symbolic, matrix, new Float64Array(size))).toBe(true);

      const right = Array.from({ length: size }, () => uniform());
      const x = new Float64Array(size);
      right.forEach((value, i) => {
        x[position[i]!] = value;
      });
      solveInPlace(symbolic, matrix, x);
      right.forEach((_, i) => {
        const expected = right.reduce((sum, value, j) => sum + inverse[i]![j]! * value, 0);
        expect(Math.abs(x[position[i]!]! - expected)).toBeLessThan(WITHIN * greatest * size);
      });

      const selected = selectedInverse(symbolic, matrix);
      const columns = new InverseColumns(symbolic, matrix);
      let found = 0;
      for (let i = 0; i < size; i++) {
        const all = Array.from({ length: size }, (_, j) => position[j]!);
        const some = all.filter(() => uniform() < 0.3);
        // Side by side: this column, and a mix of it and of the next.
        const next = (i + 1) % size;
        const column = new Float64Array(LANES * size).fill(Number.NaN);
        columns.at(
          [
            { positions: [position[i]!], values: [1] },
            { positions: [position[i]!, position[next]!], values: [0.5, -2] },
          ],
          some,
          column,
        );
        for (let j = 0; j < size; j++) {
          const slot = slotAt(symbolic, position[i]!, position[j]!);
          if (slot !== -1) {
            expect(Math.abs(selected[slot]! - inverse[i]![j]!)).toBeLessThan(WITHIN * greatest);
            found++;
          }
          if (some.includes(position[j]!)) {
            const [first, second] = [column[LANES * position[j]!]!, column[LANES * position[j]! + 1]!];
            const mixed = 0.5 * inverse[i]![j]! - 2 * inverse[next]![j]!;
            expect(Math.abs(first - inverse[i]![j]!)).toBeLessThan(WITHIN * greatest);
            expect(Math.abs(second - mixed)).toBeLessThan(WITHIN * greatest);
          }
        }
      }
      expect(found).toBe(2 * rowIndex.length - size);
      expect(columnStarts[size]).toBe(rowIndex.length);
    });
  }
});

describe('a matrix that is not positive definite', () => {
  it('is refused', () => {
    const pattern = patternOf(2, [[0, 1]]);
    const symbolic = analyse(pattern, Int32Array.of(0, 1), 2);
    const matrix = new Float64Array(symbolic.rowIndex.length);
    addNormal(symbolic, Float64Array.of(1, 1), Float64Array.of(1), matrix);
    expect(factorise(symbolic, matrix, new Float64Array(2))).toBe(false);
    matrix.fill(Number.NaN);
    expect(factorise(symbolic, matrix, new Float64Array(2))).toBe(false);
  });
});
