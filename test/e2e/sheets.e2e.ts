import { describe, it } from 'vitest';
import type { Phase } from '../../src/screens/route.ts';
import { restoreLog, upTo } from './example.ts';
import { show } from './go.ts';
import { EXAMPLE, inspect } from './inspection.ts';

/** Sheets that are loaded when wanted: where each is opened, and what is tapped one after the other. */
interface Sheets {
  /** The last entry of the job so far; the whole example where absent. */
  readonly after?: string;
  readonly phase: Phase;
  readonly hole?: string;
  readonly taps: readonly (string | RegExp)[];
}

const SHEETS: readonly Sheets[] = [
  { after: 'Plan', phase: 'stake', taps: ['Boundary, house, other lines', 'Add a line'] },
  {
    after: 'Plan',
    phase: 'stake',
    taps: ['Something stands already', 'Two points are there, such as house corners'],
  },
  { after: 'Plan', phase: 'stake', taps: ['Something stands already', 'Two of the holes are staked'] },
  { phase: 'stake', hole: '2', taps: ['Pull list, and sheet for paper', /paper/] },
  {
    after: 'Ticked for the whole job: ties',
    phase: 'stake',
    hole: '2',
    taps: ['Strings and ties', /^Ties of /],
  },
  { phase: 'stake', hole: '2', taps: ['Heights and the level'] },
  { phase: 'dig', hole: '2', taps: ['Find a centre again', 'Something is gone or was knocked'] },
  {
    phase: 'dig',
    hole: '2',
    taps: ['To buy', 'Posts: stock, spare, bought', 'Concrete: bags, waste, tube, bell'],
  },
  { phase: 'set', hole: '2', taps: ['Heights and the level'] },
  { phase: 'record', taps: ['Frame and cuts', /^Diagonals/] },
];

describe('what is one tap further: nothing grave to axe, no sideways scrolling, every target large', () => {
  for (const { after, phase, hole, taps } of SHEETS)
    it(`${phase}: ${taps.join(', then ')}`, () =>
      inspect(async (inspection) => {
        const { hand, app } = inspection;
        await restoreLog(app.page, after === undefined ? EXAMPLE : upTo(after, EXAMPLE));
        await show(app.page, phase, hole ?? null);
        for (const name of taps) {
          await hand.tap(hand.button(name).last());
          await app.page.getByText('One moment…').waitFor({ state: 'detached' });
          await inspection.look(`${phase}, ${name}`);
        }
      }));
});
