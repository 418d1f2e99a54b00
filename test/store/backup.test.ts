import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Body, Entry } from '../../src/job/entry-schema.ts';
import { standing } from '../../src/job/log.ts';
import { backupFileName, writeBackup } from '../../src/store/backup.ts';
import { MOST_ENTRIES } from '../../src/store/backup-schema.ts';
import { MOST_BACKUP_BYTES, readBackup } from '../../src/store/read-backup.ts';
import { entry, inches, sampleLog, samplePlan } from '../job/sample.ts';
import { edited, good, job, read, refusal, SAVED_AT } from './backup-file.ts';

describe('a backup', () => {
  test('reads back as it was written', () => {
    expect(read(good)).toEqual({
      format: 'swingtape-job',
      version: 2,
      savedAt: SAVED_AT,
      job,
      log: sampleLog(),
      checksum: expect.stringMatching(/^[0-9a-f]{64}$/),
    });
  });

  test('of an empty log reads back too', () => {
    expect(read(writeBackup(job, [], SAVED_AT)).log).toEqual([]);
  });

  test('holds only the job: no row of the database leaks into it', () => {
    const row = { ...job, name: 'x', entryCount: 3 };
    expect(read(writeBackup(row, [], SAVED_AT)).job).toEqual(job);
  });

  test('has one line per entry, in order, for people who read it', () => {
    const lines = writeBackup(job, sampleLog().reverse(), SAVED_AT).split('\n');
    expect(lines.slice(0, 7)).toEqual([
      '{',
      '  "format": "swingtape-job",',
      '  "version": 2,',
      `  "savedAt": "${SAVED_AT}",`,
      '  "job": {"id":"job-00000001","createdAt":"2026-05-01T08:00:00.000Z"},',
      '  "log": [',
      expect.stringMatching(/^ {4}\{"id":"entry-0001","seq":1,/),
    ]);
    expect(lines).toHaveLength(6 + sampleLog().length + 4);
  });

  test('may be laid out anew, with a byte order mark, with its members in another order: the checksum still fits', () => {
    const { log, ...rest } = JSON.parse(good);
    expect(read(`\uFEFF${JSON.stringify({ log, ...rest }, null, 4)}`).log).toEqual(sampleLog());
  });

  test('property: any log of notes in any alphabet reads back', () => {
    const note = fc.string({ minLength: 1, maxLength: 30, unit: 'grapheme' });
    fc.assert(
      fc.property(fc.array(note, { maxLength: 8 }), (notes) => {
        const log = notes.map((text, i) => entry(i + 1, { kind: 'note', text }));
        expect(read(writeBackup(job, log, SAVED_AT)).log).toEqual(log);
      }),
    );
  });
});

describe('its file name', () => {
  const named = (name: string) => backupFileName([entry(1, { kind: 'plan', plan: { ...samplePlan, name } })]);
  test.each([
    ['Garden room', 'Garden room.swingtape.txt'],
    ['Deck/shed: “N”?', 'Deck shed “N”.swingtape.txt'],
    ['../../etc/passwd', 'etc passwd.swingtape.txt'],
    ['Überdachung', 'Überdachung.swingtape.txt'],
    ['...', 'job.swingtape.txt'],
    ['x'.repeat(80), `${'x'.repeat(60)}.swingtape.txt`],
  ])('%s', (name, expected) => {
    expect(named(name)).toBe(expected);
  });
  test('before there is a plan', () => {
    expect(backupFileName([])).toBe('job.swingtape.txt');
  });
});

describe('a bad file is refused with one sentence', () => {
  const ANOTHER = /use another copy of the backup/;
  test.each([
    ['empty', '', 'Backup: the file is empty; use another copy of the backup.'],
    ['blank', ' \n\t', 'Backup: the file is empty; use another copy of the backup.'],
    [
      'a letter',
      'Dear Sir,',
      /^Backup: it is not a Swingtape backup; choose a file named like “… \.swingtape\.txt”\.$/,
    ],
    ['another JSON', '{"type":"FeatureCollection"}', /^Backup: it is some other kind of file; choose/],
    ['a number', '3', /^Backup: it is some other kind of file/],
    ['null', 'null', /^Backup: it is some other kind of file/],
    ['a list', '[]', /^Backup: it is some other kind of file/],
  ])('%s', (_, text, expected) => {
    expect(refusal(text)).toMatch(expected);
  });

  test('cut off anywhere', () => {
    for (let end = 1; end < good.trimEnd().length; end += 97)
      expect(refusal(good.slice(0, end))).toBe(
        'Backup: the file is cut off before its end; use another copy of the backup, or save it again.',
      );
  });

  test('from a later version, whatever else is in it', () => {
    for (const version of [3, 99])
      expect(refusal(`{"format":"swingtape-job","version":${version},"novelty":true}`)).toBe(
        'Backup: it was made by a newer version of Swingtape; update the app first, then restore it.',
      );
  });

  test.each([
    [
      'no version',
      (file: Record<string, unknown>) => delete file['version'],
      /^Backup: “version” is missing; use another/,
    ],
    [
      'a version that never was',
      (file: Record<string, unknown>) => Object.assign(file, { version: 0 }),
      /“version” must be 1 or 2, but is 0;/,
    ],
    [
      'a version in words',
      (file: Record<string, unknown>) => Object.assign(file, { version: '1' }),
      /“version” must be 1 or 2, but is "1";/,
    ],
    ['no log', (file: Record<string, unknown>) => delete file['log'], /^Backup: “log” is missing;/],
    [
      'a log that is no list',
      (file: Record<string, unknown>) => Object.assign(file, { log: {} }),
      /“log” must be a list, but is Object;/,
    ],
    [
      'a member of its own',
      (file: Record<string, unknown>) => Object.assign(file, { extra: 1 }),
      /“extra” is not known to this version;/,
    ],
    [
      'a bad time',
      (file: Record<string, unknown>) => Object.assign(file, { savedAt: 'noon' }),
      /“savedAt” must be a time such as/,
    ],
    [
      'a bad job id',
      (file: Record<string, unknown>) => Object.assign(file, { job: { ...job, id: '../x' } }),
      /“job\.id” must be an id of/,
    ],
  ])('%s', (_, change, expected) => {
    const text = refusal(edited(change));
    expect(text).toMatch(expected);
    expect(text).toMatch(ANOTHER);
  });

  test('numbered so high that no entry could follow is refused; a job once read is read ever after', () => {
    const highest = Number.MAX_SAFE_INTEGER;
    const lastAt = (seq: number) => [
      entry(1, { kind: 'note', text: 'first' }),
      entry(seq, { kind: 'note', text: 'last' }),
    ];
    expect(refusal(edited((file) => Object.assign(file.log.at(-1)!, { seq: highest })))).toMatch(
      /^Backup: entry \d+: “seq” is 9007199254740991, so large that no further entry could be numbered after it; use another copy of the backup\.$/,
    );
    const greatest = highest - (MOST_ENTRIES - 2);
    expect(refusal(writeBackup(job, lastAt(greatest + 1), SAVED_AT))).toMatch(/“seq” is 9007199254720994,/);
    const kept = lastAt(greatest);
    expect(read(writeBackup(job, kept, SAVED_AT)).log).toEqual(kept);
    const longer = [...kept, entry(greatest + 1, { kind: 'note', text: 'one more' })];
    expect(read(writeBackup(job, longer, SAVED_AT)).log).toEqual(longer);
  });

  test('a bad entry is named by its number, kind and field', () => {
    const fourth = (change: (body: Record<string, unknown>) => void) =>
      refusal(edited((file) => change(file.log[3]!['body'] as Record<string, unknown>)));
    expect(fourth((body) => delete body['hold'])).toBe(
      'Backup: entry 4 (pull): “body.hold” is missing; use another copy of the backup.',
    );
    expect(fourth((body) => Object.assign(body, { kind: 'psalm' }))).toMatch(
      /^Backup: entry 4: “body\.kind” must be "plan" or/,
    );
    expect(refusal(edited((file) => file.log.splice(3, 1, null as never)))).toBe(
      'Backup: entry 4 must be an object, but is null; use another copy of the backup.',
    );
    expect(refusal(edited((file) => Object.assign(file.log[0]!, { seq: -1 })))).toMatch(
      /^Backup: entry 1 \(plan\): “seq” must be at least 1/,
    );
  });

  test('a length whose text and metres disagree by more than a thousandth of a millimetre', () => {
    const shifted = (by: number) =>
      edited((file) => {
        const { reading } = file.log[3]!['body'] as { reading: { m: number } };
        reading.m += by;
      });
    expect(refusal(shifted(1.1e-6))).toBe(
      'Backup: entry 4 (pull): “body.reading” has a typed text and metres that disagree; use another copy of the backup.',
    );
    expect(readBackup(shifted(0.9e-6)).ok).toBe(true);
  });

  test('a list where an object belongs, even an empty one', () => {
    const withOverrides = (overrides: unknown) =>
      refusal(
        edited((file) => {
          const { plan } = file.log[0]!['body'] as { plan: object };
          Object.assign(plan, { overrides });
        }),
      );
    expect(withOverrides([])).toBe(
      'Backup: entry 1 (plan): “body.plan.overrides” must be an object, but is a list; use another copy of the backup.',
    );
    expect(withOverrides({ '1': [] })).toMatch(
      /“body\.plan\.overrides\.1” must be an object, but is a list;/,
    );
  });

  test('two entries of one id', () => {
    expect(refusal(edited((file) => Object.assign(file.log[1]!, { id: file.log[0]!['id'] })))).toBe(
      'Backup: entry 2 has the same “id” as an earlier one; use another copy of the backup.',
    );
  });

  test('a strike of nothing, or of what is not older', () => {
    const last = sampleLog().length;
    const strike = (target: string) =>
      refusal(edited((file) => Object.assign(file.log.at(-1)!['body'] as object, { entry: target })));
    expect(strike('nobody-0001')).toBe(
      `Backup: entry ${last} (strike): “body.entry” names no entry of this file; use another copy of the backup.`,
    );
    expect(strike(sampleLog().at(-1)!.id)).toMatch(
      /“body\.entry” names an entry that is not older than the strike/,
    );
  });

  test('damage that is still good JSON, by the checksum', () => {
    const damaged = good.replace('spoil heap moved', 'spoil heap proved');
    expect(damaged).not.toBe(good);
    expect(refusal(damaged)).toBe(
      'Backup: its contents do not fit its “checksum”, so it was damaged or edited; use another copy of the backup, or take the checksum line out if you edited it yourself.',
    );
    expect(read(damaged.replace(/,\n {2}"checksum": "\w+"/, '')).log).toHaveLength(sampleLog().length);
  });

  test('keys that reach for a prototype', () => {
    for (const key of ['__proto__', 'constructor', 'prototype']) {
      const text = good.replace('"savedAt"', `"${key}": {"polluted": true}, "savedAt"`);
      expect(refusal(text)).toBe(
        `Backup: it has a member named “${key}”, which no Swingtape writes; use another copy of the backup.`,
      );
      const inside = good.replace('"overrides":{', `"overrides":{"${key}":{},`);
      expect(inside).not.toBe(good);
      expect(refusal(inside)).toMatch(/which no Swingtape writes/);
    }
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });

  test('nested too deep, before it is parsed', () => {
    expect(refusal(`${'['.repeat(200_000)}${']'.repeat(200_000)}`)).toBe(
      'Backup: it is nested deeper than any job; choose the right file.',
    );
  });

  test('too many entries', () => {
    const log = Array.from({ length: MOST_ENTRIES + 1 }, () => null);
    expect(refusal(JSON.stringify({ format: 'swingtape-job', version: 1, log }))).toBe(
      `Backup: it has ${MOST_ENTRIES + 1} entries, and the most that is read is ${MOST_ENTRIES}; choose the right file.`,
    );
  });

  test('too many parts, before they fill the memory', () => {
    expect(refusal(`{"format":"swingtape-job","version":1,"log":[${'{},'.repeat(6e6)}{}]}`)).toBe(
      'Backup: it has more parts than any job; choose the right file.',
    );
  });

  test('too large', () => {
    expect(refusal(' '.repeat(MOST_BACKUP_BYTES + 1))).toBe(
      'Backup: the file is larger than 20 MB, and no job is; choose the right file.',
    );
  });
});

describe('a file written by version 1 is read for ever', () => {
  // Its worth is its age: when this fails, mend the reader, never the file.
  const frozen = readFileSync(new URL('fixtures/v1-job.txt', import.meta.url), 'utf8');
  const backup = read(frozen);

  test('whole, with its checksum', () => {
    expect(backup.checksum).toBeDefined();
    expect(backup.log).toHaveLength(14);
    expect(new Set(backup.log.map((e) => e.body.kind)).size).toBe(11);
  });

  test('with the lengths that were typed', () => {
    const pull = backup.log.find((e: Entry) => e.body.kind === 'pull')?.body as Extract<
      Body,
      { kind: 'pull' }
    >;
    expect(pull.reading).toEqual(inches('18 6 5/16'));
    expect(standing(backup.log).some((e) => e.body === pull)).toBe(false);
  });
});
