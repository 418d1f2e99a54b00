import { requiredDepthOf } from '../build/index.ts';
import type { Section } from '../plan/hole.ts';
import { formatLength, isMetric, METRES_PER_FOOT, METRES_PER_INCH } from '../units/index.ts';
import { groundAt, lengthOf } from './supplies.ts';
import type { JobView } from './view.ts';
import { listWords } from './words.ts';

/**
 * Cautions that hang on the job's own numbers. The tool designs nothing: each names who decides. Values of codes are from
 * memory, and local codes differ.
 */

/** Deeper than this the sides of a hole are to be supported before anybody goes in: 29 CFR 1926.652(a)(1)(ii), OSHA. */
const CAVE_IN_M = 5 * METRES_PER_FOOT;

/** Said of a hole that is, or is to be, so deep that its sides can bury a person; empty of others. */
export function caveInWords(view: JobView, hole: string): string {
  const dug = view.book.dug(hole).at(-1)?.entry.body.depth.m;
  const depth = dug ?? requiredDepthOf(view.plan, hole).depth;
  if (depth === null || depth < CAVE_IN_M) return '';
  const { units } = view.plan;
  return `Hole ${hole} is ${formatLength(depth, units)} deep: from ${formatLength(CAVE_IN_M, units)} on its sides have to be held back or sloped before anybody is in it, and in loose or wet soil far sooner.`;
}

/** A floor higher than this above the ground beside it wants a guard: IRC R312.1.1. */
const GUARD_M = 30 * METRES_PER_INCH;
/** What frame and boards add to the tops, at the least and at the most: common practice. */
const FRAME_M = 10 * METRES_PER_INCH;

/** How far the tops stand above the ground at their own holes, the highest first. Where no ground is measured it is assumed. */
function standsAbove(view: JobView) {
  return view.holes
    .flatMap((hole) => {
      const ground = groundAt(view, hole.label);
      return [{ hole, above: hole.top - ground.height, assumed: ground.assumed }];
    })
    .sort((p, q) => q.above - p.above);
}

/** Whether a guard will be wanted, by the post that stands highest above its ground; empty where the floor stays low. */
export function guardWords(view: JobView): string {
  const [highest] = standsAbove(view).filter(({ hole }) => hole.section.kind === 'post');
  if (!highest || highest.above + FRAME_M <= GUARD_M) return '';
  const { units } = view.plan;
  const known = highest.assumed ? ', as far as the ground is known,' : '';
  const frame = highest.above > GUARD_M ? '' : ', and the frame and the boards come on top';
  return `The top at hole ${highest.hole.label} is to stand${known} ${formatLength(highest.above, units)} above the ground there${frame}: where a floor is more than ${formatLength(GUARD_M, units)} above the ground beside it, a guard is usually required. The building office decides.`;
}

/**
 * How high a wooden deck post may stand without being reckoned: IRC 2018, table R507.4 (4×4 6 ft 9 in, 4×6 8 ft, 6×6 and more
 * 14 ft), by its actual size.
 */
function usualHeight({ width, depth }: Extract<Section, { kind: 'post' }>): number {
  const six = 5.5 * METRES_PER_INCH - 0.002;
  if (Math.min(width, depth) >= six) return 14 * METRES_PER_FOOT;
  return Math.max(width, depth) >= six ? 8 * METRES_PER_FOOT : 6.75 * METRES_PER_FOOT;
}

/** Posts that stand higher than is usual for their size; empty where none does. */
export function tallWords(view: JobView): string {
  const tall = standsAbove(view).filter(
    ({ hole: { section }, above }) => section.kind === 'post' && above > usualHeight(section),
  );
  if (tall.length === 0) return '';
  const labels = tall
    .map(({ hole }) => hole.label)
    .sort((p, q) => p.localeCompare(q, 'en', { numeric: true }));
  const [highest] = tall;
  return `${tall.length > 1 ? 'Posts' : 'Post'} ${listWords(labels)} ${tall.length > 1 ? 'are' : 'is'} to stand up to ${formatLength(highest!.above, view.plan.units)} above the ground, more than is usual for so small a section: have the size reckoned by whoever designs the structure before you buy.`;
}

/** Treated softwood, wet from the yard, kilograms in a cubic metre: common practice. */
const WET_WOOD = 800;
/** What one person lifts at best: 51 lb, the NIOSH lifting equation (1994). */
const ONE_PERSON_KG = 23;
const KILOGRAMS_PER_POUND = 0.45359237;

/** About how heavy a post is, where one person should not raise it alone; empty of light ones, and of piers. */
export function liftWords(view: JobView, hole: string): string {
  const planned = view.holes.find(({ label }) => label === hole);
  const post = planned ? lengthOf(view, planned) : null;
  const length = post?.bought ?? post?.needed ?? null;
  if (planned?.section.kind !== 'post' || length === null) return '';
  const { section } = planned;
  const heavy = section.width * section.depth * length * WET_WOOD;
  if (heavy <= ONE_PERSON_KG) return '';
  const metric = isMetric(view.plan.units);
  const about = metric ? `${tens(heavy)} kg` : `${tens(heavy / KILOGRAMS_PER_POUND)} lb`;
  return `Post ${hole} may weigh about ${about}: raise it with help, feet clear of the hole.`;
}

const tens = (value: number): number => Math.round(value / 10) * 10;

/** Higher than this a top is reached from a ladder only: 6 ft, common practice. */
const REACH_M = 6 * METRES_PER_FOOT;

/** A ladder stands where the ground slopes, too; empty where the top is reached from the ground. */
export function ladderWords(view: JobView, hole: string): string {
  const found = standsAbove(view).find((each) => each.hole.label === hole);
  if (!found || found.above <= REACH_M) return '';
  // Stable and level, or secured: 29 CFR 1926.1053(b)(6), OSHA.
  return 'The top is reached from a ladder: set both its feet level, dug into the slope and never packed up on it, and have it held.';
}
