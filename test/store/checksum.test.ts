import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checksumOf } from '../../src/store/backup.ts';
import { canonicalJson } from '../../src/store/canonical-json.ts';
import { sha256 } from '../../src/store/sha256.ts';
import { entry, sampleBodies } from '../job/sample.ts';
import { good, job, read } from './backup-file.ts';

describe('SHA-256', () => {
  // FIPS 180-4 has the algorithm; these digests are the examples that NIST publishes beside it.
  test.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
  ])('NIST example %j', (text, digest) => {
    expect(sha256(text)).toBe(digest);
  });

  test('agrees with Node’s own for every length about a block, and in any alphabet', () => {
    const node = (text: string) => createHash('sha256').update(text, 'utf8').digest('hex');
    for (let length = 0; length < 200; length++)
      expect(sha256('x'.repeat(length))).toBe(node('x'.repeat(length)));
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => {
        expect(sha256(text)).toBe(node(text));
      }),
    );
  });
});

test('canonical JSON has its keys in order and no spaces, as in RFC 8785, 3.2.3', () => {
  expect(canonicalJson({ b: [1, { d: null, c: 'x' }], a: -0, u: undefined })).toBe(
    '{"a":0,"b":[1,{"c":"x","d":null}]}',
  );
});

test('the checksum is over everything but itself', () => {
  const backup = read(good);
  expect(checksumOf({ ...backup, checksum: 'x' })).toBe(backup.checksum);
  expect(checksumOf({ ...backup, savedAt: job.createdAt })).not.toBe(backup.checksum);
  expect(checksumOf({ ...backup, log: [entry(1, sampleBodies.note)] })).not.toBe(backup.checksum);
});
