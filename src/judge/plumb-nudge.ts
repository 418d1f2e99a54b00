import { bearingOf, dot, length, scale, unit } from '../geometry/point.ts';
import type { Side } from '../job/entry-schema.ts';
import { ofKind } from '../job/log.ts';
import { sideName, thingName, turningOf } from '../job/words.ts';
import type { SitedHole } from '../plan/hole.ts';
import { sideBearing } from '../plan/index.ts';
import { formatLength, METRES_PER_FOOT, smallStep, type Units } from '../units/index.ts';
import { isFound, plumbReaderOf } from './level-error.ts';
import type { Judgement, LevelReading, PlumbNudge } from './types.ts';
import { type JobView, pointOf, postOf } from './view.ts';
import { moveWords, small } from './words.ts';
import { HAND, isOnlyJustIn, worthAPush } from './worth-a-push.ts';

/**
 * How to bring a loose post upright: which way its top goes, and how far at the top of the level that is held against it.
 *
 * @returns null for a post that is plumb, whose lean is not known well enough, or that is in concrete
 */
export function plumbNudgeFor(
  view: JobView,
  hole: SitedHole,
  plumb: Judgement,
  poured: boolean,
): PlumbNudge | null {
  const post = postOf(hole.label);
  const point = pointOf(view, post);
  const lean = point?.lean;
  // A reading that looks misread is taken again before anything is pushed on its word.
  const doubted = view.book.plumbs(hole.label).some(({ id }) => view.suspects.has(id));
  const near = isOnlyJustIn(plumb) && view.book.pours(hole.label).length === 0;
  const known =
    !doubted && (plumb.verdict === 'out' || (plumb.verdict === 'unsure' && plumb.checked) || near);
  if (poured || !lean || !known) return null;
  const over = levelLength(view, hole.label);
  const move = scale(lean.perMetre, -over);
  const way = moveWords(point.fix?.place ?? hole.site, move, view.ground);
  const { units } = view.plan;
  const words = `Push the top of ${thingName(post, view.plan)}: ${way}, measured ${formatLength(over, units)} above the foot of the level.`;
  return {
    distance: length(move),
    over,
    bearing: bearingOf(move),
    words,
    levels: levelsWhenRight(view, hole),
    worthIt: plumb.verdict === 'out' || worthAPush(plumb.chance, lean.covariance, plumb.tolerance, HAND.lean),
  };
}

/**
 * What the level reads on two faces side by side once a post stands as it should: bubble in the middle, no gap, and what it
 * reads now where that is known. A foot that is pushed takes the plumb with it, so this is asked of either push.
 */
export function levelsWhenRight(view: JobView, hole: SitedHole): LevelReading[] {
  if (hole.section.kind !== 'post') return [];
  const lean = pointOf(view, postOf(hole.label))?.lean?.perMetre ?? null;
  const over = levelLength(view, hole.label);
  const error = plumbReaderOf(view).errorOf(over);
  // Held with its marked end up a level out of true shows its own error on a post that is plumb.
  const shows = error && isFound(error) ? error.slope * over : 0;
  return FACES.map((side) => {
    const now = lean && over * dot(lean, unit(sideBearing(hole.facing, side)));
    const words = levelWords(view, { hole: hole.label, side, over, shows, now });
    return { side, over, gap: Math.abs(shows), now, words };
  });
}

/** Two side by side give the lean. */
const FACES: readonly Side[] = ['front', 'left'];

interface LevelShown {
  readonly hole: string;
  readonly side: Side;
  readonly over: number;
  /** Past the face, out positive, of a post that is plumb: nothing, or the level's own error. */
  readonly shows: number;
  readonly now: number | null;
}

/** `Level on the outer face: bubble in the middle, no gap over 4′ 0″; now the top leans 1/4″ out`. */
function levelWords(view: JobView, { hole, side, over, shows, now }: LevelShown): string {
  const { units } = view.plan;
  const face = sideName(side, turningOf(view.plan, hole));
  const finest = smallStep(units) / 2;
  const own = Math.abs(shows) < finest ? null : `${small(shows, units)} ${shows > 0 ? 'out' : 'in'}`;
  const right =
    own === null
      ? `Level on the ${face} face: bubble in the middle, no gap over ${formatLength(over, units)}`
      : `Level on the ${face} face, its marked end up: it shows the top ${own} over ${formatLength(over, units)}, by its own error`;
  if (now === null) return right;
  if (Math.abs(now) < finest) return `${right}, as now`;
  return `${right}; now the top leans ${small(now, units)} ${now > 0 ? 'out' : 'in'}`;
}

/** Of the level that was last held against this post, else in this job; before any was, of a usual one. */
function levelLength(view: JobView, hole: string): number {
  const last = view.book.plumbs(hole).at(-1) ?? ofKind(view.entries, 'plumb').at(-1);
  return last?.body.over.m ?? USUAL_LEVEL[view.plan.units];
}

/** A four-foot level, or one of 1.2 m: common practice. */
const FOUR_FEET = 4 * METRES_PER_FOOT;
const USUAL_LEVEL: Record<Units, number> = {
  'ft-in-16': FOUR_FEET,
  'ft-in-32': FOUR_FEET,
  ft: FOUR_FEET,
  m: 1.2,
  mm: 1.2,
};
