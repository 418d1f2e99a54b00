import { describe, expect, it } from 'vitest';
import { assess } from '../../src/judge/assess.ts';
import { type Field, mm, post } from './field.ts';
import { A, codes, HOLES, holeOf, setJob } from './ring-job.ts';

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
