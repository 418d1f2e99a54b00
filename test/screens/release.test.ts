import { expect, test } from 'vitest';
import { version } from '../../package.json';
import { RELEASE } from '../../src/screens/release.ts';

test('what paper says of the app’s version is the version that was released', () => {
  expect(RELEASE).toBe(version);
});
