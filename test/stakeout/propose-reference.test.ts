import { describe, expect, it } from 'vitest';
import { distance, type PlanPoint } from '../../src/geometry/point.ts';
import type { Plan } from '../../src/job/plan-schema.ts';
import { defaultPlan, holesOf } from '../../src/plan/index.ts';
import {
  judgeReference,
  nextReferenceLabel,
  proposeReference,
  proposeStakes,
  type ReferenceAsked,
  STAKE_CLEARANCE,
} from '../../src/stakeout/index.ts';
import { metres, pointsPlan, ringPlan, rowsPlan } from '../plan/plans.ts';

const DEGREE = Math.PI / 180;
const { instruments } = defaultPlan('m');

function askedOf(plan: Plan, change: Partial<ReferenceAsked> = {}): ReferenceAsked {
  const holes = holesOf(plan);
  const { a, b } = proposeStakes(holes, instruments, { units: 'm' })!;
  return { a, b, others: [], holes, instruments, units: 'm', ...change };
}

const PLANS = [
  ringPlan({ pier: true }),
  ringPlan({ count: 5, size: metres(1.5) }),
  ringPlan({ count: 16, size: metres(6) }),
  rowsPlan(),
  rowsPlan({ columns: 5, rows: 4 }),
  pointsPlan([
    ['1', -3, 1],
    ['2', 4, 2],
    ['3', 0.5, -2],
  ]),
];

describe('where a third stake would best stand', () => {
  it('is a place without objections, in round numbers, that guards every hole', () => {
    for (const plan of PLANS) {
      const asked = askedOf(plan);
      const at = proposeReference(asked)!;
      const choice = judgeReference(at, 'C', asked);
      expect(choice.objections).toEqual([]);
      expect(choice.guards).toEqual(asked.holes.map(({ label }) => label));
      for (const value of [at.x, at.y])
        expect(Math.abs(value * 2 - Math.round(value * 2))).toBeLessThan(1e-9);
    }
  });

  it('makes a triangle with A and B that is nowhere flat', () => {
    for (const plan of PLANS) {
      const asked = askedOf(plan);
      const { angles } = judgeReference(proposeReference(asked)!, 'C', asked);
      expect(Math.min(angles.a, angles.b, angles.c)).toBeGreaterThan(35 * DEGREE);
      expect(angles.a + angles.b + angles.c).toBeCloseTo(Math.PI, 9);
    }
  });

  it('keeps within the tape of A and B, and finds no place where it cannot', () => {
    const short = { ...instruments, tapeLength: metres(9) };
    const asked = askedOf(ringPlan(), { instruments: short });
    const at = proposeReference(asked)!;
    for (const stake of [asked.a, asked.b]) expect(distance(stake, at)).toBeLessThanOrEqual(9);
    const hopeless = { ...asked, instruments: { ...instruments, tapeLength: metres(1) } };
    expect(proposeReference(hopeless)).toBeNull();
  });

  it('stands apart from stakes that are there already', () => {
    const asked = askedOf(ringPlan());
    const c = proposeReference(asked)!;
    const d = proposeReference({ ...asked, others: [c] })!;
    expect(distance(c, d)).toBeGreaterThan(2 * STAKE_CLEARANCE - 1e-9);
  });

  it('is the same every time, and in feet where the job is in feet', () => {
    const asked = askedOf(ringPlan(), { units: 'ft-in-16' });
    const at = proposeReference(asked)!;
    expect(proposeReference(asked)).toEqual(at);
    for (const value of [at.x, at.y])
      expect(Math.abs(value / 0.3048 - Math.round(value / 0.3048))).toBeLessThan(1e-9);
  });
});

describe('what speaks against a place', () => {
  const asked = askedOf(ringPlan(), { a: { x: -4, y: -5 }, b: { x: 4, y: -5 } });
  const objections = (x: number, y: number) => judgeReference({ x, y }, 'C', asked).objections;

  it('is nothing for a good one', () => {
    const { x, y } = proposeReference(asked)!;
    expect(objections(x, y)).toEqual([]);
  });
  it('is that it lies in line with a stake and a hole, where it guards nothing', () => {
    expect(objections(0, 7)).toEqual([
      'C lies nearly in line with B and hole 2 (and 5 more like it): a misread tape from A would not show there. Put C off that line.',
    ]);
  });
  it('is that the ground bars it, or a house hides holes from it', () => {
    const house = {
      name: 'House',
      kind: 'house',
      from: { x: -6, y: 5 },
      to: { x: 6, y: 5 },
      keep: null,
    } as const;
    const with1 = (x: number, y: number, noStakes: 'left' | 'right' = 'left') =>
      judgeReference({ x, y }, 'C', { ...asked, lines: [{ ...house, noStakes }] }).objections;
    expect(with1(0, 7)[0]).toBe('C would stand in House: move it 1.975 m or more, to where there is ground.');
    expect(with1(6.5, 6)[0]).toMatch(/^House stands between C and \d holes: no tape goes through it/);
    const at = proposeReference({ ...asked, lines: [{ ...house, noStakes: 'left' }] })!;
    expect(at.y).toBeLessThanOrEqual(5.1);
  });
  it('is that it stands in a hole or its spoil', () => {
    expect(objections(0, 3)).toEqual([
      expect.stringMatching(/^C stands in hole 1: move it 1\.200 m clear of every hole\.$/),
    ]);
    expect(objections(0, 3.5)[0]).toMatch(/^C stands .* from the edge of hole 1, where spoil will lie/);
  });
  it('is that it stands beside another stake', () => {
    expect(objections(-4, -5.5)[0]).toMatch(
      /^C is 0\.500 m from another stake: what knocks one knocks the other/,
    );
  });
  it('is that it lies in line with A and B', () => {
    expect(objections(9, -5.5)).toEqual([
      expect.stringMatching(/^A, B and C lie nearly in one line, with a corner of 2°/),
    ]);
  });
  it('is that the tape does not reach it', () => {
    expect(objections(0, 60)[0]).toMatch(/^C is 65\.\d+ m from [AB], and the tape is .*: move it nearer\.$/);
  });

  it('begins with a capital, whatever the thing is called', () => {
    const { objections: said } = judgeReference({ x: 0, y: 3 }, 'nail N1', asked);
    expect(said[0]).toMatch(/^Nail N1 stands in hole 1/);
  });

  it('holds two level lengths to it', () => {
    const at: PlanPoint = { x: 4, y: 1 };
    expect(judgeReference(at, 'C', asked)).toMatchObject({ fromA: 10, fromB: 6 });
  });
});

describe('the name of the next one', () => {
  it('goes on from A and B, and leaves out what is taken', () => {
    expect(nextReferenceLabel('stake', [])).toBe('C');
    expect(nextReferenceLabel('stake', ['C', 'D'])).toBe('E');
    expect(nextReferenceLabel('nail', [])).toBe('N1');
    expect(nextReferenceLabel('nail', ['N1', 'C'])).toBe('N2');
  });
});
