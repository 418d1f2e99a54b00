// @vitest-environment happy-dom
import { cleanup, screen } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { PourScreen } from '../../src/screens/pour/pour-screen.tsx';
import { SetScreen } from '../../src/screens/set/set-screen.tsx';
import { StakeScreen } from '../../src/screens/stake/stake-screen.tsx';
import { openScreen } from './plan/open-screen.tsx';
import { press } from './press.ts';
import { exampleLog } from './set/set-day.ts';

afterEach(cleanup);

test.each([
  ['Stake', StakeScreen],
  ['Set', SetScreen],
  ['Pour', PourScreen],
] as const)(
  'the next readings of the whole job, tapes and rod, are one tap away in %s',
  async (_, Screen) => {
    await openScreen(
      Screen,
      exampleLog().map(({ body }) => body),
      '2',
    );
    press(/^The next \d+ readings, in order$/);
    const items = [...document.querySelectorAll('ol.findings li')].map(({ textContent }) =>
      textContent.replaceAll('\u00a0', ' '),
    );
    expect(items.length).toBeGreaterThan(1);
    expect(items[0]).toMatch(/^Pull B to post 8, .* it should bear out the reading or show it misread\.$/);
    expect(items.some((text) => text.startsWith('Read the rod on'))).toBe(true);
    expect(screen.getByRole('button', { name: /^The next/, expanded: true, hidden: true })).toBeTruthy();
  },
);
