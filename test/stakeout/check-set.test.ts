import { describe, expect, it } from 'vitest';
import type { SitePoint } from '../../src/geometry/point.ts';
import type { EntryOf } from '../../src/job/entry-schema.ts';
import type { Plan } from '../../src/job/plan-schema.ts';
import { measure } from '../../src/measure/index.ts';
import type { PullResult } from '../../src/measure/types.ts';
import { holesOf } from '../../src/plan/index.ts';
import { CheckNetwork } from '../../src/stakeout/check-network.ts';
import { guardingPairs, NOTICED, type Pair } from '../../src/stakeout/guarding-pulls.ts';
import { checkPulls, checkSet, type PlannedPull, proposeStakes } from '../../src/stakeout/index.ts';
import { metres, pointsPlan, ringPlan, rowsPlan } from '../plan/plans.ts';
import { laidOn } from './laid.ts';
import { scatteredPlan } from './string-jobs.ts';

/** Two thirds of an inch: what the judges allow where the tolerance is finer. */
const SHIFT_ALLOWED = (2 / 3) * 0.0254;

/** The plan on the stakes that the tool proposes, with 2 mm tapes. */
function jobOf(plan: Plan) {
  const instruments = { ...plan.instruments, tapeError: metres(0.002) };
  const stakes = proposeStakes(holesOf(plan), instruments, { units: plan.units });
  if (!stakes) throw new Error('no stakes');
  const { holes, baseline } = laidOn(plan, [stakes.a.x, stakes.a.y], [stakes.b.x, stakes.b.y]);
  return { holes, baseline, instruments, shiftAllowed: SHIFT_ALLOWED };
}

const holeAt = ({ thing }: PlannedPull['from']) => ('hole' in thing ? thing.hole : '');

/**
 * What the adjustment itself says once A, B, every hole's two tapes and the pulls are read as planned.
 *
 * @param misread place of the one pull that is read 25 mm too long
 */
function adjusted(
  { holes, baseline, instruments }: ReturnType<typeof jobOf>,
  pulls: readonly PlannedPull[],
  misread = -1,
) {
  const stake = (label: string) => ({
    thing: { kind: 'stake', label } as const,
    touch: { at: 'nail' } as const,
  });
  const toHoles = holes.flatMap(({ label, site }) =>
    [
      ['A', 0],
      ['B', baseline],
    ].map(([from, x]) => ({
      from: stake(`${from}`),
      to: { thing: { kind: 'hole-stake', hole: label } as const, touch: { at: 'nail' } as const },
      expected: Math.hypot(site.x - Number(x), site.y),
    })),
  );
  const entries = [{ from: stake('A'), to: stake('B'), expected: baseline }, ...toHoles, ...pulls].map(
    ({ from, to, expected }, i): EntryOf<'pull'> => ({
      id: `e${i}`,
      at: '2026-05-01T08:00:00.000Z',
      seq: i + 1,
      body: {
        kind: 'pull',
        from,
        to,
        // To the bit: a typed text would round it.
        reading: { m: expected + (i === misread ? NOTICED : 0), typed: `${expected}`, units: 'm' },
        hold: { how: 'level' },
      },
    }),
  );
  return {
    entries,
    measured: measure(entries, holes, baseline, instruments),
  };
}

function pullsTo(
  hole: string,
  entries: readonly EntryOf<'pull'>[],
  { pulls }: ReturnType<typeof measure>,
): readonly PullResult[] {
  const bodies = new Map(entries.map(({ id, body }) => [id, body]));
  return pulls.filter(({ entry }) => {
    const { from, to } = bodies.get(entry)!;
    return [from, to].some((end) => holeAt(end) === hole);
  });
}

