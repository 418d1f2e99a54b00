import type { Thing } from '../../job/entry-schema.ts';
import { thingKey } from '../../job/log.ts';
import { thingName } from '../../job/words.ts';
import type { Situation } from '../../judge/situation.ts';
import type { NextPull } from '../../judge/types.ts';
import type { PullToRead } from '../pull-flow.tsx';
import { riseBetween } from '../rise.ts';
import type { Present } from './present.ts';

/** The pull to make to a stake that two pulls leave unsure, and what goes with it. */
export interface UnsurePull {
  readonly pull: PullToRead;
  /** For the button: `Read the tape from A again`. */
  readonly words: string;
  /** What to mind beside the judgement's own why; null when that says it all. */
  readonly mind: string | null;
}

/**
 * A pull along a slope whose rise nobody knows comes first, for that doubt swamps every other; then the pull that the
 * judge advises, when it is to this stake; else the first one again.
 */
export function unsurePull(
  situation: Pick<Situation, 'measured'>,
  present: Present,
  next: NextPull | null,
  fromA: PullToRead,
  fromB: PullToRead,
): UnsurePull {
  const stake = fromA.to.thing;
  const blind = [fromA, fromB].find((pull) => isBlind(situation, present, pull));
  if (blind) {
    const { words } = named(present, blind, stake);
    const mind = `The tape from ${thingName(blind.from.thing)} lay along the slope and its rise is not known: enter the rise, or pull level.`;
    return { pull: blind, words, mind };
  }
  const advised = next && [next.from, next.to].some(({ thing }) => thingKey(thing) === thingKey(stake));
  return { ...named(present, advised ? next : fromA, stake), mind: null };
}

function isBlind(
  situation: Pick<Situation, 'measured'>,
  present: Present,
  { from, to }: PullToRead,
): boolean {
  const hold = present.pull(from.thing, to.thing)?.body.hold;
  return hold?.how === 'slope' && !hold.rise && riseBetween(situation, from, to) === null;
}

function named(present: Present, pull: PullToRead, stake: Thing): Pick<UnsurePull, 'pull' | 'words'> {
  const [one, other] = [pull.from.thing, pull.to.thing];
  const start = thingKey(one) === thingKey(stake) ? other : one;
  const again = present.pull(one, other) ? ' again' : '';
  return { pull, words: `Read the tape from ${thingName(start)}${again}` };
}
