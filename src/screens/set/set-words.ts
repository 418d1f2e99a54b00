import type { PullEnd } from '../../job/entry-schema.ts';
import { lengthWords } from '../../job/length.ts';
import type { Plan } from '../../job/plan-schema.ts';
import { thingName, touchName, turningOf } from '../../job/words.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { listWords } from '../../judge/words.ts';
import { isProved } from '../looks.ts';

/** Where a tape starts: `from A’s nail`, `from post 3, the middle of the clockwise face`. */
export function fromWords(end: PullEnd, plan: Plan): string {
  const { thing } = end;
  if (thing.kind === 'post')
    return `from ${thingName(thing, plan)}, ${touchWords(end, plan)}${heightWords(end)}`;
  return `from ${nailWords(end, plan)}`;
}

/** What the tape touches on the post that the card is about: `to the middle of the outer face`. */
export const toWords = (end: PullEnd, plan: Plan): string =>
  `to ${end.thing.kind === 'dug-hole' ? thingName(end.thing) : end.thing.kind === 'post' ? touchWords(end, plan) : nailWords(end, plan)}${heightWords(end)}`;

/** Said only where the tape is held above the ground. */
const heightWords = ({ height }: PullEnd): string =>
  height && height.m !== 0 ? `, ${lengthWords(height)} above the ground` : '';

const nailWords = ({ thing }: PullEnd, plan: Plan): string =>
  thing.kind === 'nail' ? thingName(thing, plan) : `${thingName(thing, plan)}’s nail`;

const touchWords = ({ thing, touch }: Pick<PullEnd, 'thing' | 'touch'>, plan: Plan): string =>
  touchName(touch, thing.kind === 'post' ? turningOf(plan, thing.hole) : 'grid');

/** Said when no post wants another reading: which are in and guarded, or which are not and must not look so. */
export function allDoneWords(holes: readonly Pick<HoleAssessment, 'hole' | 'set'>[]): string {
  const others = holes.filter((hole) => !isProved(hole)).map(({ hole }) => hole);
  if (others.length === 0) return 'Every post and pier is set, measured and guarded';
  return `No more readings are asked for, and not in and guarded: ${listWords(others)}`;
}
