import { type Graph, minimumDegreeOrder } from './sparse-order.ts';

/** Where a Jacobian has entries: row k (one reading) touches unknowns `columns[starts[k]]` to `columns[starts[k + 1] - 1]`. */
export interface JacobianPattern {
  readonly rows: number;
  readonly unknowns: number;
  readonly starts: Int32Array;
  readonly columns: Int32Array;
}

/**
 * Everything about the factor of a normal matrix that does not depend on numbers. L is kept by columns, diagonal first,
 * rows ascending; "slot" is an index into its values. The normal matrix itself lives in the same slots, so that one
 * array holds in turn the matrix, its factor and its inverse. Positions are places in the order of elimination.
 */
export interface Symbolic {
  readonly pattern: JacobianPattern;
  readonly size: number;
  /** Position of each unknown. */
  readonly position: Int32Array;
  /** Elimination tree: parent of each position, -1 at a root. */
  readonly parent: Int32Array;
  readonly columnStarts: Int32Array;
  readonly rowIndex: Int32Array;
  /** The same L by rows, without the diagonal: columns ascending, and their slots. */
  readonly rowStarts: Int32Array;
  readonly rowColumns: Int32Array;
  readonly rowSlots: Int32Array;
  /** For each Jacobian row, the slot of every pair of its entries: (0,0), (1,0), (1,1), (2,0) … */
  readonly pairStarts: Int32Array;
  readonly pairSlots: Int32Array;
}

/**
 * Orders the unknowns and lays out the factor (elimination tree and row patterns: Davis, "Direct Methods for Sparse
 * Linear Systems", SIAM 2006, ch. 4).
 *
 * @param groupOf group of each unknown; unknowns of a group (the coordinates of one point) are eliminated together, so
 *   that only points need ordering
 */
export function analyse(pattern: JacobianPattern, groupOf: Int32Array, groups: number): Symbolic {
  const position = positions(minimumDegreeOrder(groupGraph(pattern, groupOf, groups)), groupOf);
  const size = pattern.unknowns;
  const above = upperPattern(pattern, position);
  const parent = eliminationTree(above, size);
  const rows = rowPatterns(above, parent, size);
  const columns = columnsOf(rows, size);
  const pairs = pairSlots(pattern, position, columns);
  return { pattern, size, position, parent, ...columns, ...rows, rowSlots: columns.rowSlots, ...pairs };
}

/** Points that share a reading are neighbours. */
function groupGraph(pattern: JacobianPattern, groupOf: Int32Array, groups: number): Graph {
  const lists: number[][] = Array.from({ length: groups }, () => []);
  for (let k = 0; k < pattern.rows; k++) {
    for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
      const a = groupOf[pattern.columns[p]!]!;
      for (let q = pattern.starts[k]!; q < p; q++) {
        const b = groupOf[pattern.columns[q]!]!;
        if (a === b || lists[a]!.at(-1) === b) continue;
        lists[a]!.push(b);
        lists[b]!.push(a);
      }
    }
  }
  return compressed(lists.map(ascendingOnce));
}

function ascendingOnce(list: readonly number[]): number[] {
  return [...list].sort((a, b) => a - b).filter((value, i, all) => i === 0 || value !== all[i - 1]);
}

function compressed(lists: readonly (readonly number[])[]): Graph {
  const starts = new Int32Array(lists.length + 1);
  lists.forEach((list, i) => {
    starts[i + 1] = starts[i]! + list.length;
  });
  const neighbours = new Int32Array(starts[lists.length]!);
  lists.forEach((list, i) => {
    neighbours.set(list, starts[i]!);
  });
  return { nodes: lists.length, starts, neighbours };
}

function positions(groupOrder: Int32Array, groupOf: Int32Array): Int32Array {
  const count = new Int32Array(groupOrder.length);
  for (const group of groupOf) count[group]!++;
  const next = new Int32Array(groupOrder.length);
  let taken = 0;
  for (const group of groupOrder) {
    next[group] = taken;
    taken += count[group]!;
  }
  return groupOf.map((group) => next[group]!++);
}

