import { describe, expect, test } from 'vitest';
import type { SitePoint } from '../../../src/geometry/point.ts';
import type { Body, Entry, Thing } from '../../../src/job/entry-schema.ts';
import { roundedLength } from '../../../src/job/length.ts';
import { assess } from '../../../src/judge/assess.ts';
import { possiblePulls } from '../../../src/judge/possible-pulls.ts';
import { type PullPlan, pullPlan } from '../../../src/judge/pull-ends.ts';
import { type JobView, pointOf } from '../../../src/judge/view.ts';
import { nextSetup, standingSetup } from '../../../src/screens/heights/level-setup.ts';
import { rodAtTarget } from '../../../src/screens/heights/rod-belief.ts';
import { nextHole, setOrder, stepsOf } from '../../../src/screens/set/set-order.ts';
import { setStep } from '../../../src/screens/set/set-step.ts';
import type { DoubtStep, SetStep } from '../../../src/screens/set/step.ts';
import { blocked } from '../../../src/stakeout/blocked.ts';
import { inches, samplePlan } from '../../job/sample.ts';
import { logOf, PLACED, READY } from '../stake/field-day.ts';
import {
  answer,
  choices,
  dayOf,
  exampleAnd,
  exampleLog,
  nameOf,
  post,
  pullOf,
  SIGHT,
  stepAfter,
  walk,
} from './set-day.ts';

const pullStep = (step: SetStep) => {
  if (step.do !== 'pull') throw new Error(`Expected a pull, and it is ${step.do}`);
  return step;
};

/** One post stood, and pulled to from A and B with these errors, metres. */
function pulled(hole: string, offA: number, offB: number): Body[] {
  const bodies = [...READY, post(hole)];
  for (const off of [offA, offB]) {
    const { pull } = pullStep(stepAfter(bodies, hole));
    bodies.push(pullOf(pull, pull.expected + off));
  }
  return bodies;
}

const PLUMB_AND_TOP = [
  'plumb front',
  'plumb left',
  'plumb back',
  'plumb right',
  'rod benchmark',
  'rod top',
  'rod top',
  'rod benchmark',
  'done',
];

describe('the order of one post', () => {
  test('A–B before everything, for no place is known without it', () => {
    expect(stepAfter(PLACED, '1')).toMatchObject({
      do: 'baseline',
      pull: { from: { thing: { label: 'A' } }, to: { thing: { label: 'B' } } },
    });
  });

  test('stand it where both tapes meet, each at a face that looks towards its stake', () => {
    const step = stepAfter(READY, '1');
    if (step.do !== 'stand') throw new Error(step.do);
    expect(step.hold.map(({ from }) => from.thing)).toEqual([
      { kind: 'stake', label: 'A' },
      { kind: 'stake', label: 'B' },
    ]);
    expect(step.hold.every(({ to }) => to.touch.at === 'face')).toBe(true);
  });

  test('place, then plumb on four faces, then the top', () => {
    const { bodies, steps } = walk(READY, '1');
    const names = steps.map(nameOf);
    expect(names).toEqual(['stand', 'pull A', 'pull B', ...PLUMB_AND_TOP]);
    const { set } = dayOf(logOf(bodies)).hole('1');
    expect(set.verdict).toBe('in');
    // Nothing else stands yet that could guard its place, and it must not look as if something did.
    expect([set.position, set.plumb, set.level].map(({ checked }) => checked)).toEqual([false, true, true]);
  });

  test('beside posts that stand, spare pulls too, until its place is guarded', () => {
    const before = ['P', '1', '2', '3', '4', '5'].reduce<Body[]>(
      (bodies, hole) => walk(bodies, hole).bodies,
      [...READY],
    );
    const { bodies, steps } = walk(before, '6');
    const names = steps.map(nameOf);
    expect(names.slice(0, 3)).toEqual(['stand', 'pull A', 'pull B']);
    const spare = steps.slice(3, names.indexOf('plumb front'));
    expect(spare.length).toBeGreaterThan(0);
    // Each says why it is wanted, which A and B need not.
    expect(spare.map((step) => pullStep(step).why)).toEqual(
      spare.map(() => expect.stringMatching(/misread/)),
    );
    expect(steps.slice(1, 3).map((step) => pullStep(step).why)).toEqual([null, null]);
    // The benchmark was read twice for the posts before.
    expect(names.slice(names.indexOf('plumb front'))).toEqual(
      PLUMB_AND_TOP.filter((name) => name !== 'rod benchmark'),
    );
    expect(dayOf(logOf(bodies)).hole('6').set.position).toMatchObject({ verdict: 'in', checked: true });
  });

  test('a pull to what the tape does not reach is not asked for', () => {
    const short = READY.map((body) =>
      body.kind === 'plan'
        ? {
            ...body,
            plan: { ...body.plan, instruments: { ...body.plan.instruments, tapeLength: inches('13 0') } },
          }
        : body,
    );
    const { holes } = dayOf(logOf(short));
    const beyond = holes.flatMap(({ hole }) => {
      const step = stepAfter([...short, post(hole)], hole);
      return step.do === 'pull' ? [step.pull.expected] : [];
    });
    expect(Math.max(0, ...beyond)).toBeLessThanOrEqual(inches('13 0').m);
  });
});

