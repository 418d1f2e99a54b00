import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bearingOf, distance, type Vec } from '../../src/geometry/point.ts';
import { type RigidMotion, toSite } from '../../src/geometry/rigid.ts';
import type { FromStakes, Pulled } from '../../src/job/place-schema.ts';
import {
  fiveTapes,
  foundBy,
  holesOf,
  type LaidOnPegs,
  type LaidOnStakes,
  layOnPegs,
  layOnStakes,
} from '../../src/plan/index.ts';
import { closureOf } from '../../src/stakeout/index.ts';
import { metres, ringPlan } from './plans.ts';

const plan = ringPlan();
const holes = holesOf(plan);
const { instruments } = plan;

/** What tapes and a square would read of a place, to the micrometre. */
const fine = (m: number) => ({ m, typed: String(m), units: 'm' as const });
const pulledTo = (at: Vec, baseline: number): Pulled => ({
  by: 'pulls',
  fromA: fine(Math.hypot(at.x, at.y)),
  fromB: fine(Math.hypot(at.x - baseline, at.y)),
  side: at.y > 0 ? 'left' : 'right',
});
const offTo = (at: Vec): FromStakes => ({
  by: 'offset',
  station: fine(at.x),
  offset: fine(Math.abs(at.y)),
  side: at.y > 0 ? 'left' : 'right',
});

/** A plan that lies anywhere off the line A–B, and how long that is. */
const anyLie = fc
  .record({
    turn: fc.integer({ min: -180, max: 180 }),
    x: fc.integer({ min: -40, max: 140 }),
    y: fc.integer({ min: 40, max: 150 }),
    left: fc.boolean(),
    baseline: fc.integer({ min: 20, max: 150 }),
  })
  .map(({ turn, x, y, left, baseline }) => ({
    motion: { turn: (turn * Math.PI) / 180, shift: { x: x / 10, y: (left ? y : -y) / 10 } },
    baseline: baseline / 10,
  }));

/** Where the motion that follows from A and B takes a place of the plan. */
function lies({ a, b }: { a: Vec; b: Vec }, place: Vec): Vec {
  const turn = -bearingOf({ x: b.x - a.x, y: b.y - a.y });
  return toSite({ turn, shift: { x: 0, y: 0 } }, { x: place.x - a.x, y: place.y - a.y });
}

function expectLaid(laid: { a: Vec; b: Vec }, motion: RigidMotion, baseline: number) {
  expect(distance(laid.a, laid.b)).toBeCloseTo(baseline, 9);
  for (const { place } of holes)
    expect(distance(lies(laid, place), toSite(motion, place))).toBeLessThan(1e-6);
}

describe('a plan laid on two points that are there', () => {
  it('lies with its centre and its front where they were told to be, by tapes or by station and offset', () => {
    fc.assert(
      fc.property(anyLie, fc.boolean(), fc.boolean(), ({ motion, baseline }, taped, frontTaped) => {
        const [centre, front] = [toSite(motion, { x: 0, y: 0 }), toSite(motion, { x: 0, y: 3.5 })];
        const laid = layOnStakes(
          {
            on: 'stakes',
            baseline: fine(baseline),
            centre: taped ? pulledTo(centre, baseline) : offTo(centre),
            front: frontTaped ? pulledTo(front, baseline) : offTo(front),
          },
          instruments,
        );
        if (!laid.ok) throw new Error(laid.problem.text);
        expectLaid(laid.value, motion, baseline);
      }),
    );
  });

  it.each([
    ['left', 0],
    ['right', 180],
    ['A to B', -90],
    ['B to A', 90],
  ] as const)('with its front to the %s', (way, degrees) => {
    const motion = { turn: (degrees * Math.PI) / 180, shift: { x: 4, y: 6 } };
    const laid = layOnStakes(
      { on: 'stakes', baseline: metres(8), centre: offTo({ x: 4, y: 6 }), front: { by: 'way', way } },
      instruments,
    );
    if (!laid.ok) throw new Error(laid.problem.text);
    expectLaid(laid.value, motion, 8);
  });

  const sound: LaidOnStakes = {
    on: 'stakes',
    baseline: metres(8),
    centre: pulledTo({ x: 4, y: 6 }, 8),
    front: { by: 'way', way: 'left' },
  };
  const refused = (change: Partial<LaidOnStakes>) => {
    const laid = layOnStakes({ ...sound, ...change }, instruments);
    return laid.ok ? '' : laid.problem.text;
  };
  it.each([
    [
      { baseline: metres(0) },
      'A to B: they are 0.000 m apart; take two points that are 0.500 m apart or more.',
    ],
    [
      { baseline: metres(31) },
      'A to B: 31.000 m is more than the tape, 30 m; take points that are nearer, or put the length of a longer tape in the plan.',
    ],
    [
      { centre: { ...pulledTo({ x: 4, y: 6 }, 8), fromA: metres(16), fromB: metres(7) } },
      'Centre: 16.000 m from A and 7.000 m from B differ by more than A to B, 8.000 m, so that no such place is there; pull again from A and from B, and A to B.',
    ],
    [
      { front: offTo({ x: 4, y: 6.1 }) },
      'Front: that place is 0.100 m from the centre; take one straight before it and 0.300 m away or more, as far off as the posts if you can.',
    ],
    [
      { front: { ...pulledTo({ x: 4, y: 9 }, 8), fromB: metres(40) } },
      'Tape from B to the front: 40.000 m is more than the tape, 30 m; take points that are nearer, or put the length of a longer tape in the plan.',
    ],
  ] as const)('refuses what cannot be, in words', (change, text) => {
    expect(refused(change)).toBe(text);
  });
});

