import type { Body, EntryKind, Thing } from '../../src/job/entry-schema.ts';
import type { Plan } from '../../src/job/plan-schema.ts';
import { describeEntry, endName, sideName, thingName, turningOf } from '../../src/job/words.ts';
import { OBSTRUCTION_NAMES } from '../../src/screens/dig/dig-words.ts';
import type { Hand, Way } from './hand.ts';

type BodyOf<K extends EntryKind> = Extract<Body, { kind: K }>;

/** Enters one line of the field book where the app asks for it, and waits until the app says that it is saved. */
export async function enterEntry(hand: Hand, body: Body, plan: Plan): Promise<void> {
  switch (body.kind) {
    case 'site':
      await hand.tap(hand.link('Go to Stake'));
      await hand.tapButton('Use these stakes');
      break;
    case 'check':
      await enterCheck(hand, body);
      break;
    case 'stand':
      await enterStand(hand, body, plan);
      break;
    case 'pull':
      await enterPull(hand, body, plan);
      break;
    case 'dug':
      await enterDug(hand, body);
      break;
    case 'plumb':
      await enterPlumb(hand, body, plan);
      break;
    case 'rod':
      await enterRod(hand, body, plan);
      break;
    case 'pour':
      await enterPour(hand, body);
      break;
    default:
      throw new RangeError(`Nobody has shown how a ${body.kind} is entered by hand`);
  }
  await hand.page.getByText(`Saved: ${describeEntry({ body }, plan)}.`, { exact: true }).waitFor();
}

const TICKS: Partial<Record<BodyOf<'check'>['item'], RegExp>> = {
  clean: /^Clean, and measured again/,
  gravel: /^The gravel is in/,
  room: /^Room all round, measured at the post/,
  braced: /^It is braced two ways/,
  inspection: /^Inspected, or none is asked for/,
  weather: /^The weather is fit for concrete/,
};

async function enterCheck(hand: Hand, { item, hole }: BodyOf<'check'>): Promise<void> {
  if (item === 'utilities') return hand.tapButton('Utilities are marked');
  if (item === 'ties') {
    await goPastProof(hand);
    return hand.tapButton('Two ways back are set');
  }
  await hand.goTo('Pour');
  await hand.goToHole(hole ?? '');
  await hand.tapButton(TICKS[item] ?? item);
}

/** Stakes that are not in and checked yet hold nobody up who says so. */
export async function goPastProof(hand: Hand): Promise<void> {
  const go = hand.button(/^Go on (without|as it is)$/);
  if ((await go.count()) > 0) await hand.tap(go);
}

async function enterStand(hand: Hand, { thing, event }: BodyOf<'stand'>, plan: Plan): Promise<void> {
  if (event !== 'driven' && event !== 'set') throw new RangeError(`${event} is not entered here`);
  if (thing.kind === 'post') {
    await toPost(hand, thing.hole);
    return hand.tapButton('It stands');
  }
  if (thing.kind === 'hole-stake') return hand.tapButton('Stake driven');
  await hand.tapButton(`Stake ${thingName(thing, plan)} driven`);
}

async function toPost(hand: Hand, hole: string): Promise<void> {
  await hand.goTo('Set');
  await hand.goToHole(hole);
}

/** Lengths between stakes are typed, those to posts tapped: so both ways are walked a hundred times. */
async function enterPull(hand: Hand, body: BodyOf<'pull'>, plan: Plan): Promise<void> {
  const { from, to, reading, hold } = body;
  const ends = `${endName(from, plan)} to ${endName(to, plan)}`;
  const way: Way = to.thing.kind === 'post' ? 'taps' : 'keyboard';
  await openPull(hand, body, plan);
  await hand.read(`Tape, ${ends}`, reading, way);
  if (hold.how === 'level') return;
  if (!hold.rise) return hand.tapButton('Not known');
  await hand.tapButton('Enter the rise');
  await hand.read(`Rise, ${ends}`, hold.rise, way);
}

async function openPull(hand: Hand, { from, to, hold }: BodyOf<'pull'>, plan: Plan): Promise<void> {
  if (to.thing.kind === 'post') return openPullToPost(hand, { from, to }, plan);
  await hand.goTo('Stake');
  if (from.thing.kind === 'hole-stake') return openCheckPull(hand, from.thing, to.thing);
  if (to.thing.kind === 'hole-stake') {
    await holdTape(hand, hold.how === 'level' ? 'Level' : 'Sloping');
    return hand.tapButton(`Read the tape from ${thingName(from.thing, plan)}`);
  }
  const first = hand.button('Read the tape from A to B');
  if ((await first.count()) > 0) return hand.tap(first);
  await hand.open('The line A–B');
  await hand.tapButton('Pull A–B again');
}

