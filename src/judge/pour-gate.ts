import type { HoleDepth } from '../build/index.ts';
import { thingName } from '../job/words.ts';
import { askedItems, boughtItem, roomItem } from './asked-items.ts';
import { checkedItem, shallowerItem } from './dig-gate.ts';
import { type DugJudgement, dugAt } from './dug.ts';
import {
  countedItem,
  gateOf,
  green,
  inAndChecked,
  inItem,
  isDecided,
  red,
  staleItem,
  tickItem,
  undecided,
} from './gate.ts';
import type { RoomJudgement } from './room.ts';
import { after, countedTick } from './ticks.ts';
import type { Gate, GateItem, HoleAssessment, Judgement } from './types.ts';
import { type JobView, postOf, stands } from './view.ts';
import { weatherTick } from './weather.ts';
import { capital } from './words.ts';

export type SetJudgements = Pick<HoleAssessment['set'], 'position' | 'plumb' | 'level' | 'spacing'>;

/**
 * What must be so before concrete goes in: after it sets, a wrong post is a broken-out footing.
 *
 * @param baselineTrouble what is wrong with A–B or another stake, in words; null when nothing is. Every place hangs on them.
 */
export function pourGate(
  view: JobView,
  hole: string,
  dug: DugJudgement,
  set: SetJudgements,
  baselineTrouble: string | null,
  required: HoleDepth,
  room: RoomJudgement,
): Gate {
  const post = thingName(postOf(hole), view.plan);
  return gateOf([
    ...(baselineTrouble === null ? [] : [red('baseline', baselineTrouble)]),
    ...dugItems(view, hole, dug, required),
    stands(view, postOf(hole))
      ? green('set', `${capital(post)} is set.`)
      : red('set', `${capital(post)} is not set.`),
    inItem(set.position, `${capital(post)} stands in place.`),
    checkedItem(set.position, `A spare pull guards the place of ${post}.`),
    spacingItem(view, hole, set.spacing),
    inAndChecked(set.plumb, `${capital(post)} is plumb, read twice.`),
    inAndChecked(set.level, `The top of ${post} is at its height, read twice.`),
    roomItem(view, hole, room),
    ...boughtItem(view, hole),
    ...lastItems(view, hole),
    ...askedItems(view, hole),
  ]);
}

function dugItems(view: JobView, hole: string, dug: DugJudgement, { lacks }: HoleDepth): GateItem[] {
  const at = dugAt(view, hole);
  const again = `Hole ${hole} was dug or read again since it was ticked`;
  return [
    dug.last
      ? green('dug', `Hole ${hole} is dug.`)
      : red('dug', `Hole ${hole} is not dug yet, or not logged.`),
    inItem(dug.depth, `Hole ${hole} is deep enough.`),
    inItem(dug.width, `Hole ${hole} is wide enough.`),
    ...(lacks ? [shallowerItem(view, hole, lacks.text, dugAt(view, hole))] : []),
    obstructionItem(view, hole, dug),
    cleanItem(view, hole, at, again),
    gravelItem(view, hole, at, again),
  ];
}

/**
 * The bottom is seen clean before gravel and post hide it. What has come in since is looked for once more, and that look
 * is worth nothing before the post stands.
 */
function cleanItem(view: JobView, hole: string, at: number, again: string): GateItem {
  const { state, tick } = countedTick(view, 'clean', hole, after(at));
  if (state === 'done' && tick && tick.index < view.book.setAt(hole))
    return staleItem(
      'clean',
      `Hole ${hole} was ticked clean before ${thingName(postOf(hole), view.plan)} was set: see that no soil or water has come in since, and tick it again.`,
    );
  return countedItem(
    'clean',
    { state },
    {
      done: 'The bottom is clean, and the hole measures the same again.',
      missing: `Clear the bottom of hole ${hole} of loose soil, water and roots down to undisturbed ground, measure its depth and width once more, and tick it.`,
      stale: `${again}: see that its bottom is still clean.`,
    },
  );
}

