import { subtract } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { endName, thingName } from '../job/words.ts';
import { readingOn } from '../measure/taped.ts';
import { formatLength } from '../units/index.ts';
import { chanceWithinDisc } from './chance.ts';
import { placeTolerance, unseenAllowed } from './position.ts';
import type { PullPlan } from './pull-ends.ts';
import type { Judgement, NextPull } from './types.ts';
import { IN_FROM } from './verdict.ts';
import { type JobView, pointOf } from './view.ts';
import { capital, moveWords, small } from './words.ts';

/** A pull with what it is for: `Pull A to post 4, the middle of the outer face, about 12′ 3″: every place hangs on it.` */
export function inWords(view: JobView, { from, to, expected }: PullPlan, gain: string): NextPull {
  const reading = formatLength(readingOn(view.inHand, expected), view.plan.units);
  const text = `Pull ${endName(from, view.plan)} to ${endName(to, view.plan)}, about ${reading}: ${gain}`;
  return { from, to, expected, text: capital(text) };
}

/**
 * What a pull to a place is expected to bring.
 *
 * @param then the place as it would be judged once the pull is read as predicted
 * @param guess nobody has measured where it stands yet, so nothing can be expected of its verdict
 */
export function gainWords(
  view: JobView,
  ahead: JobView,
  thing: Thing,
  then: Judgement,
  guess: boolean,
): string {
  const name = thingName(thing, view.plan);
  const [before, after] = [pointOf(view, thing)?.fix, pointOf(ahead, thing)?.fix];
  if (!after) return `it helps to fix ${name}.`;
  if (!before) return `then it is known where ${name} stands.`;
  const verdict =
    guess || !then.checked || then.verdict === 'unsure'
      ? ''
      : `then ${name} is expected to be ${then.verdict}.`;
  if (before.unseenShift <= unseenAllowed(placeTolerance(view, thing)))
    return verdict === '' ? `it brings ${name} nearer to a verdict.` : verdict;
  if (after.unseenShift > unseenAllowed(placeTolerance(view, thing)))
    return `it helps to guard ${name} against a misread pull.`;
  const unseen = small(after.unseenShift, view.plan.units);
  const guards = `it guards ${name}: no misread pull could then move it more than ${unseen} unseen.`;
  return verdict === '' ? guards : `${guards} ${capital(verdict)}`;
}

/** Why no pull settles a place that is unsure, and what to do instead. */
export function beyondSettling(view: JobView, ahead: JobView, thing: Thing, position: Judgement): string {
  const name = thingName(thing, view.plan);
  const fix = pointOf(ahead, thing)?.fix;
  const designed = 'hole' in thing ? view.sited.get(thing.hole)?.site : undefined;
  if (!fix || !designed) return beyondGuarding(view, thing);
  const { units } = view.plan;
  const tolerance = placeTolerance(view, thing);
  if (chanceWithinDisc({ x: 0, y: 0 }, fix.covariance, tolerance) < IN_FROM)
    return `No pull in reach can settle ${name}: these tapes do not tell ${small(tolerance, units)} there, even of a place exactly on its mark. Measure with a better tape, or from stakes that cross it more squarely.`;
  const off = `it measures ${small(position.error ?? 0, units)} off its mark, too near the ${small(tolerance, units)} that is allowed`;
  const way = moveWords(fix.place, subtract(designed, fix.place), view.ground);
  return `No pull in reach can settle ${name}: ${off}. Move it nearer to its mark: ${way}.`;
}

/** Why nothing guards a place, or fixes it. */
export function beyondGuarding(view: JobView, thing: Thing): string {
  const name = thingName(thing, view.plan);
  const [what, cure] = pointOf(view, thing)?.fix
    ? ['guard', 'Prove it from a neighbour that stands measured, or from a third stake off to the side.']
    : ['fix', 'Measure a neighbour first, or drive a third stake from which the tape reaches it.'];
  return `No pull in reach can ${what} ${name}: nothing else that is known stands within the tape in plain sight. ${cure}`;
}

/** Why no pull settles the spacing of two posts that both stand in place. */
export function beyondSpacing(
  view: JobView,
  pair: readonly [Thing, Thing],
  { error, tolerance }: Judgement,
): string {
  const { units } = view.plan;
  const [one, other] = pair.map((thing) => thingName(thing, view.plan));
  const off = `${small(error ?? 0, units)} too ${(error ?? 0) > 0 ? 'long' : 'short'}`;
  return `No pull in reach can settle ${one} to ${other}: it measures ${off}, too near the ${small(tolerance, units)} that is allowed. Move one of them nearer to its mark.`;
}
