import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { BODIES, BodySchema, EntrySchema } from '../../src/job/entry-schema.ts';
import { LengthSchema, lengthWords, roundedLength, typedLength } from '../../src/job/length.ts';
import { LabelSchema } from '../../src/job/plan-schema.ts';
import { faultOf } from '../../src/job/schema-problem.ts';
import { formatLength, UNITS } from '../../src/units/index.ts';
import { inches, sampleBodies, sampleLog } from './sample.ts';

function fault(schema: v.GenericSchema<unknown>, data: unknown): string {
  const result = v.safeParse(schema, data, { abortEarly: true });
  if (result.success) throw new Error('accepted');
  const { path, text } = faultOf(result.issues[0]);
  return `${path} ${text}`.trim();
}

describe('entries', () => {
  test('every kind has a sample that is good', () => {
    const log = sampleLog();
    expect(new Set(log.map((e) => e.body.kind))).toEqual(new Set(Object.keys(BODIES)));
    for (const e of log) expect(v.safeParse(EntrySchema, e).issues).toBeUndefined();
  });

  test.each([
    [{ kind: 'note' }, 'text is missing'],
    [{ kind: 'note', text: '' }, 'text must not be empty'],
    [{ kind: 'note', text: 'x'.repeat(2001) }, 'text is too long: 2001, and the most is 2000'],
    [{ kind: 'note', text: 3 }, 'text must be a text, but is 3'],
    [{ kind: 'note', text: 'x', mood: 'good' }, 'mood is not known to this version'],
    [{ kind: 'pour', hole: '4', bags: 1e9 }, 'bags must be at most 1000, but is 1000000000'],
    [{ kind: 'pour', hole: '4', bags: -1 }, 'bags must be at least 0, but is -1'],
    [{ kind: 'pour', hole: '4', bags: Number.NaN }, 'bags must be a number, but is NaN'],
    [{ kind: 'pour', hole: '<b>', bags: 1 }, 'hole must be 1 to 12 letters or digits'],
    [
      { ...sampleBodies.stand, event: 'dropped' },
      'event must be "driven" or "set" or "nudged" or "moved", but is "dropped"',
    ],
    [
      { ...sampleBodies.pull, reading: { ...inches('18 6 5/16'), m: 5.7 } },
      'reading has a typed text and metres that disagree',
    ],
    [null, 'must be an object, but is null'],
  ])('%j', (body, expected) => {
    expect(fault(BodySchema, body)).toBe(expected);
  });

  test('an entry’s own fields', () => {
    const good = sampleLog()[0]!;
    expect(fault(EntrySchema, { ...good, id: 'x' })).toBe(
      'id must be an id of 8 to 64 letters, digits and dashes',
    );
    expect(fault(EntrySchema, { ...good, seq: 1.5 })).toBe('seq must be a whole number, but is 1.5');
    expect(fault(EntrySchema, { ...good, seq: 0 })).toBe('seq must be at least 1, but is 0');
    expect(fault(EntrySchema, { ...good, at: 'noon' })).toMatch(/^at must be a time such as 2026-05-02T/);
  });
});

describe('labels', () => {
  test.each(['1', 'P', 'A1', 'N-E corner', 'x.2', 'a'.repeat(12)])('%s is good', (label) => {
    expect(v.safeParse(LabelSchema, label).success).toBe(true);
  });
  test.each([
    '',
    ' 1',
    '-1',
    'a'.repeat(13),
    '<script>',
    '__proto__',
    'constructor',
    'toString',
    'valueOf',
    '1\n',
  ])('%j is refused', (label) => {
    expect(fault(LabelSchema, label)).toBe('must be 1 to 12 letters or digits');
  });
});

describe('lengths', () => {
  test('keep the text that was typed', () => {
    expect(typedLength(' 12 6 1/2 ', 'ft-in-16', 'Pull')).toEqual({
      ok: true,
      value: { m: 3.8227, typed: '12 6 1/2', units: 'ft-in-16' },
    });
    expect(typedLength('12', 'ft-in-16', 'Pull').ok).toBe(false);
  });

  test('text and metres agree to a thousandth of a millimetre, or the length is refused', () => {
    const good = { m: 3.8227, typed: '12 6 1/2', units: 'ft-in-16' };
    for (const m of [3.8227, 3.8227009, 3.8226991])
      expect(v.safeParse(LengthSchema, { ...good, m }).success).toBe(true);
    for (const bad of [{ m: 3.8227011 }, { m: -3.8227 }, { typed: '12 6' }, { typed: 'x' }, { units: 'm' }])
      expect(fault(LengthSchema, { ...good, ...bad })).toBe('has a typed text and metres that disagree');
  });

  test('what the tool types itself agrees with its metres', () => {
    for (const units of UNITS) {
      const length = roundedLength(-1.23456, units);
      expect(v.safeParse(LengthSchema, length).success).toBe(true);
      expect(formatLength(length.m, units)).toBe(formatLength(-1.23456, units));
    }
    expect(() => roundedLength(Number.NaN, 'm')).toThrow(RangeError);
  });

  test.each([
    ['12 6 1/2', 'ft-in-16', '12′ 6 1/2″'],
    [`12' 6"`, 'ft-in-16', `12' 6"`],
    ['0 6 1/64', 'ft-in-16', '0 6 1/64 ft in'],
    ['12.54', 'ft', '12.54 ft'],
    ['3,825', 'm', '3,825 m'],
    ['382.5 cm', 'mm', '382.5 cm'],
    ['3825', 'mm', '3825 mm'],
  ] as const)('%s in %s is shown with its unit', (typed, units, expected) => {
    const length = typedLength(typed, units, 'Pull');
    expect(length.ok && lengthWords(length.value)).toBe(expected);
  });
});
