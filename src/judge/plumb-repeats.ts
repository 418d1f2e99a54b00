import type { EntryOf, Side } from '../job/entry-schema.ts';
import { ownErrorIn, ownErrorSigma } from '../measure/plumb-reading.ts';
import { CRITICAL } from '../plan/luck.ts';
import { plumbReaderOf } from './level-error.ts';
import type { JobView } from './view.ts';

/** Repeats further apart than this many sigmas of their difference do not agree. */
export const REPEATS_AGREE = CRITICAL;

/** No level that anybody plumbs a post with is so far out of true: 10 mm in a metre. One of the two readings was misread. */
const BELIEVED_TO = 0.01;

type Plumb = EntryOf<'plumb'>;
export type Axis = 'front-back' | 'left-right';

export const AXIS: Record<Side, Axis> = {
  front: 'front-back',
  back: 'front-back',
  left: 'left-right',
  right: 'left-right',
};
const TOWARD: Record<Side, 1 | -1> = { front: 1, back: -1, left: 1, right: -1 };
const OPPOSITE: Record<Side, Side> = { front: 'back', back: 'front', left: 'right', right: 'left' };

/** Sides on which a second reading is still wanted, and directions in which two readings do not agree. */
export interface Repeats {
  readonly unread: readonly Side[];
  readonly apart: readonly Side[];
}

/** How the plumb readings of one post bear each other out, direction by direction. */
export function plumbRepeats(view: JobView, readings: readonly Plumb[]): Repeats {
  const unread: Side[] = [];
  const apart: Side[] = [];
  for (const axis of ['front-back', 'left-right'] as const) {
    const along = readings.filter(({ body }) => AXIS[body.side] === axis);
    const leans = along.map((entry) => signedLean(view, entry));
    const differ = leans.some((one) => leans.some((other) => !agree(one, other)));
    const turns = along.map((entry) => turnSays(view, entry));
    const side = along.at(-1)?.body.side ?? (axis === 'front-back' ? 'front' : 'left');
    if (turns.includes('wrong') || differ) apart.push(side);
    else if (along.length < 2 && !turns.includes('right')) unread.push(OPPOSITE[side]);
  }
  return { unread, apart };
}

/** Metres per metre, with one sigma. */
export interface Lean {
  readonly lean: number;
  readonly sigma: number;
}

const agree = (one: Lean, other: Lean): boolean =>
  Math.abs(one.lean - other.lean) <= REPEATS_AGREE * Math.hypot(one.sigma, other.sigma);

/** What a reading says of the lean towards the front, or towards the left. */
export function signedLean(view: JobView, { body }: Plumb): Lean {
  const { reading, sigma } = plumbReaderOf(view).value(body);
  return { lean: (TOWARD[body.side] * reading) / body.over.m, sigma: sigma / body.over.m };
}

/**
 * Whether two readings of one face, the level turned between them, bear each other out. Alone they cannot: what one was
 * misread by looks like the level's own error. Beside another such pair they can, for a level errs alike everywhere.
 */
function turnSays(view: JobView, { body }: Plumb): 'right' | 'wrong' | 'nothing' {
  const own = ownErrorIn(body);
  if (own === null) return 'nothing';
  if (Math.abs(own) > BELIEVED_TO) return 'wrong';
  const error = plumbReaderOf(view).errorOf(body.over.m);
  if (!error || error.turns < 2) return 'nothing';
  const others = error.turns - 1;
  const sigma = ownErrorSigma(body, view.plan.instruments);
  const rest = {
    lean: (error.slope * error.turns - own) / others,
    sigma: Math.sqrt(Math.max((error.sigma * error.turns) ** 2 - sigma ** 2, 0)) / others,
  };
  return agree({ lean: own, sigma }, rest) ? 'right' : 'wrong';
}
