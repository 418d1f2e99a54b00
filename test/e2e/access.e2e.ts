import { describe, expect, it } from 'vitest';
import { openExample } from '../tools/example.ts';
import { restoreLog, upTo } from './example.ts';
import { show } from './go.ts';
import { goPastProof } from './hand-log.ts';
import { openGroup } from './hand-plan.ts';
import { EXAMPLE, inspect } from './inspection.ts';

describe('every screen: nothing grave to axe, no sideways scrolling, every target large, the main button in sight', () => {
  it('the page of jobs, and a new job', () =>
    inspect(async (inspection) => {
      const { hand } = inspection;
      await inspection.look('home, empty', 'main');
      await hand.tapButton('New job');
      await inspection.look('new job', 'main');
      await hand.tapButton('Begin the plan');
      await inspection.look('new job, refused', 'main');
      await hand.tapButton('Back');
      await restoreLog(inspection.app.page, EXAMPLE);
      await hand.tap(hand.link('Jobs'));
      await inspection.look('home, with a job', 'main');
    }));

  it('the plan, with each of its groups open', () =>
    inspect(async (inspection) => {
      const { hand, app } = inspection;
      await openExample(app.page);
      await show(app.page, 'plan');
      const groups = await app.page.locator('.plan-group-title').allTextContents();
      expect(groups.length).toBeGreaterThan(5);
      for (const group of groups) {
        await openGroup(hand, group);
        await inspection.look(`plan, ${group}`);
      }
      await hand.tap(app.page.getByRole('button', { name: /^Hole 4/ }).first());
      await hand.sheet('Hole 4').waitFor();
      await inspection.look('plan, hole 4');
    }));

  it('staking, one step after the other', () =>
    inspect(async (inspection) => {
      const { hand } = inspection;
      await inspection.lookAt('Plan', 'stake');
      await hand.tapButton('I say where A and B are');
      await inspection.look('stake, own places', 'main');
      for (const words of [
        'A and B placed',
        'Ticked for the whole job: buried',
        'Stake A driven',
        'Stake B driven',
        'Pull A to B',
        'Stake 1 driven',
        'Pull A to stake 1',
        'Pull B to stake 1',
      ])
        await inspection.lookAt(words, 'stake');
      await inspection.lookAt('Pull B to stake 1', 'stake', '1');
    }));

  it('staking: proof, ties and what is one tap further', () =>
    inspect(async (inspection) => {
      const { hand, app } = inspection;
      await inspection.lookAt('Pull B to stake P', 'stake');
      await hand.open(/^Check pulls: /);
      await hand.open('The line A–B');
      await inspection.look('stake, all that is one tap further');
      await inspection.lookAt('Pull stake P to stake 3', 'stake');
      await goPastProof(hand);
      await inspection.look('stake, ties', 'main');
      await inspection.lookAt('Ticked for the whole job: ties', 'stake', '2');
      await hand.open('More on stake 2');
      await inspection.look('stake 2, more');
      await hand.tap(app.page.getByRole('button', { name: /^Strike: / }).first());
      await inspection.look('strike');
    }));

  it('the keypad, piece by piece, and when it asks back', () =>
    inspect(async (inspection) => {
      const { hand, app } = inspection;
      await restoreLog(app.page, upTo('Pull B to stake 1', EXAMPLE));
      await show(app.page, 'stake', '1');
      await hand.open('More on stake 1');
      await hand.tapButton('Read from A again');
      const pad = app.page.getByRole('dialog');
      await inspection.look('keypad, feet', 'main');
      await hand.tapButton('3', pad);
      await hand.tapButton('′ ft', pad);
      await inspection.look('keypad, inches', 'main');
      await hand.tapButton('7 inches', pad);
      await inspection.look('keypad, fraction', 'main');
      await hand.tapButton(/^Read it/, pad);
      await hand.button('Keep it as read').waitFor();
      await inspection.look('keypad, asking back', 'main');
    }));

  it('digging', () =>
    inspect(async (inspection) => {
      const { hand, app } = inspection;
      await inspection.lookAt('Pull B to stake 1', 'dig', '1');
      await inspection.lookAt('Ticked for the whole job: ties', 'dig', '1');
      await hand.tapButton('Log as-dug');
      await app.page.getByRole('dialog').waitFor();
      await app.page.keyboard.type('4 1');
      await hand.tapButton(/^Read it/);
      await hand.sheet('Width of hole 1').waitFor();
      await app.page.keyboard.type('1 6');
      await hand.tapButton(/^Read it/);
      await hand.sheet('Hole 1: what was met').waitFor();
      await inspection.look('dig, what was met', 'main');
      await hand.tapButton('Log it', app.page.getByRole('dialog'));
      await inspection.look('dig, what was met, refused', 'main');
      await inspection.lookAt('Hole 7 dug', 'dig', '7');
      await inspection.lookAt('Hole 1 dug', 'dig', '1');
      await inspection.lookAt('Hole P dug', 'dig');
    }));

  it('setting, one step after the other', () =>
    inspect(async (inspection) => {
      await inspection.lookAt('Rod on the benchmark', 'set');
      for (const words of ['Post 1 set', 'Pull A to post 1', 'Pull B to post 1', 'Post 1, outer face'])
        await inspection.lookAt(words, 'set', '1');
    }));

  it('setting: a post out, a reading in doubt, a top not read', () =>
    inspect(async (inspection) => {
      const { hand, app } = inspection;
      await openExample(app.page);
      for (const hole of ['1', '4', '8', '10']) {
        await show(app.page, 'set', hole);
        await inspection.look(`set ${hole}`, 'main');
      }
      await hand.open('Other readings of post 10');
      await inspection.look('set 10, other readings');
      await hand.tapButton('Plumb, outer face');
      await inspection.look('plumb', 'main');
      await hand.tapButton('Another level, of another length');
      await inspection.look('length of the level', 'main');
    }));

  it('pouring and the record', () =>
    inspect(async (inspection) => {
      const { hand, app } = inspection;
      await inspection.lookAt('Ticked for hole 1: weather', 'pour', '1');
      await hand.tapButton('Log the pour');
      await inspection.look('pour sheet', 'main');
      await hand.tapButton('Back');
      await restoreLog(app.page, EXAMPLE);
      await inspection.look('record', 'main');
      for (const hole of ['1', '4', '7']) {
        await show(app.page, 'pour', hole);
        await inspection.look(`pour ${hole}`);
      }
    }));
});
