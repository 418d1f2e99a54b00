import { describe, expect, test } from 'vitest';
import { readBags } from '../../../src/screens/pour/pour-sheet.tsx';
import { earlyWords, readPouredAt } from '../../../src/screens/pour/poured-time.ts';

const NOW = new Date(2026, 4, 16, 15, 30).getTime();
const BEGAN = new Date(2026, 4, 9, 7, 30).getTime();
const read = (text: string) => readPouredAt(text, NOW);
const said = (text: string) => {
  const result = read(text);
  return result.ok ? result.value : result.problem.text;
};

describe('when it was poured', () => {
  test.each([
    ['14:20', new Date(2026, 4, 16, 14, 20)],
    ['14.20', new Date(2026, 4, 16, 14, 20)],
    ['2026-05-15 23:50', new Date(2026, 4, 15, 23, 50)],
    [' 15:30 ', new Date(NOW)],
  ])('%s is today, or the day that is said', (text, at) => {
    expect(read(text)).toEqual({ ok: true, value: at.toISOString() });
  });

  test('a job begun on the phone after the pour takes the true time, and asks once', () => {
    const early = new Date(2026, 4, 1, 10, 0).toISOString();
    expect(read('2026-05-01 10:00')).toEqual({ ok: true, value: early });
    expect(earlyWords(early, BEGAN)).toMatch(
      /^That is before this job was begun here, on 2026-05-09 at 07:30\./,
    );
    expect(earlyWords(new Date(BEGAN).toISOString(), BEGAN)).toBeNull();
    expect(earlyWords(null, BEGAN)).toBeNull();
  });

  test('empty is now', () => {
    expect(read('  ')).toEqual({ ok: true, value: null });
  });

  test.each([
    ['16:00', /^Poured at: “16:00” is in the future: it is 15:30 now; type when it went in/],
    ['2027-01-01 10:00', /is in the future/],
    ['25:00', /is no time; type it like 14:20, or 2026-05-16 14:20, or leave it empty for now\.$/],
    ['2026-06-31 10:00', /is no time/],
    ['noon', /is no time/],
  ])('%s is refused in words', (text, words) => {
    expect(said(text)).toMatch(words);
  });
});

describe('bags', () => {
  test.each(['0', '3', '1000', ' 11 '])('%s are whole', (text) => {
    expect(readBags(text)).toEqual({ ok: true, value: Number(text) });
  });
  test.each([
    ['2.5', /type 3 if it was opened here, else 2\.$/],
    ['0,5', /type 1 if it was opened here, else 0\.$/],
    ['', /is empty/],
    ['-1', /out of range/],
    ['1001', /out of range/],
    ['three', /is not a number/],
  ])('%s are refused in words', (text, words) => {
    const result = readBags(text);
    expect(result.ok ? '' : result.problem.text).toMatch(words);
  });
});
