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
  /** The same L by rows, without the diagonal: columns, children in the tree before parents, and their slots. */
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
  const all = symmetric(pattern, groups, (p) => groupOf[pattern.columns[p]!]!);
  const starts = new Int32Array(groups + 1);
  let kept = 0;
  for (let i = 0; i < groups; i++) {
    const list = all.items.subarray(all.starts[i]!, all.starts[i + 1]!).sort();
    let last = -1;
    for (const j of list) {
      if (j === last) continue;
      // Never catches up with what is still to be read: repeats only shorten the list.
      all.items[kept++] = j;
      last = j;
    }
    starts[i + 1] = kept;
  }
  return { nodes: groups, starts, neighbours: all.items.slice(0, kept) };
}

interface Lists {
  readonly starts: Int32Array;
  readonly items: Int32Array;
}

/** For each label, the other labels that it shares a row with, with repeats. `label` names an entry of the Jacobian. */
function symmetric(pattern: JacobianPattern, labels: number, label: (entry: number) => number): Lists {
  return listed(labels, (put) => {
    for (let k = 0; k < pattern.rows; k++) {
      for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
        for (let q = pattern.starts[k]!; q < p; q++) {
          const a = label(p);
          const b = label(q);
          if (a === b) continue;
          put(a, b);
          put(b, a);
        }
      }
    }
  });
}

/** Collects items into lists laid end to end: `walk` is run twice, first to count. */
function listed(lists: number, walk: (put: (list: number, item: number) => void) => void): Lists {
  const starts = new Int32Array(lists + 1);
  walk((list) => {
    starts[list + 1]!++;
  });
  for (let i = 0; i < lists; i++) starts[i + 1]! += starts[i]!;
  const next = starts.slice(0, lists);
  const items = new Int32Array(starts[lists]!);
  walk((list, item) => {
    items[next[list]!++] = item;
  });
  return { starts, items };
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
function upperPattern(pattern: JacobianPattern, position: Int32Array): Lists {
  return listed(pattern.unknowns, (put) => {
    for (let k = 0; k < pattern.rows; k++) {
      for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
        const a = position[pattern.columns[p]!]!;
        for (let q = pattern.starts[k]!; q < p; q++) {
          const b = position[pattern.columns[q]!]!;
          put(Math.max(a, b), Math.min(a, b));
        }
      }
    }
  });
}

/** Liu's algorithm, with path compression. */
function eliminationTree({ starts, items }: Lists, size: number): Int32Array {
  const parent = new Int32Array(size).fill(-1);
  const ancestor = new Int32Array(size).fill(-1);
  for (let k = 0; k < size; k++) {
    for (let p = starts[k]!; p < starts[k + 1]!; p++) {
      let i = items[p]!;
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

/**
 * Row k of L has an entry wherever a path up the tree leads from an entry of row k of the matrix. Each row is given with
 * children before parents, as the factorisation needs it: a new path goes in front of the paths that it runs into.
 */
function rowPatterns({ starts, items }: Lists, parent: Int32Array, size: number): Rows {
  const mark = new Int32Array(size).fill(-1);
  const rowStarts = new Int32Array(size + 1);
  const row = new Int32Array(size);
  const path = new Int32Array(size);
  let rowColumns = new Int32Array(4 * size);
  for (let k = 0; k < size; k++) {
    mark[k] = k;
    let top = size;
    for (let p = starts[k]!; p < starts[k + 1]!; p++) {
      let length = 0;
      for (let i = items[p]!; mark[i] !== k; i = parent[i]!) {
        mark[i] = k;
        path[length++] = i;
      }
      while (length > 0) row[--top] = path[--length]!;
    }
    const end = rowStarts[k]! + size - top;
    if (end > rowColumns.length) rowColumns = grown(rowColumns, end);
    for (let at = rowStarts[k]!; at < end; at++) rowColumns[at] = row[top++]!;
    rowStarts[k + 1] = end;
  }
  return { rowStarts, rowColumns: rowColumns.slice(0, rowStarts[size]!) };
}

function grown(array: Int32Array, least: number): Int32Array<ArrayBuffer> {
  const out = new Int32Array(Math.max(least, 2 * array.length));
  out.set(array);
  return out;
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
