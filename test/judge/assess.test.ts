import { describe, expect, it } from 'vitest';
import type { Entry, Thing } from '../../src/job/entry-schema.ts';
import { assess } from '../../src/judge/assess.ts';
import type { Assessment, HoleAssessment } from '../../src/judge/types.ts';
import { Field, holeStake, mm, noise, post, ringPlan, seeded, stake } from './field.ts';

const HOLES = ['1', '2', '3', '4', '5', '6'] as const;
const A = stake('A');
const B = stake('B');

const holeOf = (assessment: Assessment, label: string): HoleAssessment => {
  const found = assessment.holes.find(({ hole }) => hole === label);
  if (!found) throw new Error(`no hole ${label}`);
  return found;
};
const codes = (assessment: Assessment) => assessment.findings.map(({ code }) => code);

interface Job {
  readonly seed?: number;
  /** A slip in the pull from B to post 2, metres. */
  readonly slip?: number;
  /** Post 5 stands this far to the right of its mark, metres. */
  readonly off?: number;
  readonly before?: (field: Field) => void;
}

/** Six posts round a pier, all set and measured from A, B and both neighbours, with the tape's own noise. */
function setJob({ seed = 1, slip = 0, off = 0, before }: Job = {}): Field {
  const field = new Field().site();
  const n = noise(seed);
  before?.(field);
  if (off !== 0) field.off(post('5'), off, 0);
  field.pull(A, B, { error: n(0.002) });
  field.pull(A, B, { error: n(0.002) });
  for (const hole of HOLES) {
    field.dig(hole).set(hole);
    field.pull(A, post(hole), { error: n(0.002), side: 'back' });
    field.pull(B, post(hole), { error: n(0.002) + (hole === '2' ? slip : 0), side: 'back' });
  }
  HOLES.forEach((hole, i) => {
    field.pull(post(hole), post(HOLES[(i + 1) % HOLES.length]!), { error: n(0.002), side: 'left' });
  });
  return field;
}

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
    expect(assessment.next?.text).toMatch(/^Pull stake [23] to stake [23], about 3000 mm: it guards stake/);
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

describe('a ring that is set and measured', () => {
  it('clean: everything measured is in and checked, no finding, nothing left to pull', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const assessment = assess(setJob({ seed }).log);
      expect(assessment.findings).toEqual([]);
      for (const hole of HOLES) {
        const { set } = holeOf(assessment, hole);
        expect([seed, hole, set.position.verdict, set.position.checked]).toEqual([seed, hole, 'in', true]);
        expect(set.nudge).toBeNull();
      }
      expect(assessment.next).toBeNull();
    }
  });

  it('one post out: it and no other, which way, and how to bring it back', () => {
    const field = setJob({ off: 0.02 });
    const assessment = assess(field.log);
    const verdicts = HOLES.map((hole) => holeOf(assessment, hole).set.position.verdict);
    expect(verdicts).toEqual(['in', 'in', 'in', 'in', 'out', 'in']);
    expect(codes(assessment)).toEqual(['shape']);
    expect(assessment.findings[0]!.text).toMatch(
      /^Post 5 is out by itself: the other 5 fit one another to within \d mm, and it stands \d\d mm from where they would have it\.$/,
    );
    // Post 5 stands left and behind: moved to the right it comes nearer the pier, and goes anticlockwise.
    const { nudge, headline } = holeOf(assessment, '5').set;
    expect(headline).toMatch(
      /^Post 5 is \d\d mm off its mark, and 12 mm is allowed: it stands \d\d mm too far toward the pier/,
    );
    expect(nudge?.words).toMatch(
      /^Push the foot of post 5: \d\d mm away from the pier and \d\d mm clockwise seen from above\.$/,
    );
    expect(nudge?.distance).toBeCloseTo(0.02, 2);
    // Post 4 stands between B and post 5: the neighbours give the other two readings.
    expect(nudge?.readings.map(({ from }) => from.thing)).toEqual([A, post('6'), post('4')]);
  });

  it('a neighbour of the post that is out is told whose fault it is', () => {
    const { spacing, position } = holeOf(assess(setJob({ off: 0.03 }).log), '4').set;
    expect(position.verdict).toBe('in');
    const bad = spacing.find(({ to }) => to === '5')!;
    expect(bad.verdict).not.toBe('in');
    expect(bad.why).toMatch(/ is allowed\. Post 5 is out of place: see to it first\.$/);
  });

  it('and is not called out for it, though its own gate waits', () => {
    const field = setJob({ off: 0.03 });
    field.benchmark();
    field.top('4');
    field.top('4');
    field.benchmark();
    for (const side of ['front', 'left', 'back', 'right'] as const) field.plumb('4', side);
    const hole = holeOf(assess(field.log), '4');
    expect(hole.set.verdict).toBe('in');
    expect(hole.set.headline).toMatch(/^Post 4 is in, but for its spacing\. Post 4 to post 5 measures/);
    expect(hole.pourGate.items.find(({ item }) => item === 'spacing')?.green).toBe(false);
  });

  it('the readings of a nudge are what the tape then reads: nudged by it, the post is in', () => {
    const field = setJob({ off: 0.02 });
    const { nudge } = holeOf(assess(field.log), '5').set;
    field.add({ kind: 'stand', thing: post('5'), event: 'nudged' });
    expect(holeOf(assess(field.log), '5').set).toMatchObject({ verdict: 'unmeasured', nudge: null });
    for (const { from, to, reading } of nudge!.readings)
      field.add({ kind: 'pull', from, to, reading: mm(reading * 1000), hold: { how: 'level' } });
    const { position } = holeOf(assess(field.log), '5').set;
    expect(position.verdict).toBe('in');
    expect(position.error).toBeLessThan(0.002);
  });

  it('no nudge for a post in concrete', () => {
    const field = setJob({ off: 0.02 });
    field.add({ kind: 'pour', hole: '5', bags: 4 });
    const hole = holeOf(assess(field.log), '5');
    expect(hole.poured).toMatchObject({ bags: 4 });
    expect(hole.set).toMatchObject({ nudge: null, position: { verdict: 'out' } });
  });
});

