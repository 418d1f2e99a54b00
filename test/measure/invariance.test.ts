import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Body, Entry, PullEnd, Side, Thing } from '../../src/job/entry-schema.ts';
import { roundedLength } from '../../src/job/length.ts';
import { type Measured, measure } from '../../src/measure/index.ts';
import type { SitedHole } from '../../src/plan/hole.ts';
import { type Made, madeJob } from './networks.ts';

const run = (job: Made, entries = job.entries, holes = job.holes) =>
  measure(entries, holes, job.baseline, job.instruments);
const seeds = fc.integer({ min: 1, max: 100_000 });
const RUNS = { numRuns: 40 };

/** Largest difference of places (metres) and of covariances (relative), point by point. */
function difference(a: Measured, b: Measured, image = (p: { x: number; y: number }) => p): [number, number] {
  let place = 0;
  let covariance = 0;
  expect(a.points.length).toBe(b.points.length);
  for (const point of a.points) {
    const other = b.points.find(
      ({ thing, stand }) => JSON.stringify(thing) === JSON.stringify(point.thing) && stand === point.stand,
    )!;
    expect(other.fix === null).toBe(point.fix === null);
    if (!point.fix || !other.fix) continue;
    const p = image(point.fix.place);
    place = Math.max(place, Math.hypot(p.x - other.fix.place.x, p.y - other.fix.place.y));
    const scale = point.fix.ellipse.semiMajor;
    if (scale === 0) continue;
    covariance = Math.max(
      covariance,
      Math.abs(point.fix.ellipse.semiMajor - other.fix.ellipse.semiMajor) / scale,
      Math.abs(point.fix.ellipse.semiMinor - other.fix.ellipse.semiMinor) / scale,
    );
  }
  return [place, covariance];
}

const OTHER_SIDE = { left: 'right', right: 'left', on: 'on' } as const;
const PLACE_M = 1e-9;
const RELATIVE = 1e-7;

describe('the answer does not depend on', () => {
  it('the order of the entries in the array', () => {
    fc.assert(
      fc.property(seeds, fc.integer(), (seed, shuffle) => {
        const job = madeJob(seed);
        const key = (entry: Entry) => (Math.imul(entry.seq, 2654435761) ^ shuffle) >>> 0;
        const shuffled = [...job.entries].sort((p, q) => key(p) - key(q));
        expect(JSON.stringify(run(job, shuffled))).toBe(JSON.stringify(run(job)));
      }),
      RUNS,
    );
  });

  it('the order in which pulls were made', () => {
    fc.assert(
      fc.property(seeds, fc.integer(), (seed, shuffle) => {
        const job = madeJob(seed);
        const key = (entry: Entry) => (Math.imul(entry.seq, 2654435761) ^ shuffle) >>> 0;
        const made = [...job.entries]
          .sort((p, q) => key(p) - key(q))
          .map((entry, i) => ({ ...entry, seq: i + 1 }));
        const [place, covariance] = difference(run(job), run(job, made));
        expect(place).toBeLessThan(PLACE_M);
        expect(covariance).toBeLessThan(RELATIVE);
      }),
      RUNS,
    );
  });

  it('which end of a tape was zero', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const job = madeJob(seed);
        const turned = job.entries.map((entry) =>
          entry.body.kind === 'pull'
            ? { ...entry, body: { ...entry.body, from: entry.body.to, to: entry.body.from } }
            : entry,
        );
        const [place, covariance] = difference(run(job), run(job, turned));
        expect(place).toBeLessThan(PLACE_M);
        expect(covariance).toBeLessThan(RELATIVE);
      }),
      RUNS,
    );
  });

  it('at which end a string begins', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const job = madeJob(seed);
        const first = run(job);
        // Stations then count from the other end: what they say is the same only where the string's length is known well.
        const offsets = (entry: Entry) =>
          entry.body.kind === 'offset' && entry.body.station === undefined
            ? {
                ...entry,
                body: {
                  ...entry.body,
                  from: entry.body.to,
                  to: entry.body.from,
                  side: OTHER_SIDE[entry.body.side],
                },
              }
            : entry;
        const [place, covariance] = difference(first, run(job, job.entries.map(offsets)));
        expect(place).toBeLessThan(PLACE_M);
        expect(covariance).toBeLessThan(RELATIVE);
      }),
      RUNS,
    );
  });

  it('the units, beyond their rounding', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const job = madeJob(seed);
        const inches = job.entries.map((entry) =>
          entry.body.kind === 'pull'
            ? { ...entry, body: { ...entry.body, reading: roundedLength(entry.body.reading.m, 'ft-in-32') } }
            : entry,
        );
        const [place] = difference(run(job), run(job, inches));
        // 1/64 inch on each tape, worst geometry of these jobs.
        expect(place).toBeLessThan(0.01);
      }),
      RUNS,
    );
  });
});

