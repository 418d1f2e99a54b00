import { describe, expect, test } from 'vitest';
import { unbroken, unbrokenIn } from '../../src/ui/unbroken.ts';

/** A no-break space, seen. */
const seen = (text: string): string => unbroken(text).replaceAll('\u00a0', '_');

describe('a length is kept in one piece', () => {
  test.each([
    ['Read it: 22′ 0 5/16″', 'Read it: 22′_0_5/16″'],
    ['± 1 1/2″ at 4′ 6″.', '± 1_1/2″ at 4′_6″.'],
    ['is 5/8″ out, 5.246 m away', 'is 5/8″ out, 5.246_m away'],
    ['within 12 mm, or 18.53 ft', 'within 12_mm, or 18.53_ft'],
  ])('%s', (text, kept) => expect(seen(text)).toBe(kept));

  test.each(['post 4 measures out', 'Hole 3 more', 'Stake 4 1/2'])('and “%s” is left as it is', (text) =>
    expect(unbroken(text)).toBe(text),
  );
});

test('among what a part holds only words are changed', () => {
  expect(unbrokenIn(['Pull 5.246 m', null, 3])).toEqual(['Pull 5.246\u00a0m', null, 3]);
  expect(unbrokenIn('22′ 6″')).toBe('22′\u00a06″');
});