describe('one misread tape', () => {
  const field = setJob({ slip: 0.3 });
  const assessment = assess(field.log);
  const misread = field.log.find(
    ({ body }) =>
      body.kind === 'pull' &&
      body.from.thing === B &&
      JSON.stringify(body.to.thing) === JSON.stringify(post('2')),
  )!;

  it('is named, with how much and what to do', () => {
    expect(codes(assessment)).toEqual(['misreading']);
    const [finding] = assessment.findings;
    expect(finding!.entries).toEqual([misread.id]);
    expect(finding!.text).toMatch(
      /^B to post 2, the middle of the inner face, [\d.]+ mm: looks \d+ mm too long\. Take it again, and strike the wrong one\.$/,
    );
    expect(assessment.pulls.filter(({ suspect }) => suspect).map(({ entry }) => entry)).toEqual([misread.id]);
  });
  it('is the next pull, with what it should read', () => {
    expect(assessment.next?.text).toMatch(
      /^Pull B to post 2, the middle of the inner face, about .* it should bear out the reading or show it misread\.$/,
    );
  });
  it('moves no post: nothing is called out and nothing is to be pushed on the strength of it', () => {
    for (const hole of HOLES) {
      const { set } = holeOf(assessment, hole);
      expect(['in', 'unsure']).toContain(set.position.verdict);
      expect(set.nudge).toBeNull();
    }
    const doubted = holeOf(assessment, '2').set.position;
    expect(doubted).toMatchObject({ verdict: 'unsure', checked: false });
    expect(doubted.why).toMatch(
      /^The verdict hangs on “B to post 2, .*”, which looks misread: take it again before anything is moved\.$/,
    );
    expect(holeOf(assessment, '2').pourGate.open).toBe(false);
  });
  it('struck and pulled again, all is as if it had never been', () => {
    const mended = setJob({ slip: 0.3 });
    mended.strike(misread.id);
    mended.pull(B, post('2'), { side: 'back' });
    const after = assess(mended.log);
    expect(after.findings).toEqual([]);
    for (const hole of HOLES)
      expect(holeOf(after, hole).set.position).toMatchObject({ verdict: 'in', checked: true });
  });
  it('does not hide a post that is truly out elsewhere', () => {
    const both = assess(setJob({ slip: 0.3, off: 0.03 }).log);
    expect(holeOf(both, '5').set.position.verdict).toBe('out');
    expect(holeOf(both, '5').set.nudge).not.toBeNull();
    expect(both.findings.find(({ code }) => code === 'misreading')?.entries).toEqual([misread.id]);
  });
  it('where one spare pull cannot tell which is wrong, all are named, with the pull that would tell', () => {
    const lone = new Field().site();
    lone.pull(A, B);
    lone.pull(A, B);
    for (const hole of ['2', '3', '4']) lone.set(hole);
    lone.pullsTo(post('3'), [A, B]);
    lone.pullsTo(post('4'), [A, B]);
    lone.pull(post('3'), post('4'), { side: 'front' });
    lone.pull(A, post('2'));
    lone.pull(B, post('2'));
    lone.pull(post('3'), post('2'), { error: 0.1 });
    const ambiguous = assess(lone.log);
    const finding = ambiguous.findings.find(({ code }) => code === 'misreading')!;
    expect(finding.entries.length).toBeGreaterThan(1);
    expect(finding.text).toMatch(
      /^One of these is misread, and nothing yet tells which: “.*” or “.*”\. Pull .* it should tell which of the pulls is misread\.$/,
    );
    expect(ambiguous.next?.text).toMatch(/it should tell which of the pulls is misread\.$/);
    expect(holeOf(ambiguous, '2').set.position.verdict).toBe('unsure');
    expect(holeOf(ambiguous, '2').set.nudge).toBeNull();
  });
});

