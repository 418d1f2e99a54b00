import type {
  Body,
  Decision,
  DepthMark,
  Entry,
  EntryKind,
  HeightPoint,
  Hold,
  PullEnd,
  Side,
  Thing,
  Touch,
} from './entry-schema.ts';
import { laidWords } from './laid-words.ts';
import { type Length, lengthWords } from './length.ts';
import type { PlanPlace } from './place-schema.ts';
import type { Holds, Plan, Shape } from './plan-schema.ts';
import { tapeWords } from './pulling-words.ts';

/** By what a front face is turned: away from the plan's centre, or along the plan's +y. */
export type Turned = 'centre' | 'grid';

const SIDE_NAMES: Record<Turned, Record<Side, string>> = {
  centre: { front: 'outer', left: 'anticlockwise', back: 'inner', right: 'clockwise' },
  grid: { front: 'front', left: 'left', back: 'back', right: 'right' },
};

/** How what a hole holds is turned in this plan. Rounds look along the grid, wherever they stand, as `holesOf` has them. */
export function turningOf(plan: Plan, hole: string): Turned {
  const holds = holdsIn(plan, hole);
  return holds.kind === 'post' ? holds.turned : 'grid';
}

/** A side of a post as a person standing at it would say it, seen from above: `outer`, `clockwise`, `left`. */
export function sideName(side: Side, turned: Turned): string {
  return SIDE_NAMES[turned][side];
}

const NEXT_SIDE: Record<Side, Side> = { front: 'left', left: 'back', back: 'right', right: 'front' };

/** What the tape touched: `the nail`, `the middle of the outer face`, `the corner of the front and left faces`. */
export function touchName(touch: Touch, turned: Turned): string {
  switch (touch.at) {
    case 'nail':
      return 'the nail';
    case 'centre':
      return 'the centre mark';
    case 'near-side':
      return 'its near side';
    case 'face':
      return `the middle of the ${sideName(touch.side, turned)} face`;
    case 'corner': {
      const next = sideName(NEXT_SIDE[touch.side], turned);
      return `the corner of the ${sideName(touch.side, turned)} and ${next} faces`;
    }
  }
}

/** `A`, `nail N1`, `stake 3` for a hole's stake, `post 3`, `pier P`, `the middle of hole 3` once it is dug. */
export function thingName(thing: Thing, plan?: Plan | null): string {
  switch (thing.kind) {
    case 'stake':
      return thing.label;
    case 'nail':
      return `nail ${thing.label}`;
    case 'hole-stake':
      return `stake ${thing.hole}`;
    case 'post':
      return `${holdsPier(thing.hole, plan) ? 'pier' : 'post'} ${thing.hole}`;
    case 'dug-hole':
      return `the middle of hole ${thing.hole}`;
  }
}

/** The label of the pier in the middle of a ring. */
const PIER_LABEL = 'P';

function holdsPier(hole: string, plan: Plan | null | undefined): boolean {
  return plan ? holdsIn(plan, hole).kind === 'pier' : hole === PIER_LABEL;
}

function holdsIn(plan: Plan, hole: string): Holds {
  const override = Object.hasOwn(plan.overrides, hole) ? plan.overrides[hole]?.holds : undefined;
  const isMiddle = hole === PIER_LABEL && plan.shape.kind === 'ring' && plan.shape.pier;
  return override ?? (isMiddle ? plan.pier.holds : plan.each.holds);
}

/**
 * One line of the field book in plain words, with lengths as they were typed:
 * `Pull A to post 4, the middle of the outer face: 18′ 6 5/16″, level`.
 *
 * @param plan the plan that stands, for the names of faces and piers; without it the plainest names are used
 */
export function describeEntry(entry: Pick<Entry, 'body'>, plan?: Plan | null): string {
  const describe = DESCRIBE[entry.body.kind] as (body: Body, plan: Plan | null) => string;
  const line = describe(entry.body, plan ?? null);
  const note = 'note' in entry.body && entry.body.note ? ` (${entry.body.note})` : '';
  return line + note;
}

type Describers = { [K in EntryKind]: (body: Extract<Body, { kind: K }>, plan: Plan | null) => string };

