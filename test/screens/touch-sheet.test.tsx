// @vitest-environment happy-dom
import { cleanup, fireEvent, screen } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { type Body, type PullEnd, SIDES, type Side } from '../../src/job/entry-schema.ts';
import { situate } from '../../src/judge/situation.ts';
import { postOf, viewOf } from '../../src/judge/view.ts';
import { sideBearing } from '../../src/plan/index.ts';
import { PullFlow, type PullToRead } from '../../src/screens/pull-flow.tsx';
import { stakePulls } from '../../src/screens/set/place-step.ts';
import { formatLength } from '../../src/units/index.ts';
import { inches, samplePlan } from '../job/sample.ts';
import { openScreen } from './plan/open-screen.tsx';
import { whole } from './press.ts';
import { post, pullOf } from './set/set-day.ts';
import { holeStake, logOf, PULLS, READY, stake } from './stake/field-day.ts';
import { tap, tapWhenThere, typeReading } from './taps.ts';

afterEach(cleanup);

const STANDS: Body[] = [...READY, post('4'), post('P')];
const VIEW = viewOf(situate(logOf(STANDS)))!;
const hole = (label: string) => VIEW.sited.get(label)!;
const proposed = (label: string): PullToRead => stakePulls(VIEW, label, hole(label).site)[0]!;
const OTHER = 'It touches another place, or higher up';

async function open(pull: PullToRead, bodies: readonly Body[] = STANDS) {
  return openScreen(
    () => (
      <main>
        <PullFlow pull={pull} how="level" onClose={() => {}} />
      </main>
    ),
    bodies,
  );
}

async function openChoice(): Promise<void> {
  tap(OTHER);
  await whole();
  await screen.findByRole('button', { name: 'It touches there', hidden: true });
}

const choose = (name: string) => fireEvent.click(screen.getByRole('radio', { name, hidden: true }));
const height = (text: string, on = 'post 4') =>
  fireEvent.input(screen.getByRole('textbox', { name: `Height on ${on}`, hidden: true }), {
    target: { value: text },
  });
const title = () => screen.getByRole('heading', { level: 2, hidden: true }).textContent;
const expectedShown = () => screen.getByText(/^Expected/).textContent;
const lastOf = async (job: Awaited<ReturnType<typeof open>>) => (await job.log()).at(-1)!.body;

/** A point on a square post by the drawing alone: half the section out along each named side. */
function faceOf(label: string, ...sides: Side[]): { x: number; y: number } {
  const { site, facing, section } = hole(label);
  if (section.kind !== 'post') throw new Error(`Post ${label} is not square`);
  const at = { x: site.x, y: site.y };
  for (const side of sides) {
    const half = (side === 'front' || side === 'back' ? section.depth : section.width) / 2;
    at.x += half * Math.cos(sideBearing(facing, side));
    at.y += half * Math.sin(sideBearing(facing, side));
  }
  return at;
}

/** Level from A, where the site's frame begins. */
function fromATo(...sides: Side[]): number {
  const { x, y } = faceOf('4', ...sides);
  return Math.hypot(x, y);
}

const NAMES: Record<Side, string> = {
  front: 'outer',
  left: 'anticlockwise',
  back: 'inner',
  right: 'clockwise',
};
const written = (m: number) => formatLength(m, 'ft-in-16');
const touchSide = ({ touch }: PullEnd): Side => (touch.at === 'face' ? touch.side : 'front');

test('nobody who wants the proposed place sees a change', async () => {
  const pull = proposed('4');
  const job = await open(pull);
  expect(title()).toBe(`Tape, A to post 4, the middle of the ${NAMES[touchSide(pull.to)]} face`);
  expect(expectedShown()).toBe(`Expected ${written(pull.expected!)}`);
  typeReading(written(pull.expected!));
  tap(/^Read it/);
  await expect.poll(() => lastOf(job)).toMatchObject({ kind: 'pull', from: pull.from, to: pull.to });
  expect(JSON.stringify(await lastOf(job))).not.toContain('height');
});

test.each(SIDES)('the corner after the %s face: expected, told and logged as touched', async (side) => {
  const next = SIDES[(SIDES.indexOf(side) + 1) % SIDES.length]!;
  const job = await open(proposed('4'));
  await openChoice();
  choose(`The corner of the ${NAMES[side]} and ${NAMES[next]} faces`);
  height('2 6');
  tap('It touches there');
  expect(title()).toBe(
    `Tape, A to post 4, the corner of the ${NAMES[side]} and ${NAMES[next]} faces, 2′ 6″ above the ground`,
  );
  const expected = fromATo(side, next);
  expect(expectedShown()).toBe(`Expected ${written(expected)}`);
  typeReading(written(expected));
  tap(/^Read it/);
  await expect.poll(() => lastOf(job)).toMatchObject({ kind: 'pull' });
  expect(await lastOf(job)).toEqual({
    kind: 'pull',
    from: proposed('4').from,
    to: { thing: postOf('4'), touch: { at: 'corner', side }, height: inches('2 6') },
    reading: inches(written(expected)),
    hold: { how: 'level' },
  });
});