const rings = Array.from({ length: 22 }, (_, i) => i + 3).map((count): [string, Plan] => [
  `ring of ${count}${count > 4 && count % 2 === 0 ? ' round a pier' : ''}`,
  ringPlan({ count, pier: count > 4 && count % 2 === 0, size: metres(count <= 12 ? 3 : 6) }),
]);
const grids = [
  [2, 2],
  [3, 2],
  [4, 3],
  [5, 5],
  [8, 8],
].map(([columns, rows]): [string, Plan] => [
  `${columns} by ${rows}`,
  rowsPlan({ columns: columns!, rows: rows! }),
]);
const scattered = [1, 2, 3, 4, 5, 6].map((seed): [string, Plan] => [
  `scattered ${seed}`,
  scatteredPlan(seed, 4 + ((seed * 5) % 20)),
]);

/** What the search makes of these pulls. */
function networkWith(job: ReturnType<typeof jobOf>, pulls: readonly PlannedPull[]) {
  const labels = job.holes.map(({ label }) => label);
  const network = new CheckNetwork(
    job.holes.map(({ site }) => site),
    job.baseline,
    job.instruments,
  );
  for (const { from, to } of pulls) network.put([labels.indexOf(holeAt(from)), labels.indexOf(holeAt(to))]);
  return { labels, network };
}