const DESCRIBE: Describers = {
  plan: ({ plan }) => `Plan “${plan.name}”: ${shapeName(plan.shape)}`,
  site: ({ a, b, chosenBy, laid }) =>
    `A and B placed by ${chosenBy === 'tool' ? 'Swingtape' : 'you'}: A ${placeName(a)}; B ${placeName(b)}${laid ? `. ${laidWords(laid)}` : ''}`,
  reference: ({ thing, at }, plan) => `${capital(standName(thing, plan))} is meant to stand ${placeName(at)}`,
  stand: ({ thing, event, since }, plan) =>
    thing.kind === 'dug-hole'
      ? `Hole ${thing.hole} shaved or made wider: its middle is another`
      : `${capital(standName(thing, plan))} ${event}${since === undefined ? '' : ', found by an earlier pull'}`,
  pull: (body, plan) => {
    const { from, to, reading, hold } = body;
    const ends = `${endName(from, plan)} to ${endName(to, plan)}`;
    return `Pull ${ends}: ${lengthWords(reading)}, ${holdName(hold)}${tapeWords(body, reading.units)}`;
  },
  offset: (body, plan) => {
    const { from, to, of, station, offset, side } = body;
    const along = station ? [`station ${lengthWords(station)}`] : [];
    const off = side === 'on' ? ['on the string'] : offset ? [`${lengthWords(offset)} ${side} of it`] : [];
    const string = `String ${thingName(from, plan)} to ${thingName(to, plan)}`;
    const tape = tapeWords(body, (station ?? offset)?.units ?? plan?.units ?? 'm');
    return `${string}, ${endName(of, plan)}: ${[...along, ...off].join(', ')}${tape}`;
  },
  plumb: (body, plan) => {
    const { hole, side, over, turned, markUp } = body;
    const face = `${capital(thingName({ kind: 'post', hole }, plan))}, ${sideName(side, plan ? turningOf(plan, hole) : 'grid')} face`;
    const second = turned ? `; turned end for end, ${plumbReadWords(turned)}` : '';
    const end = markUp ? ', marked end up' : '';
    return `${face}: ${plumbReadWords(body)} over ${lengthWords(over)}${end}${second}`;
  },
  twist: ({ hole, side, from, anticlockwise, clockwise }, plan) => {
    const turned = plan ? turningOf(plan, hole) : 'grid';
    const edges = `${lengthWords(anticlockwise)} and ${lengthWords(clockwise)} to the anticlockwise and clockwise edge of its ${sideName(side, turned)} face`;
    const off =
      from.by === 'tape'
        ? `from ${endName(from.at, plan)}`
        : `off the string ${thingName(from.from, plan)} to ${thingName(from.to, plan)}`;
    return `${capital(thingName({ kind: 'post', hole }, plan))}, ${off}: ${edges}`;
  },
  rod: ({ setup, on, reading, sight, inverted }, plan) => {
    const rod = inverted ? 'Rod upside down on' : 'Rod on';
    const far = sight ? `, ${lengthWords(sight)} away` : '';
    return `${rod} ${heightPointName(on, plan)}: ${lengthWords(reading)}, set-up ${setup}${far}`;
  },
  difference: ({ by, from, to, height, higher }, plan) => {
    const [one, other] = [from, to].map((point) => heightPointName(point, plan));
    const way =
      higher === 'none'
        ? levelWithWords(height)
        : `${lengthWords(height)} ${higher === 'to' ? 'below' : 'above'}`;
    return `${by === 'laser' ? 'Laser' : 'Water level'}: ${one} is ${way} ${other}`;
  },
  'two-peg': ({ middle, near }) =>
    `Two-peg test of the level: ${pegWords(middle)} from midway, ${pegWords(near)} from near peg a`,
  dug: ({ hole, depth, width, mark, obstruction }) =>
    `Hole ${hole} dug: ${lengthWords(depth)} deep${mark ? markWords(mark) : ''}, ${lengthWords(width)} wide${OBSTRUCTION_WORDS[obstruction]}`,
  check: ({ hole, item, asked, done, decides }) =>
    `${done ? 'Ticked' : 'Unticked'} for ${hole === undefined ? 'the whole job' : `hole ${hole}`}: ${decides ? `decision on ${DECISION_WORDS[decides]}` : (asked ?? CHECK_WORDS[item])}`,
  pour: ({ hole, bags, batch, time }) =>
    `Hole ${hole} poured: ${bags} ${bags === 1 ? 'bag' : 'bags'}${batch ? `, batch ${batch}` : ''}${time ? `, at ${time.slice(0, 16).replace('T', ' ')} UTC` : ''}`,
  note: ({ hole, text }) => (hole === undefined ? `Note: ${text}` : `Note on hole ${hole}: ${text}`),
  strike: ({ reason }) => `Struck out an entry: ${reason}`,
};

const DECISION_WORDS: Record<Decision, string> = {
  obstruction: 'what was met in the ground',
  shallower: 'a depth that is less than the rules ask',
  room: 'the place of the post on its footing',
  moved: 'what moved since the concrete went in',
};

