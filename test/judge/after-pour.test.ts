import { describe, expect, it, test } from 'vitest';
import { shiftsSincePour, shiftWords, sincePour, wantedSincePour } from '../../src/judge/after-pour.ts';
import { assess } from '../../src/judge/assess.ts';
import { minutesWords, NEXT_DAY_MS, pourClock } from '../../src/judge/pour-clock.ts';
import { situate } from '../../src/judge/situation.ts';
import { viewOf } from '../../src/judge/view.ts';
import { Field, mm, post, stake } from './field.ts';

const MINUTE = 60_000;
const NOON = Date.UTC(2026, 4, 1, 12);

describe('the clock of a pour', () => {
  const at = (minutes: number, working: number | null, set: number | null) =>
    pourClock(NOON, { working, set }, NOON + minutes * MINUTE);

  test.each([
    [0, 30, 240, 'workable', 30],
    [29.9, 30, 240, 'workable', 0.1],
    [30, 30, 240, 'stiff', 210],
    [239, 30, 240, 'stiff', 1],
    [240, 30, 240, 'set', null],
    [31, 30, null, 'stiff', null],
    [10, null, 240, 'unknown', null],
    [240, null, 240, 'set', null],
    [1000, null, null, 'unknown', null],
  ] as const)('after %s minutes of %s and %s it is %s', (minutes, working, set, stage, left) => {
    const clock = at(minutes, working, set);
    expect(clock.stage).toBe(stage);
    if (left === null) expect(clock.left).toBeNull();
    else expect(clock.left! / MINUTE).toBeCloseTo(left, 6);
  });

  it('guesses nothing: without what the bag says it never says that it can be pushed', () => {
    for (let minutes = 0; minutes < 3000; minutes += 7) expect(at(minutes, null, null).stage).toBe('unknown');
  });
  it('a clock that was set back does not make it younger than new', () => {
    expect(at(-50, 30, 240)).toMatchObject({ since: 0, stage: 'workable', left: 30 * MINUTE });
  });
  it('knows the next day', () => {
    expect(pourClock(NOON, { working: 30, set: 240 }, NOON + NEXT_DAY_MS - 1).nextDay).toBe(false);
    expect(pourClock(NOON, { working: 30, set: 240 }, NOON + NEXT_DAY_MS).nextDay).toBe(true);
  });
  test.each([
    [59_999, '0 min'],
    [12.5 * MINUTE, '12 min'],
    [65 * MINUTE, '1 h 05 min'],
    [-5, '0 min'],
  ])('%s ms in words', (ms, words) => {
    expect(minutesWords(ms)).toBe(words);
  });
});

