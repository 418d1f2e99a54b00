import { describe, expect, it } from 'vitest';
import type { Entry, Thing } from '../../src/job/entry-schema.ts';
import { assess } from '../../src/judge/assess.ts';
import { Field, holeStake, mm, post, ringPlan, seeded } from './field.ts';
import { A, B, codes, HOLES, holeOf, setJob } from './ring-job.ts';

describe('a job at every stage', () => {
  it('an empty log: nothing, and no trouble', () => {
    const empty = assess([]);
    expect(empty).toMatchObject({ job: '', holes: [], pulls: [], findings: [], next: null });
  });

  it('a plan alone: every hole listed, everything unmeasured, every gate shut', () => {
    const assessment = assess(new Field().log);
    expect(assessment.holes.map(({ hole }) => hole)).toEqual([...HOLES, 'P']);
    for (const { designed, staked, set, dug, digGate, pourGate } of assessment.holes) {
      expect(designed).toBeNull();
      expect(
        [staked.position, set.position, set.plumb, set.level, dug.depth, dug.width].map(
          ({ verdict }) => verdict,
        ),
      ).toEqual(Array(6).fill('unmeasured'));
      expect(set).toMatchObject({ done: false, verdict: 'unmeasured', nudge: null });
      expect([digGate.open, pourGate.open]).toEqual([false, false]);
    }
    expect(assessment.next).toBeNull();
  });

  it('A and B placed: holes have their marks, and A–B comes first', () => {
    const assessment = assess(new Field().site().log);
    expect(assessment.baseline).toEqual({ designed: 8, measured: null, sigma: null });
    expect(holeOf(assessment, '1').designed).toMatchObject({
      x: expect.closeTo(4, 9),
      y: expect.closeTo(8, 9),
    });
    expect(assessment.next?.text).toBe('Pull A to B, about 8000 mm: every place hangs on it.');
  });

  it('a stake driven and not pulled: says from where', () => {
    const field = new Field().site();
    field.pull(A, B);
    field.add({ kind: 'stand', thing: holeStake('3'), event: 'driven' });
    const assessment = assess(field.log);
    expect(holeOf(assessment, '3').staked).toMatchObject({ driven: true, at: null });
    expect(assessment.next?.text).toMatch(/^Pull (A|B) to stake 3, about .* mm: it helps to fix stake 3\.$/);
  });

  it('two pulls fix a stake and leave it unguarded; a third is asked for', () => {
    const field = new Field().site();
    field.pull(A, B);
    field.pull(A, B);
    for (const hole of ['2', '3']) {
      field.add({ kind: 'stand', thing: holeStake(hole), event: 'driven' });
      field.pullsTo(holeStake(hole), [A, B]);
    }
    const assessment = assess(field.log);
    expect(holeOf(assessment, '3').staked.position).toMatchObject({ verdict: 'in', checked: false });
    expect(holeOf(assessment, '3').digGate.items.find(({ item }) => item === 'checked')?.green).toBe(false);
    expect(assessment.next?.text).toMatch(
      /^Pull stake [23] to stake [23], about 3000 mm: it helps to guard stake/,
    );
  });

  it('whoever pulls what comes next, again and again, ends with every stake in and checked', () => {
    const field = new Field().site();
    for (const hole of HOLES) field.add({ kind: 'stand', thing: holeStake(hole), event: 'driven' });
    let pulls = 0;
    for (let next = assess(field.log).next; next; next = assess(field.log).next) {
      field.pull(next.from.thing, next.to.thing);
      pulls += 1;
      // A–B, two pulls to fix each stake, and about one more to guard it.
      expect(pulls).toBeLessThan(25);
    }
    for (const hole of HOLES)
      expect(holeOf(assess(field.log), hole).staked.position).toMatchObject({ verdict: 'in', checked: true });
  });

  it('a site whose stakes are too near each other: one finding, and the holes stay unplaced', () => {
    const field = new Field();
    const place = { right: mm(0), front: mm(0) };
    field.add({ kind: 'site', a: place, b: place, chosenBy: 'user' });
    const assessment = assess(field.log);
    expect(codes(assessment)).toEqual(['input']);
    expect(holeOf(assessment, '1').designed).toBeNull();
  });
});

