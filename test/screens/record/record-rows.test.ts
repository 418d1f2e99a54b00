import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../src/job/entry-schema.ts';
import { assess } from '../../../src/judge/assess.ts';
import { situate } from '../../../src/judge/situation.ts';
import { computedWords } from '../../../src/screens/record/computed.ts';
import { countWords, dugRows, setRows } from '../../../src/screens/record/record-rows.ts';
import { entry, inches, sampleBodies, samplePlan } from '../../job/sample.ts';
import { exampleLog } from '../set/set-day.ts';

const all = (log: readonly Entry[]) => {
  const situation = situate(log);
  const assessment = assess(log);
  return { situation, assessment, dug: dugRows(assessment, situation), set: setRows(assessment, situation) };
};

const AT = '2026-05-03T09:00:00.000Z';
const later = (seq: number, body: Entry['body']): Entry => ({ ...entry(seq, body), at: AT });

describe('the rows of the record', () => {
  test('have every hole, and say of nothing that it is in before it was measured', () => {
    const { dug, set } = all([entry(1, sampleBodies.plan), entry(2, sampleBodies.site)]);
    expect(dug.map(({ hole }) => hole)).toEqual(['1', '2', '3', '4', '5', '6', '7', '8', 'P']);
    for (const row of dug) {
      expect(row).toMatchObject({ inTheWay: '—', dugAt: null });
      expect([row.depth.verdict, row.width.verdict]).toEqual(['unmeasured', 'unmeasured']);
    }
    for (const row of set) {
      expect(row.verdict).toEqual({ verdict: 'unmeasured', checked: false, text: 'not set' });
      expect([row.setAt, row.poured]).toEqual([null, null]);
    }
  });

  test('say how a hole was dug, and what was in the way', () => {
    const { dug } = all([
      entry(1, sampleBodies.plan),
      entry(2, sampleBodies.site),
      later(3, sampleBodies.dug),
    ]);
    const row = dug.find(({ hole }) => hole === '4')!;
    expect(row.dugAt).toBe(AT);
    expect(row.inTheWay).toBe('rock');
    expect(row.depth.text).toContain('3′ 8″');
    expect(row.width.text).toContain('1′ 4″');
  });

  test('say that the depth asked is not known while the frost depth is not', () => {
    const rules = { ...samplePlan.rules, frostDepth: null };
    const { dug } = all([
      entry(1, { kind: 'plan', plan: { ...samplePlan, rules } }),
      entry(2, sampleBodies.site),
    ]);
    expect(new Set(dug.map(({ asked }) => asked))).toEqual(new Set(['not known']));
  });

  test('say when a post was last set, and what was poured', () => {
    const set = { kind: 'stand', thing: { kind: 'post', hole: '4' }, event: 'set' } as const;
    const log = [
      entry(1, sampleBodies.plan),
      entry(2, sampleBodies.site),
      entry(3, set),
      later(4, { ...set, event: 'nudged' }),
      later(5, { ...sampleBodies.pour, bags: 1 }),
    ];
    const row = all(log).set.find(({ hole }) => hole === '4')!;
    expect(row).toMatchObject({ name: 'Post 4', setAt: AT, poured: { at: AT, bags: '1 bag' } });
    expect(row.verdict).toMatchObject({ verdict: 'unmeasured', text: 'unmeasured' });
    expect(countWords(all(log).assessment)).toBe('9 holes: 0 dug, 1 poured; of 1 set, 1 unmeasured.');
  });

  test('what was in before its pour is not in until it is read again', () => {
    const { assessment, situation } = all(exampleLog());
    const row = setRows(assessment, situation).find(({ hole }) => hole === '1')!;
    expect(row.verdict).toMatchObject({ verdict: 'in', beforePour: true });
    expect(row.place).toMatchObject({ beforePour: true });
    expect(countWords(assessment)).toMatch(/\d in, 2 in before the pour and not read since, /);
    const read = assessment.holes.map((hole) =>
      hole.poured ? { ...hole, poured: { ...hole.poured, readSince: true } } : hole,
    );
    expect(countWords({ holes: read })).not.toContain('before the pour');
    expect(setRows({ ...assessment, holes: read }, situation)[1]!.verdict).not.toHaveProperty('beforePour');
  });

  test('are none without a plan', () => {
    expect(all([]).dug).toEqual([]);
    expect(all([]).set).toEqual([]);
  });
});

describe('how it was computed', () => {
  const pull = sampleBodies.pull;
  const log = [entry(1, sampleBodies.plan), entry(2, sampleBodies.site), entry(3, pull)];

  test('says what was allowed, what was used, and how much of the log stands', () => {
    const struck = [...log, entry(4, { kind: 'strike', entry: 'entry-0003', reason: 'misread' })];
    const { situation, assessment } = all(struck);
    const words = computedWords(struck, situation, assessment).join(' ');
    expect(words).toContain('place 1/2″, spacing 3/8″, plumb 1/4″ in 10′, level 1/8″');
    expect(words).toContain('A to B: planned 24′ 0″, measured not pulled.');
    expect(words).toContain('2 of 4 entries of the field book stand.');
  });

  test('says of a job without a plan only how it would be', () => {
    const { situation, assessment } = all([]);
    const words = computedWords([], situation, assessment).join(' ');
    expect(words).not.toContain('Allowed');
    expect(words).toContain('0 of 0 entries');
  });

  test('counts the pulls that were used, and says when none is to spare', () => {
    const baseline = {
      ...pull,
      to: { thing: { kind: 'stake', label: 'B' }, touch: { at: 'nail' } },
      reading: inches('24 0'),
    } as const;
    const pulled = [...log.slice(0, 2), entry(3, baseline)];
    const { situation, assessment } = all(pulled);
    expect(computedWords(pulled, situation, assessment)).toContain('1 pull was used, none of them to spare.');
  });
});