async function holdTape(hand: Hand, word: 'Level' | 'Sloping'): Promise<void> {
  const held = await hand.page.getByRole('radio', { name: word, exact: true }).isChecked();
  if (!held) await hand.choose('I hold the tape', word);
}

/** The check pull that the card asks for, or any from the list of all. */
async function openCheckPull(hand: Hand, from: Thing, to: Thing): Promise<void> {
  const ends = `${thingName(from)} to ${thingName(to)}`;
  if ((await hand.card()) === `Check pull: ${ends}`) return hand.tapButton('Read the tape');
  await hand.open(/^Check pulls: /);
  await hand.tapButton(new RegExp(`^${ends}, `));
}

async function openPullToPost(
  hand: Hand,
  { from, to }: Pick<BodyOf<'pull'>, 'from' | 'to'>,
  plan: Plan,
): Promise<void> {
  if (to.thing.kind !== 'post') throw new RangeError('Not a pull to a post');
  await toPost(hand, to.thing.hole);
  const asked = `Measure ${thingName(to.thing, plan)} from ${thingName(from.thing, plan)}`;
  if ((await hand.card()) === asked) return hand.tapButton('Enter the tape');
  await openOther(hand, to.thing, plan);
  await hand.tapButton(`Tape from ${endName(from, plan)}`);
}

const openOther = (hand: Hand, post: Thing, plan: Plan): Promise<void> =>
  hand.open(`Other readings of ${thingName(post, plan)}`);

async function enterDug(hand: Hand, { hole, depth, width, obstruction }: BodyOf<'dug'>): Promise<void> {
  await hand.goTo('Dig');
  if (!(await hand.card()).startsWith(`Dig hole ${hole},`)) await hand.goToHole(hole);
  await hand.tapButton(/^(Log as-dug|It is dug already)$/);
  await hand.read(`Depth of hole ${hole}`, depth, 'taps');
  await hand.read(`Width of hole ${hole}`, width, 'taps');
  await hand.choose('Met in the hole', OBSTRUCTION_NAMES[obstruction]);
  await hand.tapButton('Log it', hand.page.getByRole('dialog'));
}

const LEANS: Record<BodyOf<'plumb'>['leans'], string> = {
  none: 'Plumb: bubble in the middle',
  out: 'Top leans out, towards me',
  in: 'Top leans in, away from me',
};

async function enterPlumb(
  hand: Hand,
  { hole, side, offset, over, leans }: BodyOf<'plumb'>,
  plan: Plan,
): Promise<void> {
  const post: Thing = { kind: 'post', hole };
  const face = `${sideName(side, turningOf(plan, hole))} face`;
  const ofPost = `the ${face} of ${thingName(post, plan)}`;
  await toPost(hand, hole);
  if ((await hand.card()) === `Hold the level on ${ofPost}`) await hand.tapButton('Enter plumb');
  else {
    await openOther(hand, post, plan);
    await hand.tapButton(`Plumb, ${face}`);
  }
  // The level's length is asked for once, and then known.
  await hand.page.getByRole('dialog').waitFor();
  if ((await hand.sheet('Length of the level').count()) > 0)
    await hand.read('Length of the level', over, 'taps');
  await hand.tapButton(LEANS[leans], hand.sheet(`Plumb, ${ofPost}`));
  if (leans !== 'none') await hand.read(`Gap, ${ofPost}`, offset, 'taps');
}

async function enterRod(hand: Hand, { on, reading }: BodyOf<'rod'>, plan: Plan): Promise<void> {
  if (on.point !== 'benchmark' && on.point !== 'top') throw new RangeError(`${on.point} is not entered here`);
  await hand.goTo('Set');
  if (on.point === 'top') await hand.goToHole(on.hole);
  const where =
    on.point === 'top' ? `the top of ${thingName({ kind: 'post', hole: on.hole }, plan)}` : 'the benchmark';
  if ((await hand.card()) === `Read the rod on ${where}`) await hand.tapButton('Enter the rod');
  else {
    await hand.open(/^Other readings of /);
    await hand.tapButton(`Rod on ${where}`);
  }
  await hand.read(`Rod on ${where}`, reading, 'taps');
}

async function enterPour(hand: Hand, { hole, bags }: BodyOf<'pour'>): Promise<void> {
  await hand.goTo('Pour');
  await hand.goToHole(hole);
  await hand.tapButton('Log the pour');
  await hand.fill('Bags', String(bags));
  await hand.tapButton('Log it');
}
