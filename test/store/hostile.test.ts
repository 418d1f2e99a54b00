import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { currentPlan, inOrder, standing } from '../../src/job/log.ts';
import { describeEntry } from '../../src/job/words.ts';
import { backupFileName, writeBackup } from '../../src/store/backup.ts';
import { readBackup } from '../../src/store/read-backup.ts';
import { entry, samplePlan } from '../job/sample.ts';
import { edited, good, job, read, SAVED_AT } from './backup-file.ts';
import { placesIn } from './places-in.ts';

/** Hundreds of files are read here, on whatever machine: slow is no failure. */
const PATIENCE = { timeout: 60_000 };

describe('hostile files', PATIENCE, () => {
  /** Pieces that files are spliced with: syntax, extremes, and what scripts and databases choke on. */
  const SCRAPS = [
    '',
    '{',
    '}',
    '[',
    ']',
    '"',
    ',',
    ':',
    '\\',
    '\u0000',
    '\uD800',
    '-',
    '1e999',
    '1e9',
    'null',
    'true',
    '"__proto__":{"a":1},',
    '<script>alert(1)</script>',
    '"m":0',
    '"typed":""',
    '"units":"mm"',
    '"seq":9007199254740993',
    '99',
  ];
  const spot = fc.nat(good.length);
  const mutation = fc.record({ at: spot, drop: fc.nat(40), put: fc.constantFrom(...SCRAPS) });

  /** Refused with one sentence, or read whole and good for use; never anything else. */
  function readsOrRefuses(text: string): boolean {
    const result = readBackup(text);
    expect(Object.keys(Object.prototype)).toEqual([]);
    if (!result.ok) {
      expect(result.problem.text).toMatch(/^Backup: [^\n]+[.]$/);
      return false;
    }
    const { log } = result.value;
    for (const e of log) expect(describeEntry(e, currentPlan(standing(log)))).not.toBe('');
    expect(read(writeBackup(result.value.job, log, SAVED_AT)).log).toEqual(inOrder(log));
    return true;
  }

  test('property: the text mutated anywhere', () => {
    fc.assert(
      fc.property(
        fc.array(mutation, { minLength: 1, maxLength: 3 }),
        fc.boolean(),
        (mutations, keepChecksum) => {
          let text = keepChecksum ? good : edited(() => {});
          for (const { at, drop, put } of mutations) text = text.slice(0, at) + put + text.slice(at + drop);
          readsOrRefuses(text);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('property: any value in it replaced by any other', () => {
    const value = fc.oneof(
      fc.constantFrom(
        0,
        -1,
        1e-7,
        1e308,
        12.5,
        true,
        false,
        null,
        '',
        'A',
        '4',
        'level',
        'post',
        '12 6',
        'm',
        SAVED_AT,
      ),
      fc.jsonValue({ maxDepth: 3 }),
    );
    let read = 0;
    fc.assert(
      fc.property(fc.nat(), value, (pick, replacement) => {
        const text = edited((file) => {
          const places = placesIn(file);
          const [holder, key] = places[pick % places.length]!;
          holder[key] = replacement;
        });
        if (readsOrRefuses(text)) read++;
      }),
      { numRuns: 500 },
    );
    // Some replacements are harmless (a note's text, say): were none read, the reader would be refusing everything.
    expect(read).toBeGreaterThan(0);
  });

  test('script in names comes through as text, and out again', () => {
    const name = '<img src=x onerror=alert(1)>';
    const log = [entry(1, { kind: 'plan', plan: { ...samplePlan, name } })];
    expect(read(writeBackup(job, log, SAVED_AT)).log).toEqual(log);
    expect(backupFileName(log)).toBe('img src=x onerror=alert(1).swingtape.txt');
  });
});
