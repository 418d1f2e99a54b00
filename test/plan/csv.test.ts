import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { PointsSchema } from '../../src/job/plan-schema.ts';
import { pointsFromCsv } from '../../src/plan/index.ts';

const places = (text: string, units: 'm' | 'mm' | 'ft-in-16' | 'ft' = 'm') => {
  const result = pointsFromCsv(text, units);
  if (!result.ok) throw new Error(result.problem.text);
  return result.value.points.map(({ label, right, front }) => [label, right.m, front.m]);
};
const refusal = (text: string, units: 'm' | 'ft-in-16' = 'm') => {
  const result = pointsFromCsv(text, units);
  expect(result.ok).toBe(false);
  if (result.ok) return '';
  expect(result.problem.field).toBe('Points');
  expect(result.problem.text).toMatch(/^Points: .*\.$/);
  return result.problem.text;
};

describe('points from CSV', () => {
  it('reads label, right and front', () => {
    expect(places('label,right,front\n1,1.5,-2\n2,0,3.25\n')).toEqual([
      ['1', 1.5, -2],
      ['2', 0, 3.25],
    ]);
  });

  it.each([
    ['columns in any order, others left alone', 'front,note,label,right\n2,"by the apple, old",a,1'],
    ['a byte-order mark', '\uFEFFlabel,right,front\na,1,2'],
    ['carriage returns', 'label,right,front\r\na,1,2\r\n'],
    ['bare carriage returns', 'label,right,front\ra,1,2\r'],
    ['capitals and blanks', ' Label , RIGHT,Front\n a , 1 , 2 '],
    ['semicolons', 'label;right;front\na;1;2'],
    ['semicolons with decimal commas', 'label;right;front\na;1,0;2,0'],
    ['tabs, as pasted from a spreadsheet', 'label\tright\tfront\na\t1\t2'],
    ['empty lines', '\n\nlabel,right,front\n\n,,\na,1,2\n\n'],
    ['empty cells at the end of a line', 'label,right,front,,\na,1,2,'],
    ['more empty cells than the header', 'label,right,front\na,1,2,,'],
    ['quoted cells', '"label","right","front"\n"a","1","2"'],
    ['units in the cell', 'label,right,front\na,1000 mm,200 cm'],
  ])('with %s', (_, text) => {
    expect(places(text)).toEqual([['a', 1, 2]]);
  });

  it('reads feet and inches, with the quote as inch mark, bare or doubled within quotes', () => {
    const twelveSix = 3.8227;
    expect(places('label,right,front\na,12\' 6 1/2",-6"', 'ft-in-16')).toEqual([['a', twelveSix, -0.1524]]);
    expect(places('label,right,front\na,"12\' 6 1/2""","-6"""', 'ft-in-16')).toEqual([
      ['a', twelveSix, -0.1524],
    ]);
  });

  it('keeps the text that was typed', () => {
    const result = pointsFromCsv('label,right,front\na,1.50,2', 'm');
    expect(result.ok && result.value.points[0]!.right).toEqual({ m: 1.5, typed: '1.50', units: 'm' });
  });

  it('gives what the schema takes', () => {
    const result = pointsFromCsv('label,right,front\na 1,1,2\nb-2,1,-2', 'm');
    expect(result.ok && v.is(PointsSchema, result.value)).toBe(true);
  });

  it.each([
    ['nothing', '', /the text is empty; the first line must name the columns: label,right,front/],
    ['blank lines only', '\n \n', /the text is empty/],
    ['no header', '1,2,3\n2,3,4', /there is no column “label”/],
    ['a missing column', 'label,right\na,1', /there is no column “front”/],
    ['a column named twice', 'label,right,front,right\na,1,2,3', /there are 2 columns “right”/],
    ['a header alone', 'label,right,front\n', /there is no point below the header/],
    ['a repeated label', 'label,right,front\na,1,2\nb,2,3\n\na,5,6', /lines 2 and 5 both have the label “a”/],
    ['letters for a length', 'label,right,front\na,1,2\nb,x,3', /line 3, right: “x” is not a length/],
    ['an empty length', 'label,right,front\na,1,', /line 2, front is empty/],
    ['a line that is too short', 'label,right,front\na,1', /line 2, front is empty/],
    ['a length beyond reason', 'label,right,front\na,1e9,2', /line 2, right: “1e9” is not a length/],
    ['a length too long', 'label,right,front\na,301,2', /line 2, right: “301” is more than 300\.000 m/],
    ['an empty label', 'label,right,front\n,1,2', /line 2, label: is empty; type 1 to 12/],
    [
      'a label that is too long',
      `label,right,front\n${'x'.repeat(99)},1,2`,
      /line 2, label: “x{24}…” cannot be painted/,
    ],
    ['a label that every object has', 'label,right,front\n__proto__,1,2', /“__proto__” cannot be painted/],
    ['another such label', 'label,right,front\nconstructor,1,2', /“constructor” cannot be painted/],
    [
      'a quote that is never closed',
      'label,right,front\na,"1,2\nb,1,2',
      /line 2: a quoted cell is never closed/,
    ],
    [
      'text after a closing quote',
      'label,right,front\na,"1"x,2',
      /line 2: something follows the closing quote/,
    ],
  ])('refuses %s', (_, text, sentence) => {
    expect(refusal(text)).toMatch(sentence);
  });

  it.each([
    [
      'a decimal comma',
      'label,right,front\n1,0,0\n2,1,1\n3,3.6,2,4',
      'm',
      'Points: line 4 has 4 values, 3 are asked for; write 2.4, not 2,4.',
    ],
    [
      'a comma between feet and inches',
      'label,right,front\n1,12\',6",0',
      'ft-in-16',
      'Points: line 2 has 4 values, 3 are asked for; write 12′ 6″, not 12′, 6″.',
    ],
    [
      'semicolons',
      'label;right;front\n1;2,4;0;7',
      'm',
      'Points: line 2 has 4 values, 3 are asked for; leave out what no column asks for.',
    ],
  ] as const)('refuses a line with more values than the header: %s', (_, text, units, sentence) => {
    expect(refusal(text, units)).toBe(sentence);
  });

  it('counts lines of the text, also after a cell with a line break', () => {
    expect(refusal('label,right,front,note\na,1,2,"one\ntwo"\nb,?,2,')).toMatch(/line 4, right/);
  });

  it('refuses a bare number in feet and inches, which could be either', () => {
    expect(refusal('label,right,front\na,12,6', 'ft-in-16')).toMatch(
      /line 2, right: “12” could be feet or inches/,
    );
  });

  it('reads a thousand points and refuses more', () => {
    const text = (count: number) =>
      `label,right,front\n${Array.from({ length: count }, (_, i) => `${i + 1},${i % 100},${i / 4}`).join('\n')}`;
    expect(places(text(1000))).toHaveLength(1000);
    expect(refusal(text(1001))).toMatch(/there are 1001 points; up to 1000 are read/);
  });

  it('refuses a text that is far too long before it reads it', () => {
    expect(refusal('x'.repeat(200_001))).toMatch(/200001 characters; up to 200000 are read/);
  });

  it('never throws, whatever it is given', () => {
    const junk = fc.string({
      unit: fc.constantFrom('"', ',', ';', '\n', '\r', '\t', 'a', '1', ' ', '\uFEFF'),
    });
    fc.assert(
      fc.property(junk, fc.boolean(), (text, headed) => {
        const result = pointsFromCsv(headed ? `label,right,front\n${text}` : text, 'm');
        if (!result.ok) expect(result.problem.text).toMatch(/^Points: /);
      }),
      { numRuns: 500 },
    );
  });

  it('reads back any label and length that is quoted by the rules', () => {
    const label = fc
      .stringMatching(/^[A-Za-z0-9]{1,12}$/)
      .filter((text) => !['constructor', 'toString', 'valueOf'].includes(text));
    const mm = fc.integer({ min: -300_000, max: 300_000 });
    const rows = fc.uniqueArray(fc.tuple(label, mm, mm), {
      minLength: 1,
      maxLength: 20,
      selector: ([one]) => one,
    });
    fc.assert(
      fc.property(rows, (list) => {
        const quoted = list.map((row) => row.map((cell) => `"${cell}"`).join(',')).join('\r\n');
        const read = places(`label,right,front\r\n${quoted}\r\n`, 'mm');
        expect(read).toEqual(list.map(([one, x, y]) => [one, x / 1000, y / 1000]));
      }),
    );
  });
});
