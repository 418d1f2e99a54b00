import { IDBFactory } from 'fake-indexeddb';
import { afterEach, expect, test, vi } from 'vitest';
import { assessSituation } from '../../src/judge/assess.ts';
import { situate } from '../../src/judge/situation.ts';
import { type Kept, KeptResults } from '../../src/store/kept-results.ts';
import { sampleLog } from '../job/sample.ts';
import { fillDisk, phone } from './fake-store.ts';

afterEach(() => vi.restoreAllMocks());

function kept(jobId: string): Kept {
  const log = sampleLog();
  const situation = situate(log);
  const { entries: _, ...rest } = situation;
  const last = log.at(-1)!.id;
  return {
    jobId,
    build: 'b1',
    count: log.length,
    last,
    situation: rest,
    assessment: assessSituation(situation),
  };
}

test('what is kept of a job comes back whole, and the last of it only', async () => {
  const results = new KeptResults(phone());
  expect(await results.read('job-1')).toBeNull();
  await results.write(kept('job-1'));
  await results.write({ ...kept('job-1'), build: 'b2' });
  await results.write(kept('job-2'));
  expect(await results.read('job-1')).toEqual({ ...kept('job-1'), build: 'b2' });
});

test('a browser that keeps nothing costs a moment, and no error', async () => {
  const full = new KeptResults(phone());
  fillDisk('aborted');
  await full.write(kept('job-1'));
  expect(await full.read('job-1')).toBeNull();
  vi.spyOn(IDBFactory.prototype, 'open').mockImplementation(() => {
    throw new DOMException('storage is not for this window', 'SecurityError');
  });
  const refused = new KeptResults(phone());
  await refused.write(kept('job-1'));
  expect(await refused.read('job-1')).toBeNull();
});
