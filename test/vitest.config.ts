import { fileURLToPath } from 'node:url';
import preact from '@preact/preset-vite';
import { defineConfig } from 'vitest/config';

/** Only to end a test that hangs: a busy machine may take its time. */
const UNIT_TIMEOUT_MS = 60_000;

/** A browser on a busy machine with two cores; a test that hangs still ends. */
const E2E_TIMEOUT_MS = 90_000;

/**
 * Files run two at a time, on the two processors of the usual machine for it; by itself the runner would leave one of them idle,
 * and a test in a browser mostly waits.
 */
const WORKERS = 2;

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root,
  test: {
    maxWorkers: WORKERS,
    projects: [
      {
        root,
        plugins: [preact()],
        test: {
          name: 'unit',
          environment: 'node',
          include: ['test/**/*.test.{ts,tsx}'],
          setupFiles: ['test/seed.ts'],
          testTimeout: UNIT_TIMEOUT_MS,
        },
      },
      {
        root,
        test: {
          name: 'e2e',
          environment: 'node',
          include: ['test/e2e/**/*.e2e.ts'],
          testTimeout: E2E_TIMEOUT_MS,
          hookTimeout: E2E_TIMEOUT_MS,
        },
      },
    ],
  },
});