test('another face counts in the question about a reading beyond belief', async () => {
  const pull = proposed('4');
  const far = SIDES[(SIDES.indexOf(touchSide(pull.to)) + 2) % SIDES.length]!;
  await open(pull);
  await openChoice();
  choose(`The middle of the ${NAMES[far]} face`);
  tap('It touches there');
  expect(expectedShown()).toBe(`Expected ${written(fromATo(far))}`);
  typeReading(written(fromATo(far) + inches('1 0').m));
  tap(/^Read it/);
  expect(screen.getByRole('alert', { hidden: true }).textContent).toContain(
    `more than expected (${written(fromATo(far))})`,
  );
});

test('a round is touched at its near side or at its centre', async () => {
  const pull = proposed('P');
  await open(pull);
  await openChoice();
  expect(screen.getAllByRole('radio', { hidden: true })).toHaveLength(2);
  choose('The centre mark');
  tap('It touches there');
  const { x, y } = hole('P').site;
  expect(title()).toBe('Tape, A to pier P, the centre mark');
  expect(expectedShown()).toBe(`Expected ${written(Math.hypot(x, y))}`);
});

test.each([
  ['20 0', /^Height on post 4: “20 0” is more than 10′ 0″; type that or less\.$/],
  ['knee', /^Height on post 4: “knee” /],
  ['-1 0', /^Height on post 4: “-1 0” must not be below zero/],
])('the height %s is refused in a sentence, and changes nothing', async (text, says) => {
  await open(proposed('4'));
  await openChoice();
  height(text);
  tap('It touches there');
  expect(screen.getByText(says)).toBeTruthy();
  tap('Back');
  expect(title()).not.toContain('above the ground');
  expect(expectedShown()).toBe(`Expected ${written(proposed('4').expected!)}`);
});

test('the lean that plumb readings give moves what is expected at a height', async () => {
  const plumb = (side: Side, offset: string, leans: 'in' | 'out' | 'none'): Body => ({
    kind: 'plumb',
    hole: '4',
    side,
    offset: inches(offset),
    over: inches('4 0'),
    leans,
  });
  const pulls = stakePulls(VIEW, '4', hole('4').site);
  const measured = [...STANDS, ...pulls.map((pull) => pullOf(pull, pull.expected))];
  const [front, left] = [plumb('front', '0 3/4', 'out'), plumb('left', '0', 'none')];
  await open(pulls[0]!, [...measured, front, left]);
  await openChoice();
  height("4' 0");
  tap('It touches there');
  const { facing } = hole('4');
  const face = faceOf('4', touchSide(pulls[0]!.to));
  const lean = inches('0 3/4').m;
  const at = { x: face.x + lean * Math.cos(facing), y: face.y + lean * Math.sin(facing) };
  expect(expectedShown()).toBe(`Expected ${written(Math.hypot(at.x, at.y))}`);
  expect(expectedShown()).not.toBe(`Expected ${written(pulls[0]!.expected)}`);
});

test('a stake is touched at its nail, and nothing else is offered', async () => {
  const nail = { at: 'nail' } as const;
  await open({
    from: { thing: stake('A'), touch: nail },
    to: { thing: holeStake('4'), touch: nail },
    expected: PULLS.get('4')!.fromA,
  });
  expect(screen.queryByRole('button', { name: OTHER, hidden: true })).toBeNull();
});

test('what was chosen is there again when the choice is opened once more', async () => {
  await open(proposed('4'));
  await openChoice();
  height('1 6');
  choose('The centre mark');
  tap('It touches there');
  await tapWhenThere(OTHER);
  const box = screen.getByRole('textbox', { name: 'Height on post 4', hidden: true });
  expect((box as HTMLInputElement).value).toBe('1 6');
  expect(
    (screen.getByRole('radio', { name: 'The centre mark', hidden: true }) as HTMLInputElement).checked,
  ).toBe(true);
});

test('with a tape that reads short, what it reads to the corner is expected', async () => {
  const long = { label: 'Red', nominal: inches('100 0'), actual: inches('101 0'), zero: inches('0') };
  const plan = { ...samplePlan, instruments: { ...samplePlan.instruments, tapes: [long] } };
  await open(proposed('4'), [...STANDS, { kind: 'plan', plan }]);
  await openChoice();
  choose('The corner of the inner and clockwise faces');
  tap('It touches there');
  expect(expectedShown()).toBe(`Expected ${written(fromATo('back', 'right') / 1.01)}`);
});

test('between two posts each end has its own height and place', async () => {
  const face = (label: string, side: Side): PullEnd => ({
    thing: postOf(label),
    touch: { at: 'face', side },
  });
  const [from, to] = [face('4', 'front'), face('5', 'front')];
  const gap = (a: Side, b: Side) => {
    const [one, other] = [faceOf('4', a), faceOf('5', b)];
    return Math.hypot(one.x - other.x, one.y - other.y);
  };
  const job = await open({ from, to, expected: gap('front', 'front') }, [...STANDS, post('5')]);
  await openChoice();
  height('1 0', 'post 4');
  height('3 0', 'post 5');
  const inner = screen.getAllByRole('radio', { name: 'The middle of the inner face', hidden: true });
  fireEvent.click(inner[1]!);
  tap('It touches there');
  const expected = gap('front', 'back');
  expect(expectedShown()).toBe(`Expected ${written(expected)}`);
  typeReading(written(expected));
  tap(/^Read it/);
  await expect.poll(() => lastOf(job)).toMatchObject({ kind: 'pull' });
  expect(await lastOf(job)).toMatchObject({
    from: { ...from, height: inches('1 0') },
    to: { ...face('5', 'back'), height: inches('3 0') },
  });
});