describe('a post that is out', () => {
  /** Two inches off, seen by both tapes and borne out by both. */
  function outAndSure(): Body[] {
    const bodies = pulled('1', 0.05, 0.05);
    for (;;) {
      const step = stepAfter(bodies, '1');
      if (step.do !== 'pull') return bodies;
      bodies.push(pullOf(step.pull, step.pull.expected));
    }
  }

  test('is moved, with the way to push it and what the tapes then read', () => {
    const step = stepAfter(outAndSure(), '1');
    if (step.do !== 'move') throw new Error(step.do);
    expect(step.part).toBe('place');
    expect(step.nudge?.distance).toBeGreaterThan(0.03);
    expect(step.nudge?.readings.length).toBeGreaterThanOrEqual(2);
  });

  test('is not moved on the strength of two tapes read once: each is read again first', () => {
    const bodies = pulled('1', 0.05, 0.05);
    const [a, b] = [stepAfter(bodies, '1')].flatMap((step) => {
      const first = pullStep(step);
      const second = stepAfter([...bodies, pullOf(first.pull, first.pull.expected)], '1');
      return [first, pullStep(second)];
    });
    expect([a, b].map((step) => nameOf(step!))).toEqual(['pull A', 'pull B']);
    expect(a?.why).toMatch(/before it is moved/);
  });

  test('goes on with plumb when it is left so, and only its place is left', () => {
    const bodies = outAndSure();
    expect(nameOf(stepAfter(bodies, '1', choices(['place'])))).toBe('plumb front');
    const leaning: Body[] = (['front', 'left'] as const).map((side) => ({
      kind: 'plumb',
      hole: '1',
      side,
      offset: inches('0 1'),
      over: inches('4 0'),
      leans: 'out',
    }));
    const step = stepAfter([...bodies, ...leaning], '1', choices(['place']));
    expect(step).toMatchObject({ do: 'move', part: 'plumb', nudge: null });
    expect(stepAfter([...bodies, ...leaning], '1', choices(['place', 'plumb'])).do).not.toBe('move');
  });

  test('begins anew once it is moved: what was read of it no longer counts', () => {
    expect(nameOf(stepAfter([...outAndSure(), post('1', 'nudged')], '1'))).toBe('pull A');
  });

  test('a top out of height is lifted or lowered to a rod reading', () => {
    const { bodies } = walk(READY, '1');
    const high = bodies.map((body) =>
      body.kind === 'rod' && body.on.point === 'top'
        ? { ...body, reading: roundedLength(body.reading.m - 0.05, 'ft-in-16') }
        : body,
    );
    const step = stepAfter(high, '1');
    expect(step).toMatchObject({ do: 'move', part: 'top' });
    const target = dayOf(logOf(high)).book.view.sited.get('1')!.top;
    // 1/16 in is what the rod is read to.
    expect(step.do === 'move' && step.rod).toBeCloseTo(SIGHT - target, 2);
    expect(stepAfter(high, '1', choices(['top'])).do).toBe('done');
  });
});

