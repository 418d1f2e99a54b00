import { describe, expect, test } from 'vitest';
import {
  entryText,
  goToStage,
  type KeypadEntry,
  pressDigit,
  pressFeetMark,
  pressFraction,
  pressInches,
  pressInchMark,
  startEntry,
  takeBack,
  typeText,
} from '../../src/ui/keypad-entry.ts';
import { METRES_PER_INCH, parseLength, type Units } from '../../src/units/index.ts';

type Pieces = Extract<KeypadEntry, { how: 'pieces' }>;

function pieces(entry: KeypadEntry): Pieces {
  if (entry.how !== 'pieces') throw new Error(`expected pieces, got the text “${entry.text}”`);
  return entry;
}

const digits = (entry: KeypadEntry, text: string) => [...text].reduce(pressDigit, entry);

/** The fewest taps: feet, ′, inch, fraction. */
function tapped(feet: string, inches: number, over: number, units: Units = 'ft-in-16'): KeypadEntry {
  const withFeet = pressFeetMark(digits(startEntry(units), feet));
  const withInches = pressInches(pieces(withFeet), inches);
  return pressFraction(pieces(withInches), over);
}

describe('text of what was tapped', () => {
  test.each([
    [tapped('18', 6, 5), '18′ 6 5/16″'],
    [tapped('18', 6, 0), '18′ 6″'],
    [tapped('', 6, 5), '6 5/16″'],
    [tapped('0', 0, 5), '0′ 0 5/16″'],
    [tapped('3', 0, 8), '3′ 0 1/2″'],
    [tapped('18', 11, 31, 'ft-in-32'), '18′ 11 31/32″'],
    [pressFeetMark(digits(startEntry('ft-in-16'), '18')), '18′'],
    [pressInchMark(digits(startEntry('ft-in-16'), '30')), '30″'],
    [digits(startEntry('ft-in-16'), '18'), '18'],
    [digits(startEntry('mm'), '5647'), '5647'],
    [digits(typeText(digits(startEntry('m'), '5'), '.'), '647'), '5.647'],
    [startEntry('ft-in-16'), ''],
  ])('%# reads %s as %s', (entry, text) => {
    expect(entryText(entry)).toBe(text);
  });

  test('every feet, inch and sixteenth that can be tapped is read as that very length', () => {
    for (const feet of ['', '1', '47'])
      for (let inches = 0; inches < 12; inches++)
        for (let over = 0; over < 16; over++) {
          const read = parseLength(entryText(tapped(feet, inches, over)), 'ft-in-16', 'Tape', { min: 0 });
          const expected = (Number(feet) * 12 + inches + over / 16) * METRES_PER_INCH;
          expect(read.ok && Math.abs(read.value - expected)).toBeLessThan(1e-12);
        }
  });
});

describe('taking back', () => {
  test('undoes fraction, inches, the ′ and each digit in turn', () => {
    const texts = [];
    for (let entry = tapped('18', 6, 5), n = 0; n < 5; n++) {
      entry = takeBack(entry, 'ft-in-16');
      texts.push(entryText(entry));
    }
    expect(texts).toEqual(['18′ 6″', '18′', '18', '1', '']);
  });

  test('takes a character off typed text and ends where one can tap again', () => {
    const one = typeText(startEntry('ft-in-16'), '7');
    expect(takeBack(one, 'ft-in-16')).toEqual(startEntry('ft-in-16'));
  });

  test('does nothing to an empty entry', () => {
    expect(takeBack(startEntry('m'), 'm')).toEqual(startEntry('m'));
    expect(takeBack(startEntry('ft-in-16'), 'ft-in-16')).toEqual(startEntry('ft-in-16'));
  });
});

test('a piece can be gone back to and changed alone', () => {
  const back = goToStage(pieces(tapped('18', 6, 5)), 'inches');
  expect(entryText(pressInches(pieces(back), 7))).toBe('18′ 7 5/16″');
});

test('a hardware key goes on from what was tapped', () => {
  expect(entryText(typeText(pressFeetMark(digits(startEntry('ft-in-16'), '18')), '6'))).toBe('18′6');
});

test('a draft comes back as the text it was', () => {
  expect(entryText(startEntry('ft-in-16', '18 6 5'))).toBe('18 6 5');
});

test('no more digits or characters than a length can have', () => {
  expect(entryText(digits(startEntry('ft-in-16'), '1234567'))).toBe('12345');
  expect(entryText(digits(startEntry('mm'), '1'.repeat(60)))).toHaveLength(40);
});
