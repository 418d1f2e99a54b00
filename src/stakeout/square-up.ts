import { distance, length, subtract, type Vec } from '../geometry/point.ts';
import { toSite } from '../geometry/rigid.ts';
import { fitRigid } from '../geometry/rigid-fit.ts';

/** Four corners in order round, as they stand and as drawn; metres, each set in a frame of its own. */
export interface Corners {
  readonly now: readonly Vec[];
  readonly drawn: readonly Vec[];
}

export interface SquareUp {
  /** Corners that stay where they stand, by their places in the list. */
  readonly held: readonly number[];
  /** How each of the others goes, in the frame in which they stand. */
  readonly moves: readonly { readonly corner: number; readonly by: Vec }[];
}

/** The four as they stand: both diagonals, from the first and from the second corner, metres. */
export const diagonalsOf = (corners: readonly Vec[]): readonly [number, number] => [
  distance(corners[0]!, corners[2]!),
  distance(corners[1]!, corners[3]!),
];

/**
 * What makes four stakes the rectangle that is drawn, with the fewest of them moved, and of those ways the one that moves them
 * least. None where they are it already; one where the other three fit; two, most often a side slid along itself; all four,
 * each to the nearest corner of the rectangle laid over them, where no two of them are the drawn length apart.
 *
 * Of a figure with equal opposite sides that is two stakes of a longer side, by (d₁² − d₂²) / 4a along it, a being that side
 * (derived, not published).
 *
 * @param within what the tapes cannot tell, metres: held stakes may be off by so much
 */
export function squareUp(corners: Corners, within: number): SquareUp {
  const ways = HELD.flatMap((held) => wayWith(corners, held, within) ?? []);
  const most = Math.max(...ways.map(({ held }) => held.length), 0);
  const fewest = ways.filter(({ held }) => held.length === most);
  const [least] = fewest.sort((p, q) => walked(p) - walked(q));
  return least ?? allFour(corners);
}

/** Which corners may be held: all, any three, any two. */
const HELD: readonly (readonly number[])[] = [
  [0, 1, 2, 3],
  ...[0, 1, 2, 3].map((out) => [0, 1, 2, 3].filter((i) => i !== out)),
  ...[0, 1, 2].flatMap((i) => [1, 2, 3].filter((j) => j > i).map((j) => [i, j])),
];

const walked = ({ moves }: SquareUp): number => moves.reduce((sum, { by }) => sum + length(by), 0);

function wayWith({ now, drawn }: Corners, held: readonly number[], within: number): SquareUp | null {
  const fit = fitRigid(held.map((i) => ({ planned: drawn[i]!, found: now[i]! })));
  if (!fit || fit.residuals.some((off) => length(off) > within)) return null;
  const moves = [0, 1, 2, 3]
    .filter((i) => !held.includes(i))
    .map((corner) => ({ corner, by: subtract(toSite(fit.motion, drawn[corner]!), now[corner]!) }));
  return { held, moves };
}

function allFour({ now, drawn }: Corners): SquareUp {
  const fit = fitRigid(now.map((found, i) => ({ planned: drawn[i]!, found })));
  if (!fit) return { held: [], moves: [] };
  return { held: [], moves: fit.residuals.map((off, corner) => ({ corner, by: { x: -off.x, y: -off.y } })) };
}