describe('a reading that is not to be believed', () => {
  const doubtOf = (log: readonly Entry[]): DoubtStep => {
    const day = dayOf(log);
    const step = setStep(day.book, day.hole('8'), choices());
    if (step.do !== 'doubt') throw new Error(step.do);
    return step;
  };
  const tapeTo8 = () => doubtOf(exampleLog());

  test('comes before all else, with what the other tapes say without it: an inch less', () => {
    const { entry, pull, again } = tapeTo8();
    expect(entry.body.from.thing).toEqual({ kind: 'stake', label: 'B' });
    expect(again).toBe('not-yet');
    // The example's slip is one inch; its tape noise has a sigma of 1.5 mm, so 5 mm is beyond luck.
    expect(Math.abs(entry.body.reading.m - 0.0254 - pull.expected)).toBeLessThan(0.005);
  });

  test('pulled again otherwise: the two disagree, and one is to be struck', () => {
    const { pull } = tapeTo8();
    expect(doubtOf(exampleAnd(pullOf(pull, pull.expected))).again).toBe('apart');
  });

  test('pulled again alike, and everything else against it: it is said not to be a slip of the eye', () => {
    const { pull, entry } = tapeTo8();
    const { book, hole } = dayOf(exampleLog());
    const at = hole('8').set.at!.place;
    const eight = { kind: 'post', hole: '8' } as const;
    const others = possiblePulls(book.best, eight, at)
      .filter(({ from, open }) => from.kind === 'post' && open())
      .map(({ from, fromAt }) =>
        pullPlan(book.best, from, fromAt, eight, book.best.points.get('post:8')!.fix!.place),
      )
      .map((plan) => pullOf(plan, plan.expected));
    expect(others.length).toBeGreaterThan(3);
    expect(doubtOf(exampleAnd(...others, pullOf(pull, entry.body.reading.m))).again).toBe('alike');
  });

  test('is told as going to the post at hand, whichever way it was logged', () => {
    expect(tapeTo8().pull.to.thing).toEqual({ kind: 'post', hole: '8' });
  });
});

describe('a tape', () => {
  test('is never asked for through a post that stands in the way', () => {
    // A pier stout enough to stand between A and the post beyond it.
    const pier = { ...samplePlan.pier, holds: { kind: 'pier', diameter: inches('3 0') } as const };
    let bodies: Body[] = [...READY, { kind: 'plan', plan: { ...samplePlan, pier } }];
    const { view } = dayOf(logOf(bodies)).book;
    const through: string[] = [];
    for (const hole of setOrder(view)) {
      const standing = view.holes.filter(({ label }) => bodies.some((body) => isSet(body, label)));
      const done = walk(bodies, hole);
      for (const step of done.steps) {
        if (step.do !== 'pull') continue;
        const [from, to] = [step.pull.from, step.pull.to].map(({ thing }) => placeIn(view, thing));
        const others = standing.flatMap(({ label }) => view.sited.get(label) ?? []);
        const between = others.filter(({ label }) => !touches(step.pull, label));
        if (blocked(from!, to!, between)) through.push(`${nameOf(step)} to ${hole}`);
      }
      bodies = done.bodies;
    }
    expect(through).toEqual([]);
  });

  const isSet = (body: Body, label: string): boolean =>
    body.kind === 'stand' && body.thing.kind === 'post' && body.thing.hole === label;
  const touches = ({ from, to }: PullPlan, label: string): boolean =>
    [from, to].some(({ thing }) => thing.kind === 'post' && thing.hole === label);
  const placeIn = (view: JobView, thing: Thing): SitePoint =>
    'hole' in thing ? view.sited.get(thing.hole)!.site : pointOf(view, thing)!.fix!.place;
});

describe('a post in concrete', () => {
  const poured: Body = { kind: 'pour', hole: '1', bags: 3 };

  test('is asked for again by readings since the pour, and by no others', () => {
    const { bodies } = walk(READY, '1');
    const step = stepAfter([...bodies, poured], '1');
    expect(nameOf(step)).toBe('pull A');
    expect(pullStep(step).why).toMatch(/poured/);
    const again = walk([...bodies, poured], '1').steps.map(nameOf);
    expect(again).toEqual(['pull A', 'pull B', 'plumb front', 'plumb left', 'done']);
  });

  test('is not proposed', () => {
    const { bodies } = walk(READY, '1');
    const day = dayOf(logOf([...bodies, poured]));
    expect(nextHole(day.book.view, day.holes, stepsOf(day.book, choices()), 'P')).not.toBe('1');
  });
});

