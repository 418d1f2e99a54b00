// @vitest-environment happy-dom
import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { lazily } from '../../src/screens/lazily.tsx';
import { part } from '../../src/screens/part.ts';

afterEach(cleanup);

const Waiting = () => <p>One moment…</p>;

test('shows what stands in its place, then the part; the second time the part at once', async () => {
  let loads = 0;
  const Part = lazily(
    part(async () => {
      loads += 1;
      return ({ name }: { name: string }) => <p>Here is {name}</p>;
    }),
    Waiting,
  );
  render(<Part name="Set" />);
  expect(screen.getByText('One moment…')).toBeTruthy();
  await screen.findByText('Here is Set');
  cleanup();
  render(<Part name="Pour" />);
  expect(screen.getByText('Here is Pour')).toBeTruthy();
  expect(loads).toBe(1);
});

test('a part that does not load says so, what to do, and that the log is safe; and is tried again', async () => {
  let fails = true;
  const Part = lazily(
    part(async () => {
      if (fails) throw new TypeError('Failed to fetch dynamically imported module');
      return () => <p>Here it is</p>;
    }),
    Waiting,
  );
  render(<Part />);
  const trouble = await screen.findByRole('alert');
  expect(trouble.textContent).toMatch(
    /did not load \(Failed to fetch.*load the page again.*still on this phone/,
  );
  cleanup();
  fails = false;
  render(<Part />);
  await screen.findByText('Here it is');
});
