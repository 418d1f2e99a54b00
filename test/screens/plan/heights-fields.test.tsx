// @vitest-environment happy-dom
import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { PlanScreen } from '../../../src/screens/plan/plan-screen.tsx';
import { samplePlan } from '../../job/sample.ts';
import { openScreen } from './open-screen.tsx';

const open = () => openScreen(PlanScreen, [{ kind: 'plan', plan: samplePlan }]);

function type(label: string, text: string): void {
  const field = screen.getByLabelText(label);
  fireEvent.input(field, { target: { value: text } });
  fireEvent.blur(field);
}
const press = (name: string) => fireEvent.click(screen.getByRole('button', { name, hidden: true }));

test('a tolerance of tops can be given and taken back; until then it says what counts instead', async () => {
  const job = await open();
  expect(
    screen.getByText(/^Plus or minus, of the tops among themselves. Not given: as the level/),
  ).toBeTruthy();
  type('Tolerance of tops', '1/8″');
  await waitFor(async () => expect((await job.plan()).tolerances.tops?.typed).toBe('1/8″'));
  expect(await screen.findByText(/, tops 1\/8″$/)).toBeTruthy();
  press('Tops as the level tolerance');
  await waitFor(async () => expect(await job.plan()).toEqual(samplePlan));
});

test('a cover of its own can be given and taken back to the usual', async () => {
  const job = await open();
  type('Least concrete beside a post', '3″');
  await waitFor(async () => expect((await job.plan()).rules.cover?.typed).toBe('3″'));
  fireEvent.click(await screen.findByRole('button', { name: 'Back to the usual cover', hidden: true }));
  await waitFor(async () => expect(await job.plan()).toEqual(samplePlan));
});

test('the rod’s length can be given and taken back, and must be a length', async () => {
  const job = await open();
  type('Rod length', 'long');
  await waitFor(() => expect(screen.getByRole('alert').textContent).toMatch(/^Rod length/));
  type('Rod length', '13 0');
  await waitFor(async () => expect((await job.plan()).instruments.rodLength?.typed).toBe('13 0'));
  press('Rod length not given');
  await waitFor(async () => expect(await job.plan()).toEqual(samplePlan));
});