/** The five tapes to the stakes of two holes of a plan that lies so. */
function pegsOf(motion: RigidMotion, baseline: number, [p, q]: readonly [string, string]): LaidOnPegs {
  const peg = (hole: string) => ({
    hole,
    ...pulledTo(toSite(motion, holes.find(({ label }) => label === hole)!.place), baseline),
  });
  return { on: 'pegs', baseline: fine(baseline), pegs: [peg(p), peg(q)] };
}

describe('a plan laid on two stakes of holes', () => {
  it('puts A and B where the five tapes say', () => {
    fc.assert(
      fc.property(anyLie, ({ motion, baseline }) => {
        const laid = layOnPegs(pegsOf(motion, baseline, ['1', '4']), holes, instruments);
        if (!laid.ok) throw new Error(laid.problem.text);
        expectLaid(laid.value, motion, baseline);
        expect(laid.value.found).toBeCloseTo(laid.value.planned, 6);
      }),
    );
  });

  const motion = { turn: 0.3, shift: { x: 3, y: 7 } };
  const sound = pegsOf(motion, 8, ['1', '4']);
  const closure = (laid: LaidOnPegs) => {
    const on = layOnPegs(laid, holes, instruments);
    if (!on.ok) throw new Error(on.problem.text);
    return closureOf(laid, on.value, instruments, 'm');
  };
  /** With one tape to the second stake misread. */
  const misread = (by: number): LaidOnPegs => {
    const [p, q] = sound.pegs;
    return { ...sound, pegs: [p, { ...q, fromA: metres(q.fromA.m + by) }] };
  };

  it('says that it closes, within what the tapes may be off', () => {
    expect(closure(sound)).toEqual({
      closes: true,
      text: 'By these tapes stakes 1 and 4 are 5.543 m apart, and the plan has 5.543 m: it closes.',
    });
    expect(closure(misread(0.003)).text).toMatch(
      /: \d mm (more|less), no more than such tapes may be off; it closes\.$/,
    );
  });
  it('counts every tape, one that would not meet the others if it were longer by how it does when shorter', () => {
    const coarse = { ...instruments, tapeError: metres(0.01), tapeErrorPerMetre: 0 };
    const near = (x: number, y: number): LaidOnPegs => ({
      ...sound,
      pegs: [sound.pegs[0], { hole: '4', ...pulledTo({ x, y }, 8) }],
    });
    // Behind B and on the line, where 10 mm more from A would not meet the tape from B.
    const beside = near(12, 0.05);
    const laid = layOnPegs(beside, holes, coarse);
    if (!laid.ok) throw new Error(laid.problem.text);
    const tapes = fiveTapes(beside).map(({ m }) => m);
    const shorter = foundBy(beside, tapes.with(3, tapes[3]! - 0.01));
    expect(laid.value.allowed).toBeGreaterThan(3.29 * Math.abs(shorter - laid.value.found));
    expect(layOnPegs(near(8, 0.005), holes, coarse)).toMatchObject({
      problem: { text: expect.stringMatching(/^Stakes 1 and 4: one of them is so near A or B that/) },
    });
  });
  it('says by how much it does not, and shares the misfit', () => {
    const { closes, text } = closure(misread(0.043));
    expect(closes).toBe(false);
    expect(text).toMatch(
      / \d+ mm more\. It does not close\. Pull all five again\. If they bear it out, the stakes do not stand where these holes are to be: each will be told as \d+ mm off its mark\.$/,
    );
    const laid = layOnPegs(misread(0.043), holes, instruments);
    if (!laid.ok) throw new Error(laid.problem.text);
    const off = ['1', '4'].map((label, i) => {
      const { fromA, fromB } = misread(0.043).pegs[i]!;
      const at = lies(laid.value, holes.find((hole) => hole.label === label)!.place);
      const along = (fromA.m ** 2 - fromB.m ** 2 + 64) / 16;
      return distance(at, { x: along, y: Math.sqrt(fromA.m ** 2 - along ** 2) });
    });
    expect(off[0]).toBeCloseTo((laid.value.found - laid.value.planned) / 2, 9);
    expect(off[1]).toBeCloseTo(off[0]!, 9);
  });
  it('names a whole metre that one tape would explain', () => {
    expect(closure(misread(1)).text).toMatch(
      /It would if A to stake 4 were \d+\.\d{3} m\. One metre too much/,
    );
  });
  it('refuses two stakes of one hole, a hole that the plan has not, and tapes that do not meet', () => {
    const refused = (pegs: LaidOnPegs['pegs']) => {
      const laid = layOnPegs({ ...sound, pegs }, holes, instruments);
      return laid.ok ? '' : laid.problem.text;
    };
    const [p, q] = sound.pegs;
    expect(refused([p, { ...q, hole: '1' }])).toBe(
      'Stake 1: both stakes are said to be of this hole; choose two holes.',
    );
    expect(refused([p, { ...q, hole: '9' }])).toBe(
      'Stake 9: the plan has no such hole; choose one that it has.',
    );
    expect(refused([p, { ...q, fromA: metres(20) }])).toMatch(
      /^Stake 4: 20\.000 m from A and .* differ by more than A to B/,
    );
    expect(refused([p, { ...q, fromA: metres(1), fromB: metres(2) }])).toMatch(
      /^Stake 4: 1\.000 m from A and 2\.000 m from B do not meet/,
    );
  });
});