describe('the pulls that guard every hole', () => {
  it.each([...rings, ...grids, ...scattered])(
    'show 25 mm misread in any pull, and are never more than neighbours and across: %s',
    (_, plan) => {
      const job = jobOf(plan);
      const { guarding, further, unguarded } = checkSet(job);
      expect(guarding.length).toBeLessThanOrEqual(checkPulls(job.holes, job.instruments).length);
      // Of three stakes there are three sides and nothing else to pull: they show the inch, and leave a hair more than is allowed.
      if (job.holes.length > 3) expect(unguarded).toEqual([]);
      const keys = [...guarding, ...further].map(({ from, to }) => [holeAt(from), holeAt(to)].sort().join());
      expect(new Set(keys).size).toBe(keys.length);

      const { entries, measured } = adjusted(job, guarding);
      for (const { label } of job.holes) {
        const own = pullsTo(label, entries, measured);
        for (const pull of own) expect(pull.smallestCaught, label).toBeLessThanOrEqual(NOTICED);
        const point = measured.points.find(({ thing }) => 'hole' in thing && thing.hole === label);
        if (job.holes.length > 3) expect(point!.fix!.unseenShift, label).toBeLessThanOrEqual(SHIFT_ALLOWED);
      }
    },
  );

  it.each([
    ['ring of 8 round a pier', ringPlan({ count: 8, pier: true })],
    ['ring of 5', ringPlan({ count: 5 })],
    ['4 by 3', rowsPlan({ columns: 4, rows: 3 })],
    ['scattered', scatteredPlan(5, 9)],
  ] as const)('25 mm misread in any one of all the pulls is noticed: %s', (_, plan) => {
    const job = jobOf(plan);
    const { guarding } = checkSet(job);
    const { entries, measured: clean } = adjusted(job, guarding);
    expect(clean.suspicions).toEqual([]);
    for (const [i, { id }] of entries.entries()) {
      const { suspicions } = adjusted(job, guarding, i).measured;
      // Which of the pulls it is, few spare ones cannot always tell: then it is among those that are named.
      expect(
        suspicions.some((suspicion) => suspicion.entries.includes(id)),
        `pull ${i}`,
      ).toBe(true);
    }
  });

  it('are about one a hole, where neighbours and across are half as many again or more', () => {
    for (const [name, plan] of [...rings.slice(2), ...grids.slice(2)]) {
      const job = jobOf(plan);
      expect(checkSet(job).guarding.length, name).toBeLessThanOrEqual(1.3 * job.holes.length);
    }
  });

  it.each([
    ['ring of 4', ringPlan({ count: 4 })],
    ['ring of 5', ringPlan({ count: 5 })],
    ['2 by 2', rowsPlan({ columns: 2, rows: 2 })],
    ['scattered', scatteredPlan(2, 5)],
  ] as const)('are as few as a search of all sets finds, or one more: %s', (_, plan) => {
    const job = jobOf(plan);
    const found = checkSet(job).guarding.length;
    expect(found).toBeLessThanOrEqual(fewest(job) + 1);
  });

  it('say which holes they leave unguarded, and never fewer than the adjustment does', () => {
    // Two stakes: the one pull between them is all that there is.
    const job = jobOf(
      pointsPlan([
        ['x', 0, 0],
        ['y', 0.3, 3],
      ]),
    );
    const { guarding, unguarded } = checkSet(job);
    const { measured } = adjusted(job, guarding);
    const loose = measured.points.filter(
      ({ thing, fix }) => 'hole' in thing && !(fix && fix.unseenShift <= SHIFT_ALLOWED),
    );
    for (const { thing } of loose) expect(unguarded).toContain('hole' in thing ? thing.hole : '');
    expect(unguarded.length).toBeGreaterThan(0);
  });

  it('cannot guard a single row: along its line no tape shows what is misread square to it', () => {
    const { unguarded } = checkSet(jobOf(rowsPlan({ columns: 5, rows: 1 })));
    expect(unguarded.length).toBeGreaterThan(0);
  });

  it('name the holes beyond all tapes, and pull nothing there', () => {
    const job = jobOf(ringPlan({ count: 8 }));
    const short = { ...job, instruments: { ...job.instruments, tapeLength: metres(0.5) } };
    expect(checkSet(short)).toEqual({
      guarding: [],
      further: [],
      unguarded: job.holes.map(({ label }) => label),
    });
  });

  it('are not searched for among hundreds: all that people pull is listed', () => {
    const job = jobOf(rowsPlan({ columns: 15, rows: 14 }));
    const { guarding, further, unguarded } = checkSet(job);
    expect(guarding).toEqual([]);
    expect(further).toEqual(checkPulls(job.holes, job.instruments));
    expect(unguarded).toHaveLength(210);
  });

  it('hold out against holes at one place or on A, A on B, and tapes without error', () => {
    const job = jobOf(ringPlan({ count: 6 }));
    const [first] = job.holes;
    const onA = job.holes.map((hole, i) => (i === 1 ? { ...hole, site: { x: 0, y: 0 } } : hole));
    const twice = job.holes.map((hole, i) => (i === 2 ? { ...hole, site: first!.site } : hole));
    const perfect = { ...job.instruments, tapeError: metres(0), tapeErrorPerMetre: 0 };
    for (const odd of [
      { ...job, holes: onA },
      { ...job, holes: twice },
      { ...job, baseline: 0 },
      { ...job, instruments: perfect },
    ]) {
      const { guarding, unguarded } = checkSet(odd);
      expect(guarding.length).toBeLessThanOrEqual(checkPulls(odd.holes, odd.instruments).length);
      for (const { expected } of guarding) expect(expected).toBeGreaterThan(0);
      for (const hole of unguarded) expect(odd.holes.map(({ label }) => label)).toContain(hole);
    }
    expect(checkSet({ ...job, holes: onA }).unguarded).toContain(onA[1]!.label);
    expect(checkSet({ ...job, instruments: perfect }).unguarded).toEqual([]);
  });

  it('are none for one hole or no hole', () => {
    const one = jobOf(pointsPlan([['1', 0, 0]]));
    expect(checkSet(one)).toEqual({ guarding: [], further: [], unguarded: ['1'] });
    expect(checkSet({ ...one, holes: [] })).toEqual({ guarding: [], further: [], unguarded: [] });
  });

  it('are called what people call them', () => {
    const purposes = (plan: Plan) => new Set(checkSet(jobOf(plan)).guarding.map(({ purpose }) => purpose));
    for (const purpose of purposes(rowsPlan({ columns: 2, rows: 2 })))
      expect(['neighbour', 'diagonal']).toContain(purpose);
    for (const purpose of purposes(ringPlan({ count: 8 })))
      expect(['neighbour', 'chord', 'across']).toContain(purpose);
  });
});