describe('what is near the edge', () => {
  /** Post 1 measured twice from A and from B, so far off its mark on both tapes. */
  const off = (m: number): Body[] => {
    const bodies = pulled('1', m, m);
    return [...bodies, ...bodies.slice(-2)];
  };

  test('unsure, with no tape left that would settle it: it is pushed nearer, and can be left so', () => {
    const near = [0.008, 0.01, 0.012, 0.014]
      .map(off)
      .filter((bodies) => dayOf(logOf(bodies)).hole('1').set.position.verdict === 'unsure');
    expect(near).toHaveLength(2);
    for (const bodies of near) {
      expect(stepAfter(bodies, '1')).toMatchObject({ do: 'move', part: 'place', nudge: { worthIt: true } });
      expect(stepAfter(bodies, '1', choices(['place'])).do).toBe('plumb');
    }
  });

  test('a foot that was touched above the ground is not pushed before its lean is read', () => {
    const bodies: Body[] = [...READY, post('1')];
    for (let i = 0; i < 2; i++) {
      const { pull } = pullStep(stepAfter(bodies, '1'));
      const raised = { ...pull, to: { ...pull.to, height: inches('4 0') } };
      bodies.push(pullOf(raised, pull.expected + 0.05));
    }
    expect(nameOf(stepAfter(bodies, '1'))).toBe('plumb front');
  });
});

describe('where to go on', () => {
  test('the pier first, then the posts in the plan’s order, and round again', () => {
    const day = dayOf(logOf(READY));
    const order = setOrder(day.book.view);
    expect(order[0]).toBe('P');
    expect(order.slice(1)).toEqual(day.holes.map(({ hole }) => hole).filter((hole) => hole !== 'P'));
    expect(nextHole(day.book.view, day.holes, stepsOf(day.book, choices()))).toBe('P');
    expect(nextHole(day.book.view, day.holes, stepsOf(day.book, choices()), 'P')).toBe(order[1]);
    expect(nextHole(day.book.view, day.holes, stepsOf(day.book, choices()), order.at(-1)!)).toBe('P');
  });

  test('downhill where the ground was read: the highest first, and what was not read last', () => {
    const rod = (point: 'benchmark' | 'ground', hole: string, reading: string): Body => ({
      kind: 'rod',
      setup: '1',
      on: point === 'ground' ? { point, hole } : { point },
      reading: inches(reading),
    });
    const read = [rod('benchmark', '', '5 0'), rod('ground', '3', '6 0'), rod('ground', '2', '4 0')];
    const order = setOrder(dayOf(logOf([...READY, ...read])).book.view);
    expect(order.slice(0, 4)).toEqual(['P', '2', '3', '1']);
  });

  test('the reading that is not to be believed first, then the post that is out; never back and forth', () => {
    const day = dayOf(exampleLog());
    expect(nextHole(day.book.view, day.holes, stepsOf(day.book, choices()))).toBe('8');
    expect(nextHole(day.book.view, day.holes, stepsOf(day.book, choices()), '8')).toBe('9');
    const misread = assess(exampleLog()).findings.find(({ code }) => code === 'misreading')!.entries[0]!;
    const after = dayOf(exampleAnd({ kind: 'strike', entry: misread, reason: 'misread' }));
    expect(nextHole(after.book.view, after.holes, stepsOf(after.book, choices()))).toBe('4');
  });
});

describe('the level', () => {
  const rod = (setup: string, reading: string): Body => ({
    kind: 'rod',
    setup,
    on: { point: 'benchmark' },
    reading: inches(reading),
  });
  const viewAfter = (...more: Body[]) => dayOf(logOf([...READY, ...more])).book.view;

  test('stands where it was last read from, until a night has passed', () => {
    const view = viewAfter(rod('1', '4 0'), rod('2', '4 3'));
    const read = Date.parse(view.entries.at(-1)!.at);
    expect(standingSetup(view, read + 3600_000)).toBe('2');
    expect(standingSetup(view, read + 12 * 3600_000)).toBe('3');
    expect(standingSetup(viewAfter(), read)).toBe('1');
  });

  test('a set-up’s name is never used twice', () => {
    expect(nextSetup(viewAfter(rod('7', '4 0'), rod('2', '4 3')))).toBe('8');
  });

  test('says what the rod reads on a top at its height only where it has read the benchmark', () => {
    expect(rodAtTarget(viewAfter(rod('1', '4 0')), '1', '2')).toBeNull();
    const view = viewAfter(rod('1', '4 0'), rod('1', '4 2'));
    expect(rodAtTarget(view, '1', '1')).toBeCloseTo(inches('4 1').m - view.sited.get('1')!.top, 9);
  });

  test('from a new set-up the benchmark is read again before a top', () => {
    const { bodies, steps } = walk(READY, '1');
    const beforeTops = bodies.slice(0, bodies.length - 3);
    expect(nameOf(stepAfter(beforeTops, '1', choices([], '1')))).toBe('rod top');
    expect(nameOf(stepAfter(beforeTops, '1', choices([], '2')))).toBe('rod benchmark');
    expect(answer(steps.at(-1)!, '1')).toBeNull();
  });
});
