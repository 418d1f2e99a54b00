import { cleanup } from '@testing-library/preact';
import { afterEach, beforeEach, vi } from 'vitest';

/** Just after the entries of the field day were made: no new session begins, and a level stands where it was read from. */
const SAME_DAY = new Date('2026-05-02T14:30:00Z');

/** Sets the phone's clock for every test of a file, and clears up after each. */
export function onTheFieldDay(): void {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['Date'], now: SAME_DAY });
  });
  afterEach(() => {
    cleanup();
    vi.restoreAllMocks();
    vi.useRealTimers();
  });
}