describe('the network that is planned', () => {
  it('takes a pull back without a trace', () => {
    const { holes, baseline, instruments } = jobOf(ringPlan({ count: 6 }));
    const network = new CheckNetwork(
      holes.map(({ site }) => site),
      baseline,
      instruments,
    );
    network.put([0, 3]);
    const before = [network.caughtAt(0), network.shiftOf(0)];
    network.put([0, 1]);
    expect(network.caughtAt(0)).toBeLessThan(before[0]!);
    network.drop([0, 1]);
    expect(network.caughtAt(0)).toBeCloseTo(before[0]!, 9);
    expect(network.shiftOf(0)).toBeCloseTo(before[1]!, 9);
  });

  it('agrees with the adjustment in every redundancy and every shift', () => {
    const job = jobOf(ringPlan({ count: 8, pier: true }));
    const pulls = checkPulls(job.holes, job.instruments);
    const { entries, measured } = adjusted(job, pulls);
    const { labels, network } = networkWith(job, pulls);
    for (const [i, label] of labels.entries()) {
      const own = pullsTo(label, entries, measured);
      expect(network.caughtAt(i)).toBeCloseTo(
        Math.max(...own.map(({ smallestCaught }) => smallestCaught)),
        6,
      );
      const point = measured.points.find(({ thing }) => 'hole' in thing && thing.hole === label);
      expect(network.shiftOf(i)).toBeCloseTo(point!.fix!.unseenShift, 6);
    }
  });

  it.each([1, 2, 3, 4, 6, 8])('agrees with it on the shifts where only %i pulls guard', (count) => {
    const job = jobOf(ringPlan({ count: 8, pier: true }));
    const pulls = checkPulls(job.holes, job.instruments).slice(0, count);
    const { measured } = adjusted(job, pulls);
    const { labels, network } = networkWith(job, pulls);
    for (const [i, label] of labels.entries()) {
      const shift = measured.points.find(({ thing }) => 'hole' in thing && thing.hole === label)!.fix!
        .unseenShift;
      if (shift === Number.POSITIVE_INFINITY) expect(network.shiftOf(i)).toBe(shift);
      else expect(network.shiftOf(i)).toBeCloseTo(shift, 6);
    }
  });

  it('tells those left unguarded as they are, also where a later pull leaves an earlier one hanging on it', () => {
    const places = [
      { x: 5.1, y: 5.7 },
      { x: 4.9, y: 12.2 },
      { x: -1.9, y: 6.5 },
      { x: 9.4, y: 12.1 },
      { x: 1.6, y: 9.6 },
    ] as SitePoint[];
    const instruments = { ...ringPlan().instruments, tapeError: metres(0.002), tapeErrorPerMetre: 0 };
    const [baseline, shiftAllowed] = [5.6, SHIFT_ALLOWED];
    const found = guardingPairs({ places, baseline, instruments, shiftAllowed, most: 5, liked: () => false });
    const network = new CheckNetwork(places, baseline, instruments);
    for (const pair of found.pairs) network.put(pair);
    const isGuarded = (i: number) => network.caughtAt(i) <= NOTICED && network.shiftOf(i) <= shiftAllowed;
    expect(found.unguarded).toEqual([...places.keys()].filter((i) => !isGuarded(i)));
  });
});

/** The fewest pulls that guard every hole, by looking at every set of pairs. */
function fewest({ holes, baseline, instruments, shiftAllowed }: ReturnType<typeof jobOf>): number {
  const places = holes.map(({ site }) => site);
  const pairs = places.flatMap((_, i) => places.slice(i + 1).map((_other, k): Pair => [i, i + 1 + k]));
  const guards = (some: readonly Pair[]) => {
    const network = new CheckNetwork(places, baseline, instruments);
    for (const pair of some) network.put(pair);
    return places.every((_, i) => network.caughtAt(i) <= NOTICED && network.shiftOf(i) <= shiftAllowed);
  };
  const sizes = Array.from({ length: 2 ** pairs.length }, (_, set) =>
    pairs.filter((_pair, k) => (set >> k) & 1),
  ).sort((p, q) => p.length - q.length);
  return sizes.find(guards)!.length;
}
