import { describe, expect, it } from 'vitest';
import type { Thing } from '../../src/job/entry-schema.ts';
import { assess } from '../../src/judge/assess.ts';
import { foresee } from '../../src/judge/foresight.ts';
import { possiblePulls } from '../../src/judge/possible-pulls.ts';
import { pullPlan } from '../../src/judge/pull-ends.ts';
import { situate } from '../../src/judge/situation.ts';
import type { Assessment, NextPull } from '../../src/judge/types.ts';
import { type JobView, viewOf } from '../../src/judge/view.ts';
import { Field, holeStake, mm, noise, post, ringPlan, stake } from './field.ts';

const A = stake('A');
const B = stake('B');
const RING = ['1', '2', '3', '4', '5', '6'];

const viewWith = (field: Field): JobView => viewOf(situate(field.log))!;

/** Makes a pull as it is asked for: touching what it says, reading the truth. */
function make(field: Field, { from, to }: Pick<NextPull, 'from' | 'to'>, error = 0): void {
  const side = ({ touch }: NextPull['from']) => (touch.at === 'face' ? touch.side : 'front');
  const reading = field.distanceOf(from.thing, side(from), to.thing, side(to)) + error;
  field.add({ kind: 'pull', from, to, reading: mm(reading * 1000), hold: { how: 'level' } });
}

function setRing(holes: readonly string[] = RING, field = new Field().site()): Field {
  for (let i = 0; i < 2; i++) field.pull(A, B);
  for (const hole of holes) field.set(hole).pullsTo(post(hole), [A, B]);
  return field;
}

const openPlaces = ({ holes }: Assessment) =>
  holes.filter(({ set }) => set.done && (set.position.verdict === 'unsure' || !set.position.checked));

describe('the sequence of pulls', () => {
  it('from nothing but driven stakes to all of them in and checked, in one go', () => {
    const field = new Field().site();
    for (const hole of RING) field.add({ kind: 'stand', thing: holeStake(hole), event: 'driven' });
    const { nextPulls, beyondPulls } = assess(field.log);
    expect(nextPulls[0]!.text).toBe('Pull A to B, about 8000 mm: every place hangs on it.');
    expect(nextPulls[1]!.text).toMatch(/: it helps to fix stake \d\.$/);
    expect(nextPulls[2]!.text).toMatch(/: then it is known where stake \d stands\.$/);
    expect(beyondPulls).toEqual([]);
    for (const pull of nextPulls) make(field, pull);
    const after = assess(field.log);
    for (const { hole, staked } of after.holes.filter(({ hole }) => hole !== 'P'))
      expect([hole, staked.position.verdict, staked.position.checked]).toEqual([hole, 'in', true]);
    expect(after.nextPulls).toEqual([]);
    // A–B, two to fix each stake, and about one each to guard it.
    expect(nextPulls.length).toBeLessThanOrEqual(2 + 3 * RING.length);
  });

  it('guards a whole set ring, and what it expects comes true when it is followed to the letter', () => {
    const field = setRing();
    const before = assess(field.log);
    expect(openPlaces(before)).toHaveLength(RING.length);
    expect(before.next).toEqual(before.nextPulls[0]);
    for (const pull of before.nextPulls) make(field, pull);
    const after = assess(field.log);
    expect(openPlaces(after)).toEqual([]);
    expect([after.nextPulls, after.beyondPulls]).toEqual([[], []]);
    expect(before.nextPulls.at(-1)!.text).toMatch(/Then (post \d|pier P) is expected to be in\.$/);
  });

  it.each([3, 4, 5, 6, 7, 8])(
    'with noise (seed %i), made again after every reading, it ends with nothing open',
    (seed) => {
      const n = noise(seed);
      const field = new Field().site();
      for (const hole of [...RING, 'P']) field.off(post(hole), n(0.001), n(0.001));
      setRing(['P', ...RING], field);
      let pulls = 0;
      for (let now = assess(field.log); now.next; now = assess(field.log)) {
        make(field, now.next, n(0.0015));
        pulls += 1;
        expect(pulls).toBeLessThan(30);
      }
      const { holes, beyondPulls } = assess(field.log);
      const named = new Set(beyondPulls.map(({ thing }) => ('hole' in thing ? thing.hole : '')));
      for (const { hole, set } of holes) {
        if (named.has(hole)) continue;
        expect([hole, set.position.checked]).toEqual([hole, true]);
        expect(['in', 'out'], hole).toContain(set.position.verdict);
      }
      expect(named.size).toBeLessThanOrEqual(1);
    },
  );

  it('of a post too near its tolerance says that no pull can settle it, why, and how to move it', () => {
    const field = setRing().off(post('3'), 0.0118, 0);
    field.set('3').pullsTo(post('3'), [A, B, post('2'), post('4'), post('1')]);
    for (const pull of assess(field.log).nextPulls) make(field, pull);
    const { nextPulls, beyondPulls, holes } = assess(field.log);
    expect(holes[2]!.set.position).toMatchObject({ verdict: 'unsure', checked: true });
    expect(nextPulls).toEqual([]);
    expect(beyondPulls).toHaveLength(1);
    expect(beyondPulls[0]!.thing).toEqual(post('3'));
    expect(beyondPulls[0]!.text).toMatch(
      /^No pull in reach can settle post 3: it measures 12 mm off its mark, too near the 12 mm that is allowed\. Move it nearer to its mark: 1\d mm /,
    );
  });

  it('of a tolerance finer than the tape says so', () => {
    const { tolerances } = ringPlan();
    const field = setRing(
      RING,
      new Field(ringPlan('mm', { tolerances: { ...tolerances, position: mm(2) } })).site(),
    );
    for (const pull of assess(field.log).nextPulls) make(field, pull);
    const { beyondPulls } = assess(field.log);
    expect(beyondPulls.map(({ text }) => text).join(' ')).toMatch(/these tapes do not tell 2 mm there/);
  });

  it('guards a post that stands alone by reading both tapes once more', () => {
    const field = setRing(['1']);
    const { nextPulls, beyondPulls } = assess(field.log);
    expect(nextPulls.map(({ from }) => from.thing)).toEqual([A, B]);
    for (const pull of nextPulls) make(field, pull);
    expect([openPlaces(assess(field.log)), beyondPulls]).toEqual([[], []]);
  });

  it('of a post that the tape does not reach says what to do', () => {
    const { instruments } = ringPlan();
    const short = ringPlan('mm', { instruments: { ...instruments, tapeLength: mm(1000) } });
    const field = new Field(short).site();
    field.pull(A, B);
    field.set('1');
    const { nextPulls, beyondPulls } = assess(field.log);
    expect(nextPulls).toEqual([]);
    expect(beyondPulls).toEqual([
      {
        thing: post('1'),
        text: 'No pull in reach can fix post 1: nothing else that is known stands within the tape in plain sight. Measure a neighbour first, or drive a third stake from which the tape reaches it.',
      },
    ]);
  });

  it('settles a spacing that two well-placed posts leave open', () => {
    const { tolerances } = ringPlan();
    const plan = ringPlan('mm', { tolerances: { ...tolerances, spacing: mm(8) } });
    const field = setRing(RING, new Field(plan).site());
    for (const pull of assess(field.log).nextPulls) make(field, pull);
    const { holes } = assess(field.log);
    const unsure = holes.flatMap(({ set }) => set.spacing.filter(({ verdict }) => verdict === 'unsure'));
    expect(unsure).toEqual([]);
  });

  it('tells a suspected pull first, and goes on as if it had been struck', () => {
    const field = setRing();
    for (const pull of assess(field.log).nextPulls) make(field, pull);
    field.pull(post('1'), post('3'), { error: 0.0254 });
    const { nextPulls, findings } = assess(field.log);
    expect(findings.some(({ code }) => code === 'misreading')).toBe(true);
    expect(nextPulls[0]!.text).toMatch(/bear out the reading|tell which/);
  });
});

