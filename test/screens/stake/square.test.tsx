// @vitest-environment happy-dom
import { screen } from '@testing-library/preact';
import { expect, test, vi } from 'vitest';
import { StakeScreen } from '../../../src/screens/stake/stake-screen.tsx';
import { metres, rowsPlan } from '../../plan/plans.ts';
import { openScreen } from '../plan/open-screen.tsx';
import { tap } from '../taps.ts';
import { stake, stand, tick } from './field-day.ts';
import { slopingLog, stakesBefore } from './sheet/sloping-job.ts';

const seen = vi.hoisted(() => ({ loaded: false }));
vi.mock('../../../src/screens/stake/square-words.ts', async (original) => {
  seen.loaded = true;
  return await original();
});

test('how square the stakes stand is loaded when the check pulls are looked at, and told there', async () => {
  const plan = rowsPlan({ columns: 3, rows: 2 });
  const nail = { at: 'nail' } as const;
  await openScreen(StakeScreen, [
    ...slopingLog(plan, stakesBefore(plan), null),
    tick('utilities'),
    stand(stake('A')),
    stand(stake('B')),
    {
      kind: 'pull',
      from: { thing: stake('A'), touch: nail },
      to: { thing: stake('B'), touch: nail },
      reading: metres(8),
      hold: { how: 'level' },
    },
  ]);
  expect(screen.getByRole('heading', { level: 2 }).textContent).toMatch(
    /drive a stake where both tapes meet$/,
  );
  expect(seen.loaded).toBe(false);
  tap('Check pulls: none read');
  await screen.findByRole('heading', { level: 3, name: 'Square' });
  expect(seen.loaded).toBe(true);
  expect(screen.getByText(/^A right angle at stake \w+ by three tapes/)).toBeTruthy();
});
