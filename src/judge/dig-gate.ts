import type { HoleDepth } from '../build/index.ts';
import { thingName } from '../job/words.ts';
import { formatLength } from '../units/index.ts';
import { gateOf, green, inItem, isDecided, red, tickItem, undecided } from './gate.ts';
import { recordedTies, TIES_WANTED, tiesWords } from './recorded-ties.ts';
import { after, always } from './ticks.ts';
import type { Gate, GateItem, Judgement } from './types.ts';
import { type JobView, stakeOf } from './view.ts';

/** What must be so before a hole is dug: digging destroys the stake, and cannot be undone. */
export function digGate(
  view: JobView,
  hole: string,
  position: Judgement,
  required: HoleDepth,
  baselineTrouble: string | null,
): Gate {
  const stake = stakeOf(hole);
  const driven = view.book.standAt(stake);
  const name = thingName(stake, view.plan);
  return gateOf([
    tickItem(view, 'utilities', hole, always, {
      done: 'Buried utilities are marked.',
      missing:
        'Have the buried utilities marked, and wait until they are: call the local one-call number days before digging. Private lines are not marked for you.',
      stale: '',
    }),
    baselineItem(view, baselineTrouble),
    driven < 0
      ? red('staked', `Drive ${name} at its two tape lengths.`)
      : green('staked', `The stake of hole ${hole} is driven.`),
    inItem(position, `The stake of hole ${hole} stands in place.`),
    checkedItem(position, `A spare pull guards the stake of hole ${hole}.`),
    tiesItem(view, hole, driven),
    required.depth === null
      ? red('depth', required.text)
      : green('depth', `The hole has to be at least ${required.text}`),
    ...(required.lacks ? [shallowerItem(view, hole, required.lacks.text, -1)] : []),
  ]);
}

/**
 * A depth of its own that is less than the rules ask is never right by itself: somebody has to agree to it.
 *
 * @param since index of what the agreement has to come after, besides the plan that gave the hole this depth
 */
export function shallowerItem(view: JobView, hole: string, lacks: string, since: number): GateItem {
  return isDecided(view, hole, 'shallower', Math.max(since, view.book.ownDepthAt(hole)))
    ? green('shallower', `Hole ${hole} is less deep than the rules ask: that was agreed to.`)
    : undecided('shallower', lacks);
}

/** Two ties that were read open it, and so does who vouches for ties that were not. */
function tiesItem(view: JobView, hole: string, driven: number): GateItem {
  const ties = recordedTies(view, hole);
  if (ties.length >= TIES_WANTED)
    return green('ties', `${ties.length} ties lead back to the centre of hole ${hole}: ${tiesWords(ties)}.`);
  const so = ties.length === 0 ? '' : ` One is read: ${tiesWords(ties)}.`;
  return tickItem(view, 'ties', hole, after(driven), {
    done: 'Ties are recorded to find the centre again.',
    missing: `Record ties for hole ${hole}, clear of the spoil: digging takes the stake away, and they find its centre again.${so}`,
    stale: `The stake of hole ${hole} was moved after its ties were recorded: record them again.`,
  });
}

function baselineItem(view: JobView, trouble: string | null): GateItem {
  if (trouble !== null) return red('baseline', trouble);
  const { baseline } = view.measured;
  if (!baseline) return red('baseline', 'Pull from A to B: every place hangs on it.');
  return green('baseline', `A to B is pulled: ${formatLength(baseline.length, view.plan.units)}.`);
}

/** The guard of a place by itself; what is not measured is not guarded either. */
export function checkedItem(position: Judgement, good: string): GateItem {
  if (position.checked) return green('checked', good);
  if (position.verdict === 'unmeasured')
    return red(
      'checked',
      'Nothing guards a place that is not measured: pull to it from three things or more.',
    );
  return red('checked', position.why);
}