/** No tick is asked for gravel that the plan does not want. */
function gravelItem(view: JobView, hole: string, at: number, again: string): GateItem {
  if (view.plan.rules.gravel.m === 0) return green('gravel', 'The plan asks for no gravel.');
  return tickItem(view, 'gravel', hole, after(at), {
    done: 'The gravel is in.',
    missing: `Put the gravel in hole ${hole}, tamp it, and tick it.`,
    stale: `${again}: see that the gravel is still right.`,
  });
}

/**
 * What was met in the ground is never passed by the tool. Whoever is responsible decides, and the sign of it is an
 * inspection ticked for this very hole since it was dug; one for the whole job does not say that anybody saw the rock.
 */
function obstructionItem(view: JobView, hole: string, { last }: DugJudgement): GateItem {
  if (!last) return red('obstruction', `Say what was met in hole ${hole} when its depth is logged.`);
  const { obstruction } = last.body;
  if (obstruction === 'none') return green('obstruction', 'Nothing was met in the ground.');
  const met = OBSTRUCTION_MET[obstruction];
  if (isDecided(view, hole, 'obstruction', dugAt(view, hole)))
    return green('obstruction', `${met}: decided at the inspection of this hole.`);
  return undecided(
    'obstruction',
    `${met} in hole ${hole}: this needs a decision by whoever is responsible. Tick the inspection of this hole with a note of who decided and what.`,
  );
}

const OBSTRUCTION_MET = {
  rock: 'Rock was met',
  water: 'Water was met',
  roots: 'Roots were met',
  soft: 'Soft ground was met',
  other: 'Something was met',
} as const;

/**
 * A neighbour that does not stand yet has no spacing: its own gate will judge it. One that stands must be measured, and both
 * places guarded.
 */
function spacingItem(view: JobView, hole: string, spacing: HoleAssessment['set']['spacing']): GateItem {
  const standing = spacing.filter(({ to }) => stands(view, postOf(to)));
  const wrong = standing.filter(({ verdict, checked }) => verdict !== 'in' || !checked);
  if (!stands(view, postOf(hole)))
    return red('spacing', 'No spacing is known before the post is set and measured.');
  if (wrong.length > 0) return red('spacing', wrong.map((judgement: Judgement) => judgement.why).join(' '));
  if (spacing.length === 0) return green('spacing', 'It has no neighbours whose spacing counts.');
  if (standing.length === 0)
    return green('spacing', 'No neighbour stands yet: its gate will judge the spacing.');
  return green('spacing', 'The spacing to the neighbours that stand is right.');
}

function lastItems(view: JobView, hole: string): GateItem[] {
  const post = thingName(postOf(hole), view.plan);
  const setAt = view.book.standAt(postOf(hole));
  return [
    tickItem(view, 'braced', hole, after(setAt), {
      done: `${capital(post)} is braced.`,
      missing: `Brace ${post} two ways to stakes that hold, and tick it.`,
      stale: `${capital(post)} was moved after it was braced: see to its braces and tick it again.`,
    }),
    tickItem(view, 'inspection', hole, after(dugAt(view, hole)), {
      done: 'Inspected, or no inspection is asked for.',
      missing:
        'Have the open hole inspected if the local code asks for it, and tick it; a covered footing may have to come out.',
      stale: `Hole ${hole} was dug or read again since the inspection: have it seen again.`,
    }),
    weatherItem(view, hole),
  ];
}

const weatherItem = (view: JobView, hole: string): GateItem =>
  countedItem('weather', weatherTick(view, hole), {
    done: 'The weather is fit for concrete.',
    // 5 °C (40 °F): ACI 306R, cold weather concreting; from memory.
    missing:
      'See that air, ground and concrete stay above 5 °C (40 °F) and that no heavy rain comes before it sets, and tick it. Local code decides.',
    stale: 'The weather was ticked more than half a day ago: look again and tick it.',
  });