describe('what cannot be known or used', () => {
  it('a thing with one pull is undetermined, and the other pull is named', () => {
    const field = new Field().site();
    field.pull(A, B);
    field.set('1').pull(A, post('1'));
    const finding = assess(field.log).findings.find(({ code }) => code === 'undetermined');
    expect(finding?.text).toMatch(/^One pull does not fix post 1: pull to it from .* too\.$/);
    expect(finding?.entries).toHaveLength(1);
  });
  it('heights called level with a difference between them are not used, and said so', () => {
    const field = new Field().site().set('1');
    const torn = field.add({
      kind: 'difference',
      by: 'water-level',
      from: { point: 'top', hole: '1' },
      to: { point: 'benchmark' },
      height: mm(20),
      higher: 'none',
    });
    expect(assess(field.log).findings).toContainEqual({
      code: 'input',
      text: 'Not used: “Water level: the top of post 1 is level with, and 20 mm from, the benchmark”, for it says that neither is higher, and gives a difference between them. Strike it, and log it right.',
      entries: [torn],
    });
  });
  it('a pull to a hole that the plan no longer has is not used, and said so', () => {
    const field = new Field().site();
    field.pull(A, B);
    field.set('6').pull(A, post('6'));
    const { shape } = ringPlan();
    if (shape.kind !== 'ring') throw new Error('not a ring');
    field.add({ kind: 'plan', plan: ringPlan('mm', { shape: { ...shape, count: 5 } }) });
    const finding = assess(field.log).findings.find(({ code }) => code === 'input');
    expect(finding?.text).toMatch(
      /^Not used: “A to post 6, .*”, for the plan has no such hole now\. Strike it, and log it right\.$/,
    );
  });
});

describe('whatever the log', () => {
  it('the order in which entries arrive changes nothing', () => {
    const { log } = setJob({ off: 0.02 });
    const random = seeded(7);
    const shuffled = [...log]
      .map((entry) => ({ entry, key: random() }))
      .sort((p, q) => p.key - q.key)
      .map(({ entry }) => entry);
    expect(assess(shuffled)).toEqual(assess(log));
  });

  it('every beginning of a whole job is judged without an exception, a NaN or a claim of what was not measured', () => {
    const field = setJob({ off: 0.02, slip: 0.3 });
    field.benchmark();
    for (const hole of HOLES) {
      field.top(hole);
      field.plumb(hole, 'front', 2);
      field.plumb(hole, 'left', -1);
    }
    field.add({ kind: 'stand', thing: post('3'), event: 'nudged' });
    field.strike(field.log.at(-20)!.id);
    for (let length = 0; length <= field.log.length; length += 3) {
      const part = field.log.slice(0, length);
      const assessment = assess(part);
      expect(JSON.stringify(assessment)).not.toMatch(/NaN|undefined|Infinity/);
      const measured = new Set(part.flatMap(thingsMeasured));
      for (const { hole, staked, set, pourGate, digGate } of assessment.holes) {
        if (!measured.has(JSON.stringify(post(hole)))) expect(set.position.verdict).toBe('unmeasured');
        if (!measured.has(JSON.stringify(holeStake(hole))))
          expect(staked.position.verdict).toBe('unmeasured');
        for (const judgement of [set.position, set.plumb, set.level, ...set.spacing])
          expect(judgement.verdict === 'unmeasured').toBe(judgement.chance === null);
        expect(pourGate.open || digGate.open).toBe(false);
      }
    }
  });
});

function thingsMeasured({ body }: Entry): string[] {
  const things: Thing[] = body.kind === 'pull' ? [body.from.thing, body.to.thing] : [];
  return things.map((thing) => JSON.stringify(thing));
}