/** What old logs may say of two heights that cannot be so is told as it stands. */
const levelWithWords = (height: Length): string =>
  height.m === 0 ? 'level with' : `level with, and ${lengthWords(height)} from,`;

const MARK_NAMES = {
  string: 'a string',
  stake: 'the top of a stake',
  level: 'the level',
  other: 'a mark',
} as const;

const markWords = ({ from, reading, above }: DepthMark): string =>
  from === 'level'
    ? ' (by the level)'
    : ` (${lengthWords(reading)} from ${MARK_NAMES[from]}, ${lengthWords(above)} above the lip)`;

/** What one reading of a level came to, as it was read: `plumb`, `top leans out 1/8″`, `top leans in 0.3°`. */
function plumbReadWords({ offset, leans, read }: PlumbReading): string {
  if (leans === 'none') return 'plumb';
  if (read?.by === 'degrees') return `top leans ${leans} ${read.degrees}°`;
  if (read?.by === 'bubble') return `top leans ${leans} ${read.marks} ${read.marks === 1 ? 'mark' : 'marks'}`;
  return `top leans ${leans} ${lengthWords(offset)}`;
}

type PlumbReading = Pick<Extract<Body, { kind: 'plumb' }>, 'offset' | 'leans' | 'read'>;

const OBSTRUCTION_WORDS = {
  none: '',
  rock: ', rock met',
  water: ', water met',
  roots: ', roots met',
  soft: ', soft ground',
  other: ', something in the way',
} as const;

const CHECK_WORDS = {
  utilities: 'buried utilities marked',
  ties: 'ties to find the centre again',
  inspection: 'inspection',
  clean: 'clean, and measured again',
  gravel: 'gravel in',
  room: 'room all round for concrete',
  braced: 'braced',
  weather: 'weather fit for concrete',
  asked: 'an item of this job',
} as const;

export function shapeName(shape: Shape): string {
  switch (shape.kind) {
    case 'ring':
      return `${shape.count} posts on a ring${shape.pier ? ' round a pier' : ''}`;
    case 'rows':
      return `${shape.columns} × ${shape.rows} posts in rows`;
    case 'points':
      return `${shape.points.length} ${shape.points.length === 1 ? 'hole' : 'holes'}, each placed by itself`;
  }
}

/** As `thingName`, but a bare `A` becomes `Stake A`, which reads better at the head of a line. */
const standName = (thing: Thing, plan: Plan | null): string =>
  thing.kind === 'stake' ? `stake ${thing.label}` : thingName(thing, plan);

/** `A`, `post 4, the middle of the outer face`. A stake is touched at its nail, which needs no words. */
export function endName({ thing, touch, height }: PullEnd, plan: Plan | null): string {
  const turned = plan && thing.kind === 'post' ? turningOf(plan, thing.hole) : 'grid';
  const usual = (touch.at === 'nail' && thing.kind !== 'post') || thing.kind === 'dug-hole';
  const where = usual ? '' : `, ${touchName(touch, turned)}`;
  const up = height && height.m !== 0 ? `, ${lengthWords(height)} above the ground` : '';
  return thingName(thing, plan) + where + up;
}

function holdName(hold: Hold): string {
  if (hold.how === 'level') return 'level';
  return hold.rise ? `along the slope, rise ${lengthWords(hold.rise)}` : 'along the slope, rise not known';
}

const pegWords = ({ a, b }: { readonly a: Length; readonly b: Length }): string =>
  `a ${lengthWords(a)}, b ${lengthWords(b)}`;

export function heightPointName(on: HeightPoint, plan: Plan | null): string {
  switch (on.point) {
    case 'benchmark':
      return 'the benchmark';
    case 'top':
      return `the top of ${thingName({ kind: 'post', hole: on.hole }, plan)}`;
    case 'ground':
      return `the ground at hole ${on.hole}`;
    case 'bottom':
      return `the bottom of hole ${on.hole}`;
    case 'turning-point':
      return `turning point ${on.label}`;
    case 'stake':
      return `stake ${on.label}`;
  }
}

const placeName = ({ right, front }: PlanPlace): string =>
  `${alongAxis(right, 'right', 'left')}, ${alongAxis(front, 'in front', 'behind')}`;

/** A signed length without its sign: the word says which way. */
function alongAxis(length: Length, positive: string, negative: string): string {
  const typed = length.typed.replace(/^[-−]\s*/, '');
  const words = lengthWords({ ...length, m: Math.abs(length.m), typed });
  return `${words} ${length.m < 0 ? negative : positive}`;
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
