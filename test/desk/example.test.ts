import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { MISREAD, OUT_BY, OUT_POST, TOP_NOT_READ, TWO_FACES_ONLY } from '../../src/desk/example/scenario.ts';
import { EXAMPLE_FILE, makeExample } from '../../src/desk/make-example.ts';
import { assess } from '../../src/judge/assess.ts';
import type { Assessment, HoleAssessment } from '../../src/judge/types.ts';
import type { Backup } from '../../src/store/backup-schema.ts';
import { readBackup } from '../../src/store/read-backup.ts';

const text = readFileSync(EXAMPLE_FILE, 'utf8');

test('the committed example is what the script makes', () => {
  expect(text).toBe(makeExample());
});

describe('the example job, whose truth the script knows', () => {
  let log: Backup['log'];
  let found: Assessment;
  const hole = (label: string): HoleAssessment => found.holes.find((each) => each.hole === label)!;

  beforeAll(() => {
    const backup = readBackup(text);
    if (!backup.ok) throw new Error(backup.problem.text);
    log = backup.value.log;
    found = assess(log);
  });

  test('the one misread tape is found, named, and its size told', () => {
    const misreadings = found.findings.filter(({ code }) => code === 'misreading');
    expect(misreadings).toHaveLength(1);
    const [id] = misreadings[0]!.entries;
    const body = log.find((entry) => entry.id === id)?.body;
    expect(body).toMatchObject({
      kind: 'pull',
      from: { thing: { kind: 'stake', label: MISREAD.from } },
      to: { thing: { kind: 'post', hole: MISREAD.to } },
    });
    expect(misreadings[0]!.entries).toHaveLength(1);
    expect(misreadings[0]!.text).toMatch(/too long/);
  });

  test('the one post that is out of place is out, by what it is out', () => {
    const out = found.holes.filter(({ set }) => set.position.verdict === 'out').map((each) => each.hole);
    expect(out).toEqual([OUT_POST]);
    const { error, uncertainty } = hole(OUT_POST).set.position;
    expect(Math.abs(error! - OUT_BY)).toBeLessThan(uncertainty!);
  });

  test('what nobody read is unmeasured or unchecked, and closes the gate', () => {
    expect(hole(TOP_NOT_READ).set.level.verdict).toBe('unmeasured');
    expect(hole(TWO_FACES_ONLY).set.plumb.checked).toBe(false);
    for (const label of [TOP_NOT_READ, TWO_FACES_ONLY, OUT_POST, MISREAD.to]) {
      expect(hole(label).pourGate.open, label).toBe(false);
    }
  });

  test('with the misread tape struck no doubt is left, and the same post is out', () => {
    const [id] = found.findings.find(({ code }) => code === 'misreading')!.entries;
    const last = log.at(-1)!;
    const strike = { kind: 'strike', entry: id!, reason: 'misread' } as const;
    const after = assess([...log, { id: 'strike-0001', seq: last.seq + 1, at: last.at, body: strike }]);
    expect(after.findings.filter(({ code }) => code === 'misreading')).toEqual([]);
    expect(after.holes.filter(({ set }) => set.position.verdict === 'out').map((each) => each.hole)).toEqual([
      OUT_POST,
    ]);
  });
});
