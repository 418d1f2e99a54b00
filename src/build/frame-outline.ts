import type { Shape } from '../job/plan-schema.ts';

/** Which posts a frame joins, by label. */
export interface FrameOutline {
  readonly sides: readonly (readonly [string, string])[];
  /** Before, at and after, along the outline. */
  readonly corners: readonly (readonly [string, string, string])[];
  readonly diagonals: readonly (readonly [string, string])[];
  /** The four outer corners of rows and columns: front left, front right, back right, back left. */
  readonly rectangle: readonly [string, string, string, string] | null;
}

/** What the outline needs of a hole. */
export interface Joined {
  readonly label: string;
  readonly neighbours: readonly string[];
}

/** Of free points no more than so many posts are joined by diagonals: twelve have 66 lengths between them. */
const MOST_POINTS = 12;

/** The sides, corners and diagonals of a frame on these posts. A pier in a ring's middle carries no frame. */
export function frameOutline(shape: Shape, holes: readonly Joined[]): FrameOutline {
  switch (shape.kind) {
    case 'ring': {
      const labels = holes.slice(0, shape.count).map(({ label }) => label);
      const corners = around(labels);
      const sides = corners.map(([, at, after]): [string, string] => [at, after]);
      return { sides, corners, diagonals: ringDiagonals(labels), rectangle: null };
    }
    case 'rows':
      return { sides: sidesOf(holes), ...gridOutline(shape.columns, shape.rows, holes) };
    case 'points':
      return { sides: sidesOf(holes), corners: bends(holes), diagonals: unjoined(holes), rectangle: null };
  }
}

/** Each pair of neighbours once, in the order of the holes. */
function sidesOf(holes: readonly Joined[]): [string, string][] {
  const order = new Map(holes.map(({ label }, i) => [label, i]));
  return holes.flatMap(({ label, neighbours }, i) =>
    neighbours
      .filter((other) => order.get(other)! > i)
      .sort((p, q) => order.get(p)! - order.get(q)!)
      .map((other): [string, string] => [label, other]),
  );
}

function around(labels: readonly string[]): [string, string, string][] {
  const n = labels.length;
  return labels.map((label, i) => [labels[(i + n - 1) % n]!, label, labels[(i + 1) % n]!]);
}

/** From post to post across the middle, or as near to it as an odd ring has it; then past one post. */
function ringDiagonals(labels: readonly string[]): [string, string][] {
  const n = labels.length;
  const across = Math.floor(n / 2);
  const pairs = (step: number) =>
    labels
      .map((label, i): [string, string] => [label, labels[(i + step) % n]!])
      .slice(0, 2 * step === n ? step : n);
  if (across < 2) return [];
  return across > 2 ? [...pairs(across), ...pairs(2)] : pairs(across);
}

function gridOutline(columns: number, rows: number, holes: readonly Joined[]): Omit<FrameOutline, 'sides'> {
  const at = (column: number, row: number) => holes[row * columns + column]!.label;
  const last = { column: columns - 1, row: rows - 1 };
  if (last.column === 0 || last.row === 0) {
    const line = holes.map(({ label }) => label);
    const corners = line
      .slice(1, -1)
      .map((label, i): [string, string, string] => [line[i]!, label, line[i + 2]!]);
    return { corners, diagonals: [], rectangle: null };
  }
  const rim = [
    ...Array.from({ length: last.column }, (_, i) => at(i, 0)),
    ...Array.from({ length: last.row }, (_, i) => at(last.column, i)),
    ...Array.from({ length: last.column }, (_, i) => at(last.column - i, last.row)),
    ...Array.from({ length: last.row }, (_, i) => at(0, last.row - i)),
  ];
  const rectangle = [at(0, 0), at(last.column, 0), at(last.column, last.row), at(0, last.row)] as const;
  const [a, b, c, d] = rectangle;
  const whole: [string, string][] = [
    [a, c],
    [b, d],
  ];
  const bays = Array.from({ length: last.column * last.row }, (_, i): [string, string][] => {
    const column = i % last.column;
    const row = Math.floor(i / last.column);
    return [
      [at(column, row), at(column + 1, row + 1)],
      [at(column + 1, row), at(column, row + 1)],
    ];
  });
  return {
    corners: around(rim),
    diagonals: bays.length === 1 ? whole : [...whole, ...bays.flat()],
    rectangle,
  };
}

const bends = (holes: readonly Joined[]): [string, string, string][] =>
  holes.flatMap(({ label, neighbours }): [string, string, string][] =>
    neighbours.length === 2 ? [[neighbours[0]!, label, neighbours[1]!]] : [],
  );

function unjoined(holes: readonly Joined[]): [string, string][] {
  if (holes.length > MOST_POINTS) return [];
  return holes.flatMap(({ label, neighbours }, i) =>
    holes
      .slice(i + 1)
      .filter((other) => !neighbours.includes(other.label))
      .map((other): [string, string] => [label, other.label]),
  );
}
