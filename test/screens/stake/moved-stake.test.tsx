// @vitest-environment happy-dom
import { fireEvent, screen } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { distance } from '../../../src/geometry/point.ts';
import type { Body } from '../../../src/job/entry-schema.ts';
import { StakeScreen } from '../../../src/screens/stake/stake-screen.tsx';
import { REPEAT_TAP_MS } from '../../../src/ui/repeat-tap.ts';
import { inches } from '../../job/sample.ts';
import { onTheFieldDay } from '../field-clock.ts';
import { openScreen } from '../plan/open-screen.tsx';
import { heading, tap, tapWhenThere } from '../taps.ts';
import { BASELINE, checked, ORDER, pull, READY, stake, stakeAfter, staked, stand } from './field-day.ts';

onTheFieldDay();

const [A, B, C] = [stake('A'), stake('B'), stake('C')];
const ASKED: Body = {
  kind: 'reference',
  thing: { kind: 'stake', label: 'C' },
  at: { right: inches('0'), front: inches('20 0') },
};
const C_AT = stakeAfter([...READY, ASKED]).state.situation.laid!.references[0]!.site;
const [A_AT, B_AT] = [
  { x: 0, y: 0 },
  { x: BASELINE, y: 0 },
];
const TIED = [stand(C), pull(A, C, distance(A_AT, C_AT)), pull(B, C, distance(B_AT, C_AT))];
const PROVED_WITH_C = [...READY, ASKED, ...TIED, ...ORDER.flatMap(staked), ...checked(99)];
/** A was knocked 30 mm toward B; what the tapes read then. */
const KNOCKED = { x: 0.03, y: 0 };
const AGAIN = pull(A, B, distance(KNOCKED, B_AT));
const TOLD = [AGAIN, pull(A, C, distance(KNOCKED, C_AT)), pull(B, C, distance(B_AT, C_AT))];

const main = () => document.querySelector('button.button-main')?.textContent;
const open = (bodies: readonly Body[]) => openScreen(StakeScreen, bodies);

describe('stake C', () => {
  test('gets a place from the tool, says what it pays, and is logged; then it is driven and tied to A and B', async () => {
    const job = await open(READY);
    tap('The line A–B');
    tap('Add stake C');
    expect(heading()).toBe('Where stake C goes');
    expect(document.body.textContent).toMatch(/A third tape from it shows a misread one at/);
    expect(document.body.textContent).toMatch(/pulls to stake C tell which stake was knocked/);
    tap('Use this place for stake C');
    await screen.findByText('Drive stake C, with a nail in its top');
    expect((await job.log()).at(-1)!.body).toMatchObject({ kind: 'reference', thing: { label: 'C' } });
    tap('Stake C driven');
    await screen.findByText('Pull the tape from A to stake C');
    // The button came up under the finger: a second tap sooner than this is taken for a tremble.
    await new Promise((resolve) => setTimeout(resolve, REPEAT_TAP_MS + 1));
    tap('Read the tape from A');
    expect(await screen.findByRole('dialog', { name: 'Tape, A to C', hidden: true })).toBeTruthy();
  });

  test('where the user says, is judged as it is typed', async () => {
    await open(READY);
    tap('The line A–B');
    tap('Add stake C');
    tap('Another place');
    tap('Use this place for stake C');
    expect(document.body.textContent).toContain(
      'C: how far to the side of the centre: it is empty; type a length, 0 if it lies on the line.',
    );
    for (const [label, text] of [
      ['C: how far to the side of the centre', '0'],
      ['C: how far before or behind the centre', '15 6'],
    ] as const) {
      fireEvent.input(screen.getByLabelText(label), { target: { value: text } });
      fireEvent.blur(screen.getByLabelText(label));
    }
    fireEvent.click(screen.getByRole('radio', { name: 'behind' }));
    expect(document.body.textContent).toContain('A, B and C lie nearly in one line');
  });

  test('that stands can be pulled from to every hole, from a list that says what each should read', async () => {
    await open([...READY, ASKED, ...TIED, ...staked(ORDER[0]!)]);
    tap('Pulls from C: 0 of 9 read');
    const row = screen.getByRole('button', {
      name: new RegExp(`^C to stake ${ORDER[0]}, place: .*, not read yet$`),
    });
    expect(row.hasAttribute('disabled')).toBe(false);
    const other = screen.getByRole('button', {
      name: new RegExp(`^C to stake ${ORDER[1]}, place: .*, not driven yet$`),
    });
    expect(other.hasAttribute('disabled')).toBe(true);
  });

  test('that is not wanted after all is done without', async () => {
    await open([...READY, ASKED]);
    expect(heading()).toBe('Drive stake C, with a nail in its top');
    tap('Do without stake C');
    await screen.findByText(/drive a stake where both tapes meet/);
  });
});

describe('a stake that moved', () => {
  test('and is not known yet: which it may be, and the pull that tells, as the main action', async () => {
    await open([...PROVED_WITH_C, AGAIN]);
    expect(heading()).toBe('Which moved: stake A or stake B?');
    expect(main()).toBe('Read the tape');
    expect(document.body.textContent).toMatch(
      /and the pulls do not tell which\. Pull .* and .*: they tell\./,
    );
  });

  test('is told with what the tapes read when it stands where it stood; one tap goes on from where it is', async () => {
    const job = await open([...PROVED_WITH_C, ...TOLD]);
    expect(heading()).toBe('Stake A has moved');
    expect(screen.getByRole('region', { name: 'Where it stood' }).textContent).toContain('Drive it back');
    expect(main()).toBe('Go on from where it is now');
    tap('Go on from where it is now');
    await screen.findByText(/^Saved: Stake A moved/);
    expect(heading()).not.toBe('Stake A has moved');
    const log = await job.log();
    const since = log.find(({ seq }) => seq === PROVED_WITH_C.length + 1)!.id;
    expect(log.at(-1)!.body).toEqual({ kind: 'stand', thing: A, event: 'moved', since });
  });

  test('and was driven back is pulled to anew', async () => {
    const job = await open([...PROVED_WITH_C, ...TOLD]);
    tap('I drove it back');
    await screen.findByText('Pull the tape from A to B');
    expect((await job.log()).slice(-2).map(({ body }) => body)).toMatchObject([
      { kind: 'stand', event: 'moved' },
      { kind: 'stand', thing: A, event: 'driven' },
    ]);
  });

  test('can wait: the way leads on, and it is told above every card', async () => {
    await open([...PROVED_WITH_C, ...TOLD]);
    tap('Later');
    await screen.findByText('Caution: a stake moved');
    expect(heading()).not.toBe('Stake A has moved');
  });

  test('that was a misread pull: the reading is struck where it is shown', async () => {
    await open([...PROVED_WITH_C, AGAIN]);
    tap('I saw what happened');
    await tapWhenThere(/^Strike: Pull A to B/);
    expect(screen.getByRole('button', { name: 'Strike it', hidden: true })).toBeTruthy();
  });
});
