// @vitest-environment happy-dom
import { fireEvent, screen } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { SetScreen } from '../../../src/screens/set/set-screen.tsx';
import { inches } from '../../job/sample.ts';
import { onTheFieldDay } from '../field-clock.ts';
import { openScreen, painted } from '../plan/open-screen.tsx';
import { press } from '../press.ts';
import { READY } from '../stake/field-day.ts';
import { typeReading } from '../taps.ts';
import { walk } from './set-day.ts';

onTheFieldDay();

const PLACED = walk(READY, '1').bodies.slice(0, READY.length + 3);
const plumb = (side: 'front' | 'left', offset: string, more: object = {}): Body => ({
  kind: 'plumb',
  hole: '1',
  side,
  offset: inches(offset),
  over: inches('4 0'),
  leans: offset === '0' ? 'none' : 'out',
  ...more,
});

async function openPlumb(...before: Body[]) {
  const job = await openScreen(SetScreen, [...PLACED, ...before], '1');
  press('Enter plumb');
  await painted();
  return { job, last: async () => (await job.log()).at(-1)!.body };
}

const logged = async (words: RegExp) => screen.findByText(words, { exact: false });
const field = (name: string) => screen.getByRole('textbox', { name, hidden: true });
async function fill(name: string, text: string) {
  fireEvent.input(field(name), { target: { value: text } });
  fireEvent.blur(field(name));
  await painted();
}

describe('a level', () => {
  test('read in degrees: what was typed is kept, and the gap follows', async () => {
    const { last } = await openPlumb(plumb('front', '0'));
    press('Top leans out, towards me');
    await painted();
    press('In degrees');
    await screen.findByRole('textbox', { name: 'Lean off plumb', hidden: true });
    press('Log it');
    await painted();
    expect(screen.getByRole('alert', { hidden: true }).textContent).toMatch(/^Lean off plumb: it is empty/);
    await fill('Lean off plumb', '46');
    expect(document.body.textContent).toMatch(
      /Lean off plumb: 46 is out of range; type a number from 0 to 45/,
    );
    // The box is not left: some phones leave it focused through a tap on a button.
    fireEvent.input(field('Lean off plumb'), { target: { value: '0.2' } });
    press('Log it');
    await logged(/anticlockwise face: top leans out 0\.2° over 4′ 0″/);
    expect(await last()).toMatchObject({ leans: 'out', read: { by: 'degrees', degrees: 0.2 } });
  });

  test('turned end for end on one face: both readings in one entry, and its own error is said from then on', async () => {
    const { last } = await openPlumb(plumb('front', '0'));
    press('Read both ways, the level turned');
    await painted();
    expect(document.body.textContent).toMatch(/Mark one end of the level\. First that end up/);
    press('Top leans out, towards me');
    await painted();
    typeReading('0 1/4');
    press(/^Read it/);
    await screen.findByText(/Now turn the level end for end/);
    // Back, the first reading is still typed.
    press('Back');
    await painted();
    press(/^Read it/);
    await screen.findByText(/Now turn the level end for end/);
    press('Top leans in, away from me');
    await painted();
    typeReading('0 1/4');
    press(/^Read it/);
    await logged(/top leans out 1\/4″ over 4′ 0″; turned end for end, top leans in 1\/4″/);
    expect(await last()).toMatchObject({ leans: 'out', turned: { leans: 'in' } });
    press('Enter plumb');
    await painted();
    expect(document.body.textContent.replaceAll('\u00a0', ' ')).toMatch(
      /over 4′ 0″, marked end up\..*By itself this level shows a top 1\/4″ in 4′ too far out/,
    );
    press('Plumb: bubble in the middle');
    await painted();
    // Of a level that shows 1/4″ too far out that is a post that leans in: nothing read before says so.
    expect(screen.getByRole('alert', { hidden: true }).textContent).toMatch(/ought to show the top/);
    press('Keep it as read');
    await logged(/^Saved: Post 1, inner face: plumb over 4′ 0″, marked end up/);
    expect(await last()).toMatchObject({ kind: 'plumb', markUp: true });
  });

  test('of which a reading is doubted asks again when another is typed, and keeps none that was never asked about', async () => {
    const { job, last } = await openPlumb(plumb('front', '0'));
    press('Top leans out, towards me');
    await painted();
    press('In degrees');
    await screen.findByRole('textbox', { name: 'Lean off plumb', hidden: true });
    await fill('Lean off plumb', '20');
    press('Log it');
    await painted();
    const before = (await job.log()).length;
    fireEvent.input(field('Lean off plumb'), { target: { value: '30' } });
    press('Keep it as read');
    await painted();
    expect(await job.log()).toHaveLength(before);
    press('Keep it as read');
    await logged(/top leans out 30° over/);
    expect(await last()).toMatchObject({ read: { by: 'degrees', degrees: 30 } });
  });

  test('more than 45° is refused in words', async () => {
    await openPlumb(plumb('front', '0'));
    press('Top leans out, towards me');
    await painted();
    typeReading('4 1');
    press(/^Read it/);
    await painted();
    expect(document.body.textContent).toMatch(/is more than the level itself, and a lean of 45°/);
  });

  test('plumb where a lean was read opposite is asked about before it is logged', async () => {
    const job = await openScreen(SetScreen, [...PLACED, plumb('front', '0 3/8'), plumb('left', '0')], '1');
    press('Other readings of post 1');
    await painted();
    press('Plumb, inner face');
    await painted();
    const before = (await job.log()).length;
    press('Plumb: bubble in the middle');
    await painted();
    expect(screen.getByRole('alert', { hidden: true }).textContent).toMatch(
      /this face ought to show the top/,
    );
    expect(await job.log()).toHaveLength(before);
    press('Keep it as read');
    await logged(/^Saved: Post 1, inner face: plumb over/);
  });
});