/** For each position, the earlier positions that share a reading with it (with repeats). */
function upperPattern(pattern: JacobianPattern, position: Int32Array): number[][] {
  const above: number[][] = Array.from({ length: pattern.unknowns }, () => []);
  for (let k = 0; k < pattern.rows; k++) {
    for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
      const a = position[pattern.columns[p]!]!;
      for (let q = pattern.starts[k]!; q < p; q++) {
        const b = position[pattern.columns[q]!]!;
        above[Math.max(a, b)]!.push(Math.min(a, b));
      }
    }
  }
  return above;
}

/** Liu's algorithm, with path compression. */
function eliminationTree(above: readonly (readonly number[])[], size: number): Int32Array {
  const parent = new Int32Array(size).fill(-1);
  const ancestor = new Int32Array(size).fill(-1);
  for (let k = 0; k < size; k++) {
    for (const start of above[k]!) {
      let i = start;
      while (i !== -1 && i < k) {
        const next = ancestor[i]!;
        ancestor[i] = k;
        if (next === -1) parent[i] = k;
        i = next;
      }
    }
  }
  return parent;
}

interface Rows {
  readonly rowStarts: Int32Array;
  readonly rowColumns: Int32Array;
}

/** Row k of L has an entry wherever a path up the tree leads from an entry of row k of the matrix. */
function rowPatterns(above: readonly (readonly number[])[], parent: Int32Array, size: number): Rows {
  const mark = new Int32Array(size).fill(-1);
  const rowStarts = new Int32Array(size + 1);
  const rows: Int32Array[] = [];
  for (let k = 0; k < size; k++) {
    mark[k] = k;
    const row: number[] = [];
    for (const start of above[k]!) {
      for (let i = start; mark[i] !== k; i = parent[i]!) {
        mark[i] = k;
        row.push(i);
      }
    }
    rows.push(Int32Array.from(row).sort());
    rowStarts[k + 1] = rowStarts[k]! + row.length;
  }
  const rowColumns = new Int32Array(rowStarts[size]!);
  rows.forEach((row, k) => {
    rowColumns.set(row, rowStarts[k]!);
  });
  return { rowStarts, rowColumns };
}

interface Columns {
  readonly columnStarts: Int32Array;
  readonly rowIndex: Int32Array;
  readonly rowSlots: Int32Array;
}

function columnsOf({ rowStarts, rowColumns }: Rows, size: number): Columns {
  const columnStarts = new Int32Array(size + 1);
  for (const column of rowColumns) columnStarts[column + 1]!++;
  for (let j = 0; j < size; j++) columnStarts[j + 1] = columnStarts[j]! + columnStarts[j + 1]! + 1;
  const rowIndex = new Int32Array(columnStarts[size]!);
  const rowSlots = new Int32Array(rowColumns.length);
  const next = columnStarts.slice(0, size);
  for (let k = 0; k < size; k++) {
    rowIndex[next[k]!++] = k;
    for (let p = rowStarts[k]!; p < rowStarts[k + 1]!; p++) {
      const slot = next[rowColumns[p]!]!++;
      rowSlots[p] = slot;
      rowIndex[slot] = k;
    }
  }
  return { columnStarts, rowIndex, rowSlots };
}

function pairSlots(pattern: JacobianPattern, position: Int32Array, columns: Columns) {
  const pairStarts = new Int32Array(pattern.rows + 1);
  for (let k = 0; k < pattern.rows; k++) {
    const m = pattern.starts[k + 1]! - pattern.starts[k]!;
    pairStarts[k + 1] = pairStarts[k]! + (m * (m + 1)) / 2;
  }
  const slots = new Int32Array(pairStarts[pattern.rows]!);
  let next = 0;
  for (let k = 0; k < pattern.rows; k++) {
    for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
      for (let q = pattern.starts[k]!; q <= p; q++) {
        slots[next++] = slotAt(columns, position[pattern.columns[p]!]!, position[pattern.columns[q]!]!);
      }
    }
  }
  return { pairStarts, pairSlots: slots };
}

/** Slot of a pair of positions; -1 where the factor has no entry. */
export function slotAt(
  { columnStarts, rowIndex }: Pick<Columns, 'columnStarts' | 'rowIndex'>,
  a: number,
  b: number,
): number {
  const row = Math.max(a, b);
  const column = Math.min(a, b);
  let low = columnStarts[column]!;
  let high = columnStarts[column + 1]! - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const at = rowIndex[middle]!;
    if (at === row) return middle;
    if (at < row) low = middle + 1;
    else high = middle - 1;
  }
  return -1;
}