describe('what is foreseen', () => {
  /** Every pull to a post that could be made, with what `assess` says once it reads as predicted. */
  const tried = (field: Field, thing: Thing) => {
    const view = viewWith(field);
    const at = view.points.get(`post:${'hole' in thing ? thing.hole : ''}`)!.fix!.place;
    return possiblePulls(view, thing, at).map(({ from, fromAt }) => {
      const pull = pullPlan(view, from, fromAt, thing, at);
      const then = new Field(field.plan);
      then.log.push(...field.log.slice(1));
      then.add({ kind: 'pull', ...ends(pull), reading: mm(pull.expected * 1000), hold: { how: 'level' } });
      return { pull, foreseen: foresee(view, pull), made: viewWith(then) };
    });
  };
  const ends = ({ from, to }: Pick<NextPull, 'from' | 'to'>) => ({ from, to });
  const fixOf = (view: JobView, hole: string) => view.points.get(`post:${hole}`)!.fix!;

  it('is what the adjustment says once it is made: sigma to a tenth where the far end is a stake, to a third elsewhere', () => {
    const field = setRing();
    for (const { pull, foreseen, made } of tried(field, post('2'))) {
      const within = pull.from.thing.kind === 'stake' ? 0.1 : 0.34;
      const [then, now] = [fixOf(foreseen, '2').ellipse.semiMajor, fixOf(made, '2').ellipse.semiMajor];
      expect(Math.abs(then - now) / now).toBeLessThan(within);
    }
  });

  it('leads to a guard about as good as trying every pull finds', () => {
    for (const hole of ['1', '3', '5']) {
      const field = setRing(RING.filter((other) => other !== hole));
      for (const pull of assess(field.log).nextPulls) make(field, pull);
      field.set(hole).pullsTo(post(hole), [A, B]);
      const best = Math.min(...tried(field, post(hole)).map(({ made }) => fixOf(made, hole).unseenShift));
      const { next } = assess(field.log);
      make(field, next!);
      expect(fixOf(viewWith(field), hole).unseenShift).toBeLessThan(1.1 * best);
    }
  });

  it.each([[['1']], [['1', '4']], [['1', '3', '5']]])(
    'asks, of posts %j, for at most one pull more than the fewest that any choice could do with',
    (holes) => {
      const field = setRing(holes);
      const { nextPulls } = assess(field.log);
      for (const pull of nextPulls) make(field, pull);
      expect(openPlaces(assess(field.log))).toEqual([]);
      expect(nextPulls.length).toBeLessThanOrEqual(fewest(holes, 1) + 1);
    },
  );

  /** By trying all choices of one pull, then of two, and so on. */
  function fewest(holes: readonly string[], count: number): number {
    const things = [A, B, ...holes.map(post)];
    const lines = things.flatMap((one, i) =>
      things.slice(Math.max(i + 1, 2)).map((other): [Thing, Thing] => [one, other]),
    );
    const guards = (chosen: readonly [Thing, Thing][]) => {
      const field = setRing(holes);
      for (const [one, other] of chosen) field.pull(one, other);
      return openPlaces(assess(field.log)).length === 0;
    };
    const some = (from: number, left: number, chosen: readonly [Thing, Thing][]): boolean =>
      left === 0
        ? guards(chosen)
        : lines.some((line, i) => i >= from && some(i, left - 1, [...chosen, line]));
    return some(0, count, []) ? count : fewest(holes, count + 1);
  }
});
