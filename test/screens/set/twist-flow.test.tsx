// @vitest-environment happy-dom
import { cleanup, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { SetScreen } from '../../../src/screens/set/set-screen.tsx';
import { openScreen, painted } from '../plan/open-screen.tsx';
import { press } from '../press.ts';
import { READY } from '../stake/field-day.ts';
import { typeReading } from '../taps.ts';
import { walk } from './set-day.ts';

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date'], now: new Date('2026-05-02T14:30:00Z') });
});

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  vi.useRealTimers();
});

const PLACED = walk(READY, '1').bodies.slice(0, READY.length + 3);

test('how a post is turned: from A to both edges of a face, in one entry, and a row that says what it comes to', async () => {
  const job = await openScreen(SetScreen, PLACED, '1');
  press('Other readings of post 1');
  await painted();
  press('How it is turned');
  await screen.findByRole('button', { name: 'By tape from A', hidden: true });
  press('By tape from A');
  await painted();
  typeReading('25 0');
  press(/^Read it/);
  await painted();
  typeReading('25 0');
  press(/^Read it/);
  await screen.findByText(/Post 1, from A: 25′ 0″ and 25′ 0″ to the anticlockwise and clockwise edge/);
  expect((await job.log()).at(-1)!.body).toMatchObject({ kind: 'twist', hole: '1', from: { by: 'tape' } });
  // Alike from A, which does not look square at that face: so it is turned towards A, and that is out.
  expect(document.body.textContent.replaceAll('\u00a0', ' ')).toMatch(/turned ± 1\.5°.*out, \d+\.\d° ± \d/);
});

test('an edge that such a face cannot show is refused in words', async () => {
  await openScreen(SetScreen, PLACED, '1');
  press('Other readings of post 1');
  await painted();
  press('How it is turned');
  await screen.findByRole('button', { name: 'By tape from A', hidden: true });
  press('By tape from A');
  await painted();
  typeReading('25 0');
  press(/^Read it/);
  await painted();
  typeReading('26 0');
  press(/^Read it/);
  await painted();
  expect(document.body.textContent).toMatch(/is more than the other edge allows on a face so wide/);
  // Back, the first edge is still typed.
  press('Back');
  await painted();
  press(/^Read it/);
  await painted();
  typeReading('25 0');
  press(/^Read it/);
  await screen.findByText(/Post 1, from A: 25′ 0″ and 25′ 0″ to the anticlockwise and clockwise edge/);
});

test('what each face reads is on a sheet: tapes, the strings that pass by, and the level', async () => {
  await openScreen(SetScreen, PLACED, '1');
  press('Other readings of post 1');
  await painted();
  press('What each face reads');
  await screen.findByRole('heading', { level: 3, name: 'Outer face', hidden: true });
  const said = document.querySelector('dialog')!.textContent.replaceAll('\u00a0', ' ');
  expect(said).toMatch(/Outer face.*Level on the outer face: bubble in the middle/);
  expect(said).toMatch(/Inner face.*Tape from A’s nail: \d+′/);
});
