import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Body, Entry } from '../../src/job/entry-schema.ts';
import { currentPlan, inOrder, isKind, ofKind, standing, struck, thingKey } from '../../src/job/log.ts';
import { entry, sampleBodies, sampleLog, samplePlan } from './sample.ts';

const note = (text: string): Body => ({ kind: 'note', text });
const strike = (target: Entry, reason = 'slip'): Body => ({ kind: 'strike', entry: target.id, reason });
const texts = (log: readonly Entry[]): string[] => ofKind(log, 'note').map((e) => e.body.text);

describe('order', () => {
  test('is by counter, then by id where two phones wrote at once', () => {
    const log = [entry(2, note('c'), 'b'), entry(2, note('b'), 'a'), entry(1, note('a'), 'z')];
    expect(texts(inOrder(log))).toEqual(['a', 'b', 'c']);
  });

  test('does not touch the log that it is given', () => {
    const log = Object.freeze([entry(2, note('b')), entry(1, note('a'))]);
    expect(texts(inOrder(log))).toEqual(['a', 'b']);
    expect(texts(log)).toEqual(['b', 'a']);
  });

  test('what stands is the same in whatever order the entries arrive', () => {
    const log = sampleLog();
    const shuffled = fc.shuffledSubarray(log, { minLength: log.length });
    fc.assert(
      fc.property(shuffled, (arrived) => {
        expect(standing(arrived)).toEqual(standing(log));
      }),
    );
  });
});

describe('a stand that began before it was logged', () => {
  const moved = (since: string): Body => ({
    kind: 'stand',
    thing: { kind: 'stake', label: 'A' },
    event: 'moved',
    since,
  });
  const [a, b] = [entry(1, note('a')), entry(2, note('b'))];
  const order = (log: readonly Entry[]) => standing(log).map(({ seq }) => seq);

  test('comes before the entry that found it', () => {
    expect(order([a, b, entry(3, moved(b.id))])).toEqual([1, 3, 2]);
    expect(order([a, b, entry(3, moved(a.id)), entry(4, note('c'))])).toEqual([3, 1, 2, 4]);
  });

  test('stays where it was logged when that entry was struck, is unknown, or is later', () => {
    const late = entry(3, moved(b.id));
    expect(order([a, b, late, entry(4, strike(b))])).toEqual([1, 3]);
    expect(order([a, b, entry(3, moved('no-such-entry'))])).toEqual([1, 2, 3]);
    expect(order([a, entry(2, moved('entry-9')), entry(3, note('c'), 'entry-9')])).toEqual([1, 2, 3]);
  });

  test('is in its place however often that is asked', () => {
    const log = [a, b, entry(3, moved(b.id))];
    expect(standing(standing(log))).toEqual(standing(log));
  });
});

describe('strikes', () => {
  const a = entry(1, note('a'));
  const b = entry(2, note('b'));

  test('a struck entry does not stand, and its reason is kept', () => {
    const log = [a, b, entry(3, strike(a, 'wrong hole'))];
    expect(texts(standing(log))).toEqual(['b']);
    expect(struck(log)).toEqual(new Map([[a.id, 'wrong hole']]));
  });

  test('a strike that is struck restores the entry; striking that one takes it away again', () => {
    const first = entry(3, strike(a));
    const second = entry(4, strike(first));
    const third = entry(5, strike(second));
    expect(texts(standing([a, b, first, second]))).toEqual(['a', 'b']);
    expect(texts(standing([a, b, first, second, third]))).toEqual(['b']);
  });

  test('with two strikes of one entry, striking one of them is not enough', () => {
    const first = entry(3, strike(a));
    const second = entry(4, strike(a));
    expect(texts(standing([a, first, second, entry(5, strike(second))]))).toEqual([]);
  });

  test('a strike of an entry that has not arrived yet does no harm', () => {
    expect(texts(standing([b, entry(3, strike(a))]))).toEqual(['b']);
  });

  test('the clock plays no part', () => {
    const early = { ...entry(3, strike(a)), at: '1999-01-01T00:00:00.000Z' };
    expect(texts(standing([early, a]))).toEqual([]);
  });

  test('property: an entry stands unless a standing strike names it', () => {
    // Each strike names some older entry, so any chain of strikes of strikes can come up.
    const targets = fc.array(fc.nat(), { maxLength: 20 });
    fc.assert(
      fc.property(targets, (picks) => {
        const log = [a, b];
        for (const pick of picks) log.push(entry(log.length + 1, strike(log[pick % log.length]!)));
        const gone = struck(log);
        for (const e of log) {
          const named = log.some((s) => s.body.kind === 'strike' && s.body.entry === e.id && !gone.has(s.id));
          expect(gone.has(e.id)).toBe(named);
        }
      }),
    );
  });
});

describe('readers', () => {
  test('the plan that stands is the last one, and striking it brings back the one before', () => {
    const second = entry(2, { kind: 'plan', plan: { ...samplePlan, name: 'Wider' } });
    const log = [entry(1, sampleBodies.plan), second];
    expect(currentPlan(standing(log))?.name).toBe('Wider');
    expect(currentPlan(standing([...log, entry(3, strike(second))]))?.name).toBe('Garden room');
    expect(currentPlan([])).toBeNull();
  });

  test('isKind and ofKind choose by kind, in order', () => {
    const log = sampleLog();
    expect(ofKind(log, 'dug').map((e) => e.body.hole)).toEqual(['4']);
    expect(isKind(log[0]!, 'plan')).toBe(true);
    expect(isKind(log[0]!, 'pull')).toBe(false);
  });

  test('thingKey tells a hole’s stake from its post', () => {
    expect(thingKey({ kind: 'stake', label: 'A' })).toBe('stake:A');
    expect(thingKey({ kind: 'nail', label: 'A' })).toBe('nail:A');
    expect(thingKey({ kind: 'hole-stake', hole: '3' })).toBe('hole-stake:3');
    expect(thingKey({ kind: 'post', hole: '3' })).toBe('post:3');
  });
});