describe('the whole out of place', () => {
  it('a ring that is right in shape and turned is told apart from posts that are out', () => {
    const angle = 0.01;
    const turned = (field: Field) => {
      const { holes } = field.laid;
      for (const hole of HOLES) {
        const at = holes.find(({ label }) => label === hole)!.site;
        const [x, y] = [at.x - 4, at.y - 5];
        field.truth.set(JSON.stringify(post(hole)), {
          x: 4 + x * Math.cos(angle) - y * Math.sin(angle),
          y: 5 + x * Math.sin(angle) + y * Math.cos(angle),
        });
      }
    };
    const finding = assess(setJob({ before: turned }).log).findings.find(({ code }) => code === 'shape');
    expect(finding?.text).toMatch(
      /^The posts fit one another to within \d mm, so the shape is right; the whole of it is turned 0\.5\d° anticlockwise seen from above \((29|30|31) mm at the outermost post\)\. Decide whether its place matters before moving any post\.$/,
    );
  });
  it('or shifted', () => {
    const shifted = (field: Field) => {
      for (const hole of HOLES) field.off(post(hole), 0, 0.03);
    };
    const finding = assess(setJob({ before: shifted }).log).findings.find(({ code }) => code === 'shape');
    expect(finding?.text).toMatch(/the whole of it is shifted (29|30|31) mm toward the front\. Decide/);
  });
});

describe('A and B', () => {
  it('pulled again and no longer the same: a finding, and no hole may be dug', () => {
    const field = new Field().site();
    field.pull(A, B);
    field.pull(A, B, { error: 0.02 });
    const assessment = assess(field.log);
    const finding = assessment.findings.find(({ code }) => code === 'baseline');
    expect(finding?.text).toBe(
      'A to B now reads 20 mm longer than before: a stake has moved, or a pull was misread. Pull A to B again, and from each of them to something that stood still.',
    );
    expect(holeOf(assessment, '1').digGate.items.find(({ item }) => item === 'baseline')).toMatchObject({
      green: false,
    });
  });
  it('not as far apart as planned: pull once more, for every length from B hangs on it', () => {
    const field = new Field().site();
    field.truth.set(JSON.stringify(B), { x: 8.05, y: 0 });
    field.pull(A, B);
    const [finding] = assess(field.log).findings;
    expect(finding).toMatchObject({ code: 'baseline' });
    expect(finding?.text).toMatch(
      /^A to B is 8050 mm, 50 mm longer than planned\. The lengths from B are worked out from where B really is; pull A to B once more/,
    );
    field.pull(A, B);
    expect(assess(field.log).findings).toEqual([]);
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
