import type { HolePulls } from './types.ts';

/** One tape of a hole, from A's or B's nail to the nail in its stake. Metres. */
export interface ListedTape {
  readonly from: 'A' | 'B';
  readonly level: number;
  /** How much higher one end is than the other, never negative; null where the heights do not tell. */
  readonly rise: number | null;
  /** Along the slope, √(level² + rise²); null where the rise is not known. */
  readonly slope: number | null;
}

/** One hole of the pull list. `withinTape`: held level, and along the slope where the rise is known. */
export interface ListedHole extends Omit<HolePulls, 'fromA' | 'fromB'> {
  readonly tapes: readonly [ListedTape, ListedTape];
}

export interface PullListAsked {
  /** By hole. */
  readonly pulls: ReadonlyMap<string, HolePulls>;
  /** Labels, in the order of the work. */
  readonly order: readonly string[];
  /** Between the ground at a reference stake and at a hole, metres, never negative; null where it is not known. */
  readonly rise: (from: 'A' | 'B', hole: string) => number | null;
  /** The longest tape, metres. */
  readonly reach: number;
}

/** Every hole in the order of the work, with what is there for both its tapes, held level and held along the slope. */
export function pullList({ pulls, order, rise, reach }: PullListAsked): ListedHole[] {
  return order.flatMap((hole) => {
    const found = pulls.get(hole);
    if (!found) return [];
    const { fromA, fromB, ...rest } = found;
    const tapes = [listedTape('A', fromA, rise('A', hole)), listedTape('B', fromB, rise('B', hole))] as const;
    const withinTape = tapes.every(({ level, slope }) => (slope ?? level) <= reach);
    return [{ ...rest, tapes, withinTape }];
  });
}

const listedTape = (from: 'A' | 'B', level: number, rise: number | null): ListedTape => ({
  from,
  level,
  rise,
  slope: rise === null ? null : Math.hypot(level, rise),
});
