import type { PullEnd, Thing } from '../../job/entry-schema.ts';
import type { PullToRead } from '../pull-flow.tsx';
import { STAKE_A, STAKE_B } from './stake-step.ts';

const nailIn = (thing: Thing): PullEnd => ({ thing, touch: { at: 'nail' } });

/** A's nail to B's nail. @param expected level, metres */
export const baselinePull = (expected: number): PullToRead => ({
  from: nailIn(STAKE_A),
  to: nailIn(STAKE_B),
  expected,
});

/** From A's or B's nail to the nail in a hole's stake. @param expected level, metres */
export const pullToStake = (from: Thing, hole: string, expected: number): PullToRead => ({
  from: nailIn(from),
  to: nailIn({ kind: 'hole-stake', hole }),
  expected,
});

/** Nail to nail between any two stakes. @param expected level, metres */
export const nailPull = (from: Thing, to: Thing, expected: number): PullToRead & { expected: number } => ({
  from: nailIn(from),
  to: nailIn(to),
  expected,
});
