import { describe, expect, test } from 'vitest';
import type { Body } from '../../src/job/entry-schema.ts';
import { situate } from '../../src/judge/situation.ts';
import { doubtOf, doubtWords } from '../../src/screens/belief.ts';
import type { PullToRead } from '../../src/screens/pull-flow.tsx';
import { inches, sampleBodies } from '../job/sample.ts';
import {
  BASELINE,
  CHECKS,
  checked,
  holeStake,
  logOf,
  PULLS,
  READY,
  STAKED,
  stake,
} from './stake/field-day.ts';

const foot = 0.3048;
const nail = { at: 'nail' } as const;
const toStake = (hole: string): PullToRead => ({
  from: { thing: stake('A'), touch: nail },
  to: { thing: holeStake(hole), touch: nail },
  expected: PULLS.get(hole)!.fromA,
});
const doubt = (bodies: readonly Body[], pull: PullToRead, m: number, how: 'level' | 'slope' = 'level') =>
  doubtOf(pull, m, how, situate(logOf(bodies)));

describe('the question', () => {
  const about = { expected: inches('18 6 5/16').m, sigma: 0.01, units: 'ft-in-16' } as const;

  test('names the slip that fits', () => {
    expect(doubtWords({ ...about, reading: inches('19 6 5/16').m })).toBe(
      'This is 1′ 0″ more than expected (18′ 6 5/16″). One foot too much: is it 18′ 6 5/16″? Read it again, or keep it as read.',
    );
  });

  test('names what else may be wrong before it asks to read again', () => {
    expect(doubtWords({ ...about, reading: inches('20 1 3/16').m }, 'Or the other tape is wrong.')).toBe(
      'This is 1′ 6 7/8″ more than expected (18′ 6 5/16″). Or the other tape is wrong. Read it again, or keep it as read.',
    );
  });

  test('names none where none fits', () => {
    expect(doubtWords({ ...about, reading: inches('20 1 3/16').m })).toBe(
      'This is 1′ 6 7/8″ more than expected (18′ 6 5/16″). Read it again, or keep it as read.',
    );
  });

  test('is not asked of what luck explains', () => {
    expect(doubtWords({ ...about, reading: about.expected + 0.03 })).toBeNull();
    expect(doubtWords({ ...about, reading: about.expected + 0.04 })).not.toBeNull();
  });
});

describe('a reading is held against what is known', () => {
  const { fromA } = PULLS.get('4')!;

  test('before anything is known, against nothing', () => {
    expect(doubtOf({ ...toStake('4'), expected: 5 }, 9, 'level', situate([]))).toBeNull();
  });

  test('a stake driven by the plan: an inch passes, a foot does not', () => {
    expect(doubt(READY, toStake('4'), fromA + 0.0254)).toBeNull();
    expect(doubt(READY, toStake('4'), fromA - foot)).toContain('One foot too little');
  });

  test('a stake that is measured: an inch does not pass either', () => {
    expect(doubt(STAKED, toStake('4'), fromA + 0.0254)).toContain('One inch too much');
  });

  test('A–B against the plan, then against itself', () => {
    const line: PullToRead = {
      from: { thing: stake('A'), touch: nail },
      to: { thing: stake('B'), touch: nail },
      expected: BASELINE,
    };
    expect(doubt(READY, line, BASELINE + 0.0254)).toContain('One inch too much');
    expect(doubt(READY.slice(0, -1), line, BASELINE + 0.0254)).toBeNull();
  });

  test('what reads as planned is never asked about, even after a misreading nearby', () => {
    const [first, second] = CHECKS as [(typeof CHECKS)[number], (typeof CHECKS)[number]];
    const wrong: Body = {
      kind: 'pull',
      from: first.from,
      to: first.to,
      reading: inches('9 0'),
      hold: { how: 'level' },
    };
    expect(doubt([...STAKED, wrong], second, second.expected)).toBeNull();
    expect(doubt([...STAKED, ...checked(1)], second, second.expected + foot)).not.toBeNull();
  });

  test('a tape along the slope may read longer, but not by any amount', () => {
    expect(doubt(READY, toStake('4'), fromA * 1.01, 'slope')).toBeNull();
    expect(doubt(READY, toStake('4'), fromA * 1.2, 'slope')).not.toBeNull();
  });

  test('a level tape that reads the slope is named as such, where a rod has read both ends', () => {
    const rods: Body[] = [
      { kind: 'rod', setup: '1', on: { point: 'benchmark' }, reading: inches('4 0') },
      { kind: 'rod', setup: '1', on: { point: 'stake', label: 'A' }, reading: inches('9 0') },
      { kind: 'rod', setup: '1', on: { point: 'ground', hole: '4' }, reading: inches('1 0') },
    ];
    const along = Math.hypot(fromA, 8 * foot);
    expect(doubt([...STAKED, ...rods], toStake('4'), along)).toContain('along the slope');
    expect(doubt([...STAKED, ...rods], toStake('4'), along, 'slope')).toBeNull();
  });

  test('a post that was never pulled to is held against the plan, and a centre for a face is named', () => {
    const face: PullToRead = {
      from: { thing: stake('A'), touch: nail },
      to: { thing: { kind: 'post', hole: '4' }, touch: { at: 'face', side: 'front' } },
      expected: 6,
    };
    expect(doubt(STAKED, face, 6.1)).toBeNull();
    expect(doubt(STAKED, face, 6 + foot)).toContain('One foot too much');
    expect(doubt([...STAKED, sampleBodies.dug], face, 6 + foot)).toContain('One foot too much');
  });
});