const MIRRORED: Record<Side, Side> = { front: 'front', left: 'right', back: 'back', right: 'left' };
/** Corner `front` is front and left; seen in a mirror that is front and right, which is called `right`. */
const MIRRORED_CORNER: Record<Side, Side> = { front: 'right', left: 'back', back: 'left', right: 'front' };

describe('in a mirror along A–B', () => {
  const end = (one: PullEnd): PullEnd => {
    const { touch } = one;
    if (touch.at === 'face') return { ...one, touch: { at: 'face', side: MIRRORED[touch.side] } };
    return touch.at === 'corner'
      ? { ...one, touch: { at: 'corner', side: MIRRORED_CORNER[touch.side] } }
      : one;
  };
  const body = (one: Body): Body => {
    if (one.kind === 'pull') return { ...one, from: end(one.from), to: end(one.to) };
    if (one.kind === 'offset') return { ...one, of: end(one.of), side: OTHER_SIDE[one.side] };
    return one.kind === 'plumb' ? { ...one, side: MIRRORED[one.side] } : one;
  };
  const hole = (one: SitedHole): SitedHole => ({
    ...one,
    site: { x: one.site.x, y: -one.site.y },
    facing: -one.facing,
  });

  it('every place is mirrored', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const job = madeJob(seed);
        const entries = job.entries.map((entry) => ({ ...entry, body: body(entry.body) }));
        const image = (p: { x: number; y: number }) => ({ x: p.x, y: -p.y });
        const [place, covariance] = difference(run(job), run(job, entries, job.holes.map(hole)), image);
        expect(place).toBeLessThan(PLACE_M);
        expect(covariance).toBeLessThan(RELATIVE);
      }),
      RUNS,
    );
  });
});

describe('seen from the other end (A and B exchanged)', () => {
  it('every place is turned and moved with them', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const job = madeJob(seed);
        const first = run(job);
        const length = first.baseline!.length;
        const other = (label: string) => (label === 'A' ? 'B' : label === 'B' ? 'A' : label);
        const thing = (one: Thing): Thing =>
          one.kind === 'stake' ? { kind: 'stake', label: other(one.label) } : one;
        const end = (one: PullEnd): PullEnd => ({ ...one, thing: thing(one.thing) });
        const body = (one: Body): Body => {
          if (one.kind === 'pull') return { ...one, from: end(one.from), to: end(one.to) };
          return one.kind === 'offset' ? { ...one, from: thing(one.from), to: thing(one.to) } : one;
        };
        const entries = job.entries.map((entry): Entry => ({ ...entry, body: body(entry.body) }));
        // Half a turn about the middle of A–B.
        const holes = job.holes.map((one) => ({
          ...one,
          site: { x: job.baseline - one.site.x, y: -one.site.y },
          facing: one.facing + Math.PI,
        }));
        const second = run(job, entries, holes);
        for (const point of first.points) {
          if (point.thing.kind === 'stake') continue;
          const twin = second.points.find(
            ({ thing }) => JSON.stringify(thing) === JSON.stringify(point.thing),
          )!;
          const p = point.fix!.place;
          const q = twin.fix!.place;
          expect(Math.hypot(length - p.x - q.x, p.y + q.y)).toBeLessThan(PLACE_M);
        }
        expect(Math.abs(first.globalTest.chiSquare - second.globalTest.chiSquare)).toBeLessThan(1e-6);
        first.pulls.forEach((pull, i) => {
          expect(Math.abs(pull.redundancy - second.pulls[i]!.redundancy)).toBeLessThan(1e-6);
        });
      }),
      RUNS,
    );
  });
});