describe('a post after its pour', () => {
  function poured(): Field {
    const field = new Field().site();
    field.pull(stake('A'), stake('B'));
    field.dig('1');
    field.set('1');
    for (const label of ['A', 'B']) field.pull(stake(label), post('1'));
    field.plumb('1', 'front');
    field.plumb('1', 'left');
    field.add({ kind: 'pour', hole: '1', bags: 5 });
    return field;
  }
  const viewIn = (field: Field) => viewOf(situate(field.log))!;
  const words = (field: Field) => shiftWords(viewIn(field), '1', shiftsSincePour(viewIn(field), '1'));

  it('that reads as before did not move', () => {
    const field = poured();
    for (const label of ['A', 'B']) field.pull(stake(label), post('1'), { error: 0.004 });
    field.plumb('1', 'front', 2);
    expect(words(field)).toBe('');
    expect(assess(field.log).findings).toEqual([]);
  });

  it('is as it was before the pour until its tapes and its plumb are read again', () => {
    const field = poured();
    const readSince = () => assess(field.log).holes.find(({ hole }) => hole === '1')?.poured?.readSince;
    expect(wantedSincePour(viewIn(new Field().site()), '1')).toBeNull();
    expect(wantedSincePour(viewIn(field), '1')).toEqual(['the tapes', 'plumb']);
    field.pull(stake('A'), post('1'));
    expect(readSince()).toBe(false);
    field.plumb('1', 'front');
    expect(wantedSincePour(viewIn(field), '1')).toEqual([]);
    expect(readSince()).toBe(true);
  });

  it('that reads otherwise by a tape is told by how much, and waits for a decision', () => {
    const field = poured();
    field.pull(stake('A'), post('1'), { error: 0.02 });
    expect(words(field)).toMatch(
      /^Post 1 moved since its concrete went in: A to post 1, the middle of the .* face reads 20 mm more than before the pour\.$/,
    );
    const told = assess(field.log).findings.filter(({ code }) => code === 'decision');
    expect(told.map(({ text }) => text)).toEqual([
      expect.stringMatching(/once it is set, whoever is responsible for the structure decides\.$/),
    ]);
    // Neither an inspection nor a decision on something else is a decision on what moved.
    field.tick('inspection', '1').decide('room', '1');
    expect(assess(field.log).findings.filter(({ code }) => code === 'decision')).toHaveLength(1);
    field.decide('moved', '1');
    expect(assess(field.log).findings.filter(({ code }) => code === 'decision')).toEqual([]);
  });

  it('that leans otherwise is told on which face', () => {
    const field = poured();
    field.plumb('1', 'left', 12);
    expect(words(field)).toMatch(
      /on the anticlockwise face its top leans .* further out than before the pour\.$/,
    );
  });

  it('is held against what its level means, turned or with its own error known', () => {
    const field = new Field().site().dig('1').set('1');
    const read = (side: 'left' | 'front', offset: number, more: object) =>
      field.add({
        kind: 'plumb',
        hole: '1',
        side,
        offset: mm(offset),
        over: mm(1000),
        leans: 'out',
        ...more,
      });
    const turned = { turned: { offset: mm(12), leans: 'in' } };
    read('left', 12, turned);
    field.add({ kind: 'pour', hole: '1', bags: 5 });
    read('left', 12, { markUp: true });
    expect(words(field)).toBe('');
    read('left', 24, { markUp: true });
    expect(words(field)).toMatch(
      /on the anticlockwise face its top leans .* further out than before the pour/,
    );
  });

  it('is not held against a reading before the pour that is believed misread, while there is another', () => {
    const field = new Field().site();
    for (let i = 0; i < 2; i++) field.pull(stake('A'), stake('B'));
    field.dig('1').set('1');
    for (const error of [0, 0, 0.03]) field.pull(stake('A'), post('1'), { error });
    field.pull(stake('B'), post('1'));
    field.add({ kind: 'pour', hole: '1', bags: 5 });
    field.pull(stake('A'), post('1'));
    expect(viewIn(field).suspects.size).toBe(1);
    expect(words(field)).toBe('');
  });

  it('that moved is told after a second pour, too', () => {
    const field = poured();
    field.pull(stake('A'), post('1'), { error: 0.02 });
    field.add({ kind: 'pour', hole: '1', bags: 1 });
    expect(words(field)).toMatch(/reads 20 mm more than before the pour/);
  });

  it('knows that its top was read, by water level as by the rod', () => {
    const field = poured();
    const from = { point: 'top', hole: '1' } as const;
    const to = { point: 'top', hole: '2' } as const;
    field.add({ kind: 'difference', by: 'water-level', from, to, height: mm(0), higher: 'none' });
    expect(sincePour(viewIn(field), '1')?.top).toBe(Date.parse(field.log.at(-1)!.at));
  });

  it('that was pushed back is another stand, and no shift any more', () => {
    const field = poured();
    field.pull(stake('A'), post('1'), { error: 0.02 });
    field.add({ kind: 'stand', thing: post('1'), event: 'nudged' });
    field.pull(stake('A'), post('1'));
    expect(words(field)).toBe('');
  });

  it('a later reading that reads as before takes it back', () => {
    const field = poured();
    field.pull(stake('A'), post('1'), { error: 0.02 });
    field.pull(stake('A'), post('1'));
    expect(words(field)).toBe('');
  });

  it('says what was read since, by the time that was given for the pour', () => {
    const field = poured();
    expect(sincePour(viewIn(field), '2')).toBeNull();
    expect(sincePour(viewIn(field), '1')).toMatchObject({ place: null, plumb: null, top: null });
    field.plumb('1', 'front');
    expect(sincePour(viewIn(field), '1')?.plumb).toBe(Date.parse(field.log.at(-1)!.at));
    const early = new Date(Date.parse(field.log[4]!.at)).toISOString();
    field.add({ kind: 'pour', hole: '1', bags: 5, time: early });
    expect(sincePour(viewIn(field), '1')).toMatchObject({ pouredAt: Date.parse(early) });
    expect(sincePour(viewIn(field), '1')?.place).not.toBeNull();
  });
});
