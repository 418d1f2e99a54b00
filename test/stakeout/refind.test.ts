import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circlesMeet } from '../../src/geometry/circles.ts';
import { distance, type Vec } from '../../src/geometry/point.ts';
import type { Thing } from '../../src/job/entry-schema.ts';
import { touchedPoint } from '../../src/stakeout/ends.ts';
import { refind } from '../../src/stakeout/refind.ts';
import type { StandingThing } from '../../src/stakeout/refind-types.ts';
import { metres, ringPlan } from '../plan/plans.ts';
import { stringsOn } from './string-jobs.ts';

/** Two millimetres in every tape, however long. */
const { instruments: usual } = ringPlan();
const instruments = { ...usual, tapeLength: metres(30), tapeError: metres(0.002), tapeErrorPerMetre: 0 };
const SIGMA = 0.002;

const known = (sigma: number) => ({ xx: sigma ** 2, xy: 0, yy: sigma ** 2 });
const stake = (label: string, x: number, y: number, sigma = 0): StandingThing => ({
  thing: { kind: 'stake', label },
  place: { x, y },
  covariance: known(sigma),
  post: null,
});
const TARGET = { x: 0, y: 0 };
const names = (things: readonly { readonly thing: Thing }[]) =>
  things.map(({ thing }) => ('label' in thing ? thing.label : thing.hole));

describe('finding a centre again', () => {
  it('takes the two that cross square before two that are nearer and flat', () => {
    const standing = [stake('A', -5, 0), stake('B', -4, 0.5), stake('C', 0, -9)];
    const { tapes, noTapes } = refind({ target: TARGET, standing, instruments });
    expect(noTapes).toBeNull();
    expect(names(tapes!.pulls.map(({ from }) => from)).sort()).toEqual(['A', 'C']);
    expect(tapes!.angle).toBeCloseTo(Math.PI / 2, 12);
    // √2 σ for tapes that cross square: derived, not published.
    expect(tapes!.error).toBeCloseTo(Math.SQRT2 * SIGMA, 12);
  });

  it('counts in how well each is known itself, along the tape alone', () => {
    const loose = { ...stake('A', -5, 0), covariance: { xx: 0.02 ** 2, xy: 0, yy: 0 } };
    const sideways = { ...stake('D', 5, 0), covariance: { xx: 0, xy: 0, yy: 0.02 ** 2 } };
    const { tapes } = refind({ target: TARGET, standing: [loose, sideways, stake('C', 0, -9)], instruments });
    expect(names(tapes!.pulls.map(({ from }) => from)).sort()).toEqual(['C', 'D']);
    expect(tapes!.error).toBeCloseTo(Math.SQRT2 * SIGMA, 12);
  });

  it('reads right lengths on the right side, and a third that proves them', () => {
    const places = fc.record({
      x: fc.double({ min: -12, max: 12, noNaN: true }),
      y: fc.double({ min: -12, max: 12, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(places, { minLength: 2, maxLength: 6 }), places, (at, target) => {
        const standing = at.map(({ x, y }, i) => stake(`S${i}`, x, y, 0.003));
        const { tapes, noTapes } = refind({ target, standing, instruments });
        expect(tapes === null).toBe(noTapes !== null);
        if (!tapes) return;
        const place = (thing: Thing): Vec =>
          standing.find((each) => names([each])[0] === names([{ thing }])[0])!.place;
        const [one, other] = tapes.pulls;
        const meeting = circlesMeet(
          place(one.from.thing),
          one.expected,
          place(other.from.thing),
          other.expected,
        )!;
        expect(distance(meeting[tapes.side], target)).toBeLessThan(1e-8);
        expect(tapes.angle).toBeGreaterThan(Math.PI / 6 - 1e-9);
        expect(tapes.angle).toBeLessThan((5 * Math.PI) / 6 + 1e-9);
        if (tapes.proof)
          expect(distance(place(tapes.proof.from.thing), target)).toBeCloseTo(tapes.proof.expected, 9);
      }),
      { numRuns: 200 },
    );
  });

  it('touches a set post on the face that looks to the centre, and pulls past no other post', () => {
    const { asked } = stringsOn(ringPlan({ count: 8, pier: true }));
    const target = asked.holes[0]!;
    const standing = asked.holes.slice(1).map(
      (hole): StandingThing => ({
        thing: { kind: 'post', hole: hole.label },
        place: hole.site,
        covariance: known(0.003),
        post: hole,
      }),
    );
    const { tapes } = refind({ target: target.site, standing, instruments });
    for (const { from, expected } of tapes!.pulls) {
      const { hole } = from.thing as Extract<Thing, { kind: 'post' }>;
      const post = asked.holes.find(({ label }) => label === hole)!;
      expect(distance(touchedPoint(post, from, target.site), target.site)).toBeCloseTo(expected, 12);
      // Post 5 stands right behind the pier.
      expect(hole).not.toBe('5');
    }
  });

  it.each([
    ['nothing stands', [], 'nothing-stands'],
    ['one stake alone stands', [stake('A', -5, 0)], 'one-stands'],
    ['all but one are beyond the tape', [stake('A', -5, 0), stake('B', 50, 0)], 'beyond-tape'],
    ['both stand in line with it', [stake('A', -5, 0), stake('B', 5, 0.5)], 'in-line'],
  ] as const)('says that there is no way, and why: %s', (_, standing, why) => {
    expect(refind({ target: TARGET, standing, instruments })).toMatchObject({ tapes: null, noTapes: why });
  });

  it('says that posts are in the way', () => {
    const { asked } = stringsOn(ringPlan({ count: 8 }));
    const [hole] = asked.holes;
    const wall = (x: number, y: number): StandingThing => ({
      thing: { kind: 'post', hole: `${x}` },
      place: { x, y },
      covariance: known(0),
      post: { ...hole!, site: { x, y }, label: `${x}`, section: { kind: 'pier', diameter: 1 } },
    });
    const standing = [stake('A', -5, 0), stake('B', 0, -5), wall(-2, 0), wall(0.1, -2)];
    const { tapes } = refind({ target: TARGET, standing, instruments });
    expect(names(tapes!.pulls.map(({ from }) => from)).sort()).toEqual(['-2', '0.1']);
    const hidden = [stake('A', -5, 0), stake('B', 0, -5), wall(-2, 0)];
    const left = refind({ target: { x: 0, y: 0 }, standing: hidden, instruments }).tapes;
    expect(names(left!.pulls.map(({ from }) => from)).sort()).toEqual(['-2', 'B']);
  });

  it('offers the string that runs over it, with the place along it', () => {
    const standing = [stake('T1a', -1, 0), stake('T1b', 1, 0)];
    const { string, noTapes } = refind({ target: { x: 0.25, y: 0.1 }, standing, instruments });
    expect(noTapes).toBe('in-line');
    expect(string).toMatchObject({ from: standing[0]!.thing, to: standing[1]!.thing, side: 'left' });
    expect(string!.station).toBeCloseTo(1.25, 12);
    expect(string!.offset).toBeCloseTo(0.1, 12);
    const over = refind({ target: TARGET, standing, instruments }).string!;
    expect(over.side).toBe('on');
    expect(over.error).toBeCloseTo(SIGMA, 12);
  });
});
