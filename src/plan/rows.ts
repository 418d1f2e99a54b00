import type { PlanPoint } from '../geometry/point.ts';
import type { Rows } from '../job/plan-schema.ts';
import type { Section } from './hole.ts';

/** Centre-to-centre spacing of columns (to the right) and rows (to the front), metres; 0 where there is but one. */
export interface Pitch {
  readonly right: number;
  readonly front: number;
}

/**
 * Out-to-out sizes run over the outer faces of the outer posts, turned to the grid, by their *actual* section: the
 * outer centres stand half a section inside each.
 */
export function pitchOf(rows: Rows, section: Section): Pitch {
  const [width, depth] =
    section.kind === 'post' ? [section.width, section.depth] : [section.diameter, section.diameter];
  const pitch = (size: number, count: number, face: number) => {
    if (count === 1) return 0;
    return rows.measuredTo === 'centres' ? size : (size - face) / (count - 1);
  };
  return {
    right: pitch(rows.columnSpacing.m, rows.columns, width),
    front: pitch(rows.rowSpacing.m, rows.rows, depth),
  };
}

/** Centres of rows about the plan's centre: the front row first, each from left to right. */
export function rowPlaces(rows: Rows, section: Section): PlanPoint[] {
  const pitch = pitchOf(rows, section);
  return Array.from({ length: rows.columns * rows.rows }, (_, i) => {
    const column = i % rows.columns;
    const row = Math.floor(i / rows.columns);
    return {
      x: (column - (rows.columns - 1) / 2) * pitch.right,
      y: ((rows.rows - 1) / 2 - row) * pitch.front,
    };
  });
}

/** Indices of the holes beside hole `i` in its row and its column. */
export function rowNeighbours({ columns, rows }: Rows, i: number): number[] {
  const column = i % columns;
  const row = Math.floor(i / columns);
  return [
    ...(row > 0 ? [i - columns] : []),
    ...(column + 1 < columns ? [i + 1] : []),
    ...(row + 1 < rows ? [i + columns] : []),
    ...(column > 0 ? [i - 1] : []),
  ];
}
