// @vitest-environment happy-dom
import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { PlanScreen } from '../../../src/screens/plan/plan-screen.tsx';
import { PourScreen } from '../../../src/screens/pour/pour-screen.tsx';
import { Field, len, ringPlan } from '../../judge/field.ts';
import { openScreen } from '../plan/open-screen.tsx';
import { press, whole } from '../press.ts';

afterEach(cleanup);

const bodies = (book: Field): Body[] => book.log.map(({ body }) => body);
const sheet = () => within(screen.getByRole('dialog', { name: 'To buy' }));

async function openBuy(first: readonly Body[]) {
  const job = await openScreen(PlanScreen, first);
  press('To buy');
  await whole();
  return job;
}

function type(label: string, text: string): void {
  const box = sheet().getByLabelText(label);
  fireEvent.input(box, { target: { value: text } });
  fireEvent.blur(box);
}

describe('what to buy', () => {
  test('is not said in nought cubic metres where no hole has a depth yet', async () => {
    const plan = ringPlan();
    await openBuy([{ kind: 'plan', plan: { ...plan, rules: { ...plan.rules, frostDepth: null } } }]);
    expect(sheet().getByText('concrete: not known before the holes have a depth')).toBeTruthy();
    expect(sheet().queryByText(/^0/)).toBeNull();
  });

  test('is a list of posts, concrete and gravel; level ground is said to be assumed', async () => {
    await openBuy(bodies(new Field()));
    // 900 mm of embedment, 800 mm up and 75 mm of spare.
    expect(sheet().getByText(/^6 posts of 1\.8 m: 1, 2, 3, 4, 5 and 6$/)).toBeTruthy();
    expect(sheet().getByText(/of concrete, and what is wasted$/)).toBeTruthy();
    expect(sheet().getByText(/of gravel$/)).toBeTruthy();
    expect(
      sheet().getByText(
        /^The ground at every post is taken to lie as high as the benchmark, which nobody has measured/,
      ),
    ).toBeTruthy();
  });

  test('follows the ground where it is read', async () => {
    const book = new Field().site();
    book.benchmark();
    book.add({ kind: 'rod', setup: '1', on: { point: 'ground', hole: '1' }, reading: len('2000 mm') });
    await openBuy(bodies(book));
    const row = within(sheet().getByRole('rowheader', { name: 'Post 1' }).closest('tr')!);
    // Half a metre lower: 900 + 800 + 500.
    expect(row.getByText(/^2200 mm ± \d mm$/)).toBeTruthy();
    expect(row.getByText('2.4 m')).toBeTruthy();
    expect(sheet().getByText(/^The ground at posts 2, 3, 4, 5 and 6 is taken/)).toBeTruthy();
  });

  test('counts bags by the yield that is typed, with waste', async () => {
    const job = await openBuy(bodies(new Field()));
    press('Concrete: bags, waste, tube, bell');
    expect(sheet().getByText('Say what one bag makes, and the bags are counted.')).toBeTruthy();
    type('One bag makes, as printed on it', '12.5');
    expect(await sheet().findByText(/^At 12\.5 litres a bag, with 5 % for waste\./)).toBeTruthy();
    expect(sheet().getByText(/^\d+ bags of concrete/)).toBeTruthy();
    expect((await job.plan()).supplies?.bagYield).toBe(12.5);
  });

  test('refuses stock that is no length, and keeps what is typed on the screen', async () => {
    const job = await openBuy(bodies(new Field()));
    press('Posts: stock, spare, bought');
    type('Lengths that posts are sold in', '2.4; long');
    expect(sheet().getByText(/“long” is not a length/)).toBeTruthy();
    expect((await job.plan()).supplies).toBeUndefined();
    type('Lengths that posts are sold in', '2; 2,5');
    await waitFor(async () =>
      expect((await job.plan()).supplies?.stock?.map(({ m }) => m)).toEqual([2, 2.5]),
    );
    expect(sheet().getByText(/^6 posts of 2 m/)).toBeTruthy();
  });

  test('warns of a bought post that is too short, before it is poured', async () => {
    const plan = ringPlan('mm', { supplies: { bought: len('1750 mm'), boughtFor: { 2: len('1600 mm') } } });
    await openBuy(bodies(new Field(plan)));
    expect(
      within(sheet().getByRole('region', { name: 'Caution: too short' })).getByText(
        /post 2 by 100 mm\. The ground is taken/,
      ),
    ).toBeTruthy();
    const row = within(sheet().getByRole('rowheader', { name: 'Post 1' }).closest('tr')!);
    expect(row.getByText('1750 mm, 25 mm short of its spare')).toBeTruthy();
    await openScreen(PourScreen, bodies(new Field(plan).site()), '1');
    expect(screen.getByRole('region', { name: 'Caution: too short' })).toBeTruthy();
  });

  test('sets what was poured against what was reckoned', async () => {
    const plan = ringPlan('mm', { supplies: { bagYield: 10, waste: 0 } });
    const book = new Field(plan);
    book.add({ kind: 'pour', hole: '1', bags: 12.5 });
    await openBuy(bodies(book));
    // π/4 · 0.4² less 0.14², 0.9 high: 95.5 litres.
    expect(
      sheet().getByText(
        /^12\.5 bags went into 1 hole, 2\.5 more than the 10 reckoned\. The other holes still take \d+ bags\.$/,
      ),
    ).toBeTruthy();
  });

  test('makes nothing up before the frost depth is known', async () => {
    const plan = ringPlan();
    await openBuy(bodies(new Field({ ...plan, rules: { ...plan.rules, frostDepth: null } })));
    expect(sheet().getAllByText('not known').length).toBeGreaterThan(6);
    expect(sheet().getByText(/^How deep the hole goes is not known\. Type the frost depth/)).toBeTruthy();
    expect(sheet().queryByText(/posts of/)).toBeNull();
  });
});
