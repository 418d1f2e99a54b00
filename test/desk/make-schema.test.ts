import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { makeSchema, SCHEMA_FILE } from '../../src/desk/make-schema.ts';
import { writeBackup } from '../../src/store/backup.ts';
import { BackupSchema } from '../../src/store/backup-schema.ts';
import { readBackup } from '../../src/store/read-backup.ts';
import { sampleLog } from '../job/sample.ts';
import { placesIn } from '../store/places-in.ts';

const published = readFileSync(SCHEMA_FILE, 'utf8');
// The formats are checked with valibot's own pattern, so that the two are compared and not two ideas of a date.
const ajv = new Ajv2020({ strict: true, formats: { 'date-time': v.ISO_TIMESTAMP_REGEX } });
const accepts = ajv.compile(JSON.parse(published));

const text = writeBackup(
  { id: 'job-00000001', createdAt: '2026-05-01T08:00:00.000Z' },
  sampleLog(),
  '2026-05-02T18:00:00.000Z',
);
type Json = { [key: string]: Json } & { log: Json[] };
const file = (): Json => JSON.parse(text);

test('the published file is what the code gives: after a change, run `npm run schema`', () => {
  expect(published).toBe(makeSchema());
});

test('it says which draft it is, what it is, and has an id of its own', () => {
  expect(JSON.parse(published)).toMatchObject({
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:swingtape:job:2',
    title: expect.any(String),
    description: expect.stringContaining('append-only log'),
  });
});

test('lengths are described once and referred to', () => {
  expect(published.match(/"const": "ft-in-16"|"typed": \{/g)).toHaveLength(1);
  expect(published.match(/"\$ref": "#\/\$defs\/length"/g)!.length).toBeGreaterThan(20);
});

/** Hundreds of files are read here, on whatever machine: slow is no failure. */
const PATIENCE = { timeout: 60_000 };

describe('it accepts and refuses what the reader does', PATIENCE, () => {
  test('a good file, and one that version 1 wrote', () => {
    const frozen = readFileSync(new URL('../store/fixtures/v1-job.txt', import.meta.url), 'utf8');
    for (const good of [text, frozen])
      expect(accepts(JSON.parse(good)), JSON.stringify(accepts.errors)).toBe(true);
  });

  const bodyOf = (data: Json, index: number): Json => data.log[index]!['body']!;
  test.each<[string, (data: Json) => unknown]>([
    ['another format', (data) => Object.assign(data, { format: 'other' })],
    ['a later version', (data) => Object.assign(data, { version: 3 })],
    ['no log', (data) => Reflect.deleteProperty(data, 'log')],
    ['a member of its own', (data) => Object.assign(data, { extra: 1 })],
    ['a bad time', (data) => Object.assign(data, { savedAt: 'noon' })],
    ['a bad id', (data) => Object.assign(data.log[0]!, { id: '../x' })],
    ['a seq of 1.5', (data) => Object.assign(data.log[0]!, { seq: 1.5 })],
    ['an unknown kind', (data) => Object.assign(bodyOf(data, 3), { kind: 'psalm' })],
    ['a reading in words', (data) => Object.assign(bodyOf(data, 3), { reading: 'six feet' })],
    ['a length without its text', (data) => Reflect.deleteProperty(bodyOf(data, 3)['reading']!, 'typed')],
    ['an unknown unit', (data) => Object.assign(bodyOf(data, 3)['reading']!, { units: 'cubit' })],
    ['a label of markup', (data) => Object.assign(bodyOf(data, 6), { hole: '<b>' })],
    [
      'an override under a bad label',
      (data) => Object.assign(bodyOf(data, 0)['plan']!['overrides']!, { '': {} }),
    ],
    ['two posts on a ring', (data) => Object.assign(bodyOf(data, 0)['plan']!['shape']!, { count: 2 })],
    ['a checksum that is none', (data) => Object.assign(data, { checksum: 'abc' })],
  ])('%s', (_, change) => {
    const data = file();
    change(data);
    expect(accepts(data)).toBe(false);
    expect(v.safeParse(BackupSchema, data).success).toBe(false);
    expect(readBackup(JSON.stringify(data)).ok).toBe(false);
  });

  test('property: whatever the schema refuses, the reader refuses; whatever the reader takes, the schema takes', () => {
    const value = fc.oneof(
      fc.constantFrom(0, 1, -1, 2.5, true, null, '', 'A', '4', 'level', 'post', 'm', '2 6'),
      fc.jsonValue(),
    );
    let taken = 0;
    fc.assert(
      fc.property(fc.nat(), value, (pick, replacement) => {
        const data = file();
        Reflect.deleteProperty(data, 'checksum');
        const places = placesIn(data);
        const [holder, key] = places[pick % places.length]!;
        holder[key] = replacement;
        // As text and back, so that both see what a file can hold.
        const changed = JSON.stringify(data);
        const read = readBackup(changed).ok;
        if (read) taken++;
        if (read) expect(accepts(JSON.parse(changed)), JSON.stringify(accepts.errors)).toBe(true);
      }),
      { numRuns: 400 },
    );
    expect(taken).toBeGreaterThan(0);
  });
});
