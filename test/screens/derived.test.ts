// @vitest-environment happy-dom
import { cleanup, renderHook, waitFor } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import type { Entry } from '../../src/job/entry-schema.ts';
import { derive, useDerived } from '../../src/screens/derived.ts';
import { type Kept, KeptResults } from '../../src/store/kept-results.ts';
import { entry, sampleLog } from '../job/sample.ts';
import { phone } from '../store/fake-store.ts';

afterEach(cleanup);

/** Opens a log as a screen would, and gives what it is shown to follow from it. */
const shown = (log: readonly Entry[], kept: Kept | null = null, results: KeptResults | null = null) =>
  renderHook(() => useDerived('job-1', log, kept, results)).result.current;

/** What the hook itself keeps of a log, which takes it a moment. */
async function keptOf(log: readonly Entry[]): Promise<Kept> {
  const results = new KeptResults(phone());
  shown(log, null, results);
  return waitFor(
    async () => {
      const kept = await results.read('job-1');
      expect(kept).not.toBeNull();
      return kept!;
    },
    { timeout: 8000 },
  );
}

const log = sampleLog();

test('what was kept is shown as it is where neither the log nor the app has changed, and equals what follows from the log', async () => {
  const kept = await keptOf(log);
  expect(shown(log, kept)!.assessment).toBe(kept.assessment);
  expect(shown(log, kept)).toEqual(derive(log));
}, 20_000);

test('after another entry, or in another build, it is worked out anew', async () => {
  const kept = await keptOf(log);
  const longer = [...log, entry(log.length + 1, { kind: 'note', text: 'rained' })];
  expect(shown(longer, kept)).toEqual(derive(longer));
  expect(shown(longer, kept)!.assessment).not.toBe(kept.assessment);
  const older = { ...kept, build: 'another' };
  expect(shown(log, older)!.assessment).not.toBe(older.assessment);
  // As many entries, but not the same ones.
  const other = [...log.slice(0, -1), entry(log.length, { kind: 'note', text: 'dry' }, 'entry-other')];
  expect(shown(other, kept)!.assessment).not.toBe(kept.assessment);
}, 20_000);
