import type { Length } from '../../src/job/length.ts';
import type { Plan } from '../../src/job/plan-schema.ts';
import { FIELDS } from '../../src/plan/index.ts';
import type { Hand } from './hand.ts';

/** Begins a job on the page of jobs: its name, and what the tape is marked in. */
export async function beginJob(hand: Hand, { name }: Plan, tape: string): Promise<void> {
  await hand.tapButton('New job');
  await hand.fill('Name', name);
  await hand.choose('Your tape is marked in', tape);
  await hand.tapButton('Begin the plan');
}

/** Puts in what a ring's drawing says where it differs from what the fields say already. */
export async function enterRing(hand: Hand, { shape, each, pier, rules }: Plan): Promise<void> {
  if (shape.kind !== 'ring') throw new RangeError('Only rings are entered here');
  await openGroup(hand, 'Shape');
  await hand.fill(FIELDS.count, String(shape.count));
  if (shape.pier) await hand.tap(hand.page.getByLabel('A pier in the middle, hole P'));
  await openGroup(hand, 'Size');
  await enter(hand, FIELDS.size, shape.size);
  await openGroup(hand, 'What the holes hold');
  await enter(hand, FIELDS.holeDiameter, each.holeDiameter);
  await enter(hand, `${FIELDS.holeDiameter} of P`, pier.holeDiameter);
  await openGroup(hand, 'Heights');
  await enter(hand, FIELDS.top, each.top);
  await enter(hand, `${FIELDS.top} of P`, pier.top);
  await openGroup(hand, 'Depth rules');
  if (rules.frostDepth) await enter(hand, FIELDS.frostDepth, rules.frostDepth);
  await enter(hand, FIELDS.gravel, rules.gravel);
  await enter(hand, FIELDS.embedment, rules.embedment);
}

export const openGroup = (hand: Hand, title: string): Promise<void> =>
  hand.tap(hand.page.locator('.plan-group-title').getByText(title, { exact: true }));

/** Types a length, unless the field shows it already. */
async function enter(hand: Hand, label: string, length: Length): Promise<void> {
  const field = hand.page.getByLabel(label, { exact: true });
  if ((await field.inputValue()) !== length.typed) await hand.fill(label, length.typed);
}
