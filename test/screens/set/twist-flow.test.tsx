// @vitest-environment happy-dom
import { screen } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { SetScreen } from '../../../src/screens/set/set-screen.tsx';
import { onTheFieldDay } from '../field-clock.ts';
import { openScreen, painted } from '../plan/open-screen.tsx';
import { press } from '../press.ts';
import { READY } from '../stake/field-day.ts';
import { typeReading } from '../taps.ts';
import { walk } from './set-day.ts';

onTheFieldDay();

const PLACED = walk(READY, '1').bodies.slice(0, READY.length + 3);

/** The tape from A is read to one edge of the face, and the other is asked for. */
async function firstEdgeRead() {
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
  return job;
}

test('how a post is turned: from A to both edges of a face, in one entry, and a row that says what it comes to', async () => {
  const job = await firstEdgeRead();
  typeReading('25 0');
  press(/^Read it/);
  await screen.findByText(/Post 1, from A: 25′ 0″ and 25′ 0″ to the anticlockwise and clockwise edge/);
  expect((await job.log()).at(-1)!.body).toMatchObject({ kind: 'twist', hole: '1', from: { by: 'tape' } });
  // Alike from A, which does not look square at that face: so it is turned towards A, and that is out.
  expect(document.body.textContent.replaceAll('\u00a0', ' ')).toMatch(/turned ± 1\.5°.*out, \d+\.\d° ± \d/);
});

test('an edge that such a face cannot show is refused in words', async () => {
  await firstEdgeRead();
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
