import { describe, expect, it } from 'vitest';
import { assess } from '../../src/judge/assess.ts';
import { Field, post } from './field.ts';
import { A, B, codes, HOLES, holeOf, setJob } from './ring-job.ts';

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

describe('A and B', () => {
  it('pulled again and no longer the same: a finding, and no hole may be dug', () => {
    const field = new Field().site();
    field.pull(A, B);
    field.pull(A, B, { error: 0.02 });
    const assessment = assess(field.log);
    const finding = assessment.findings.find(({ code }) => code === 'moved-stake');
    expect(finding?.text).toBe(
      'A to B now reads 20 mm longer than before: either stake A or stake B has moved, or a pull is misread, and the pulls do not tell which. Pull it again, to show a misread pull. Which stake it was would show only in pulls to something that stood still, and nothing else is pulled to.',
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

  it('two tapes over one line are told apart by that line again, not by another', () => {
    const twice = new Field().site();
    twice.pull(A, B);
    twice.pull(A, B);
    twice.set('2');
    twice.pull(A, post('2'));
    twice.pull(B, post('2'));
    twice.pull(B, post('2'), { error: 0.027 });
    const finding = assess(twice.log).findings.find(({ code }) => code === 'misreading')!;
    expect(finding.entries.length).toBeGreaterThan(1);
    expect(finding.text).toMatch(/Pull B to post 2/);
    expect(finding.text).not.toMatch(/Pull A to post 2/);
  });
});
