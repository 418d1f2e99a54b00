import type { SitePoint } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { ofKind, thingKey } from '../job/log.ts';
import { endName } from '../job/words.ts';
import { readingOn } from '../measure/taped.ts';
import { formatLength } from '../units/index.ts';
import { pullsInReach } from './possible-pulls.ts';
import { pullPlan } from './pull-ends.ts';
import { lineOf } from './shaken.ts';
import { crossingSine, type Held, inReach, squarestPair } from './stake-holds.ts';
import type { MovedStake, NextPull } from './types.ts';
import type { JobView } from './view.ts';

/**
 * Two pulls that tell which of several stakes moved, or how far one did: to something that stood still. Of two suspects to
 * the same thing, where their tapes cross nearest to square; of one to two things, as square to each other as can be. What
 * was pulled since the move already has said what it can.
 */
export function tellingPulls(view: JobView, suspects: readonly MovedStake[]): NextPull[] {
  const [one, other] = suspects;
  if (!one) return [];
  const pulled = pulledSince(view, suspects);
  const fresh = (stake: Thing) => (still: Thing) =>
    !pulled.has([thingKey(stake), thingKey(still)].sort().join(' '));
  const stakes = suspects.map(({ stake }) => stake);
  if (!other) {
    const at = placeOf(view, one);
    const still = stillThings(view, stakes, one).filter(({ thing }) => fresh(one.stake)(thing));
    const pair = squarestPair(still, at);
    return (pair.length > 0 ? pair : still.slice(0, 1)).map((held) => pullTo(view, one, held));
  }
  const [here, there] = [placeOf(view, one), placeOf(view, other)];
  const second = new Set(stillThings(view, stakes, other).map(({ thing }) => thingKey(thing)));
  const still = stillThings(view, stakes, one)
    .filter(({ thing }) => second.has(thingKey(thing)))
    .filter(({ thing }) => fresh(one.stake)(thing) || fresh(other.stake)(thing))
    .sort((p, q) => crossingSine(q.place, here, there) - crossingSine(p.place, here, there));
  const [best] = still;
  if (!best) return [];
  return [one, other]
    .filter(({ stake }) => fresh(stake)(best.thing))
    .map((suspect) => pullTo(view, suspect, best));
}

/** Lines that were pulled since the first of the suspects was found elsewhere. */
function pulledSince(view: JobView, suspects: readonly MovedStake[]): ReadonlySet<string> {
  const first = view.entries.findIndex(({ id }) => suspects.some(({ since }) => since === id));
  return new Set(ofKind(view.entries.slice(Math.max(first, 0)), 'pull').map(lineOf));
}

/** What no suspicion rests on, with nothing in the way of a tape to it. */
function stillThings(view: JobView, suspects: readonly Thing[], of: MovedStake): Held[] {
  const key = thingKey(of.stake);
  return inReach(view, view.measured, placeOf(view, of), suspects).filter(({ thing, place }) =>
    pullsInReach(view, thing, place).some(({ from, open }) => thingKey(from) === key && open()),
  );
}

/** Where a suspect stood, else where it seems to be. */
function placeOf(view: JobView, { stake, stood }: MovedStake): SitePoint {
  return stood ?? view.points.get(thingKey(stake))?.fix?.place ?? { x: 0, y: 0 };
}

function pullTo(view: JobView, suspect: MovedStake, { thing, place }: Held): NextPull {
  const { from, to, expected } = pullPlan(view, suspect.stake, placeOf(view, suspect), thing, place);
  const names = [from, to].map((end) => endName(end, view.plan));
  const reading = formatLength(readingOn(view.inHand, expected), view.plan.units);
  return {
    from,
    to,
    expected,
    text: `Pull ${names[0]} to ${names[1]}: it reads about ${reading} if ${names[0]} stands where it stood.`,
  };
}
