import type { SitePoint } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { endName, thingName } from '../job/words.ts';
import { lengthRead, readingOn } from '../measure/taped.ts';
import type { Suspicion } from '../measure/types.ts';
import { formatLength } from '../units/index.ts';
import { type Advice, adviceFor } from './advice.ts';
import { type PullPlan, pullPlan } from './pull-ends.ts';
import type { HoleAssessment, Judgement, NextPull } from './types.ts';
import { IN_FROM, OUT_TO } from './verdict.ts';
import { type JobView, pointOf, postOf, stakeOf, stands } from './view.ts';
import { capital, small } from './words.ts';

/** A thing whose position stands to be settled. */
interface Open {
  readonly thing: Thing;
  readonly designed: SitePoint;
  readonly position: Judgement;
}

/**
 * The one pull that would help the job most now, or null when none would. First what every place hangs on: A–B, then a
 * suspected misreading. Then the worst place among set posts not yet in concrete, then among stakes not yet dug.
 */
export function nextPull(
  view: JobView,
  suspicions: readonly Suspicion[],
  holes: readonly HoleAssessment[],
): NextPull | null {
  if (!view.laid) return null;
  return (
    baselinePull(view) ??
    tellingPull(view, suspicions) ??
    worstPlacePull(view, openPosts(view, holes)) ??
    worstPlacePull(view, openStakes(view, holes))
  );
}

function openPosts(view: JobView, holes: readonly HoleAssessment[]): Open[] {
  return holes.flatMap(({ hole, designed, poured, set }) =>
    designed && !poured && stands(view, postOf(hole))
      ? [{ thing: postOf(hole), designed, position: set.position }]
      : [],
  );
}

function openStakes(view: JobView, holes: readonly HoleAssessment[]): Open[] {
  return holes.flatMap(({ hole, designed, dug, staked }) =>
    designed && dug.at === null && stands(view, stakeOf(hole))
      ? [{ thing: stakeOf(hole), designed, position: staked.position }]
      : [],
  );
}

const ORIGIN: SitePoint = { x: 0, y: 0 };

function baselinePull(view: JobView): NextPull | null {
  if (view.measured.baseline || !view.laid) return null;
  const b: SitePoint = { x: view.laid.baseline, y: 0 };
  const plan = pullPlan(view, { kind: 'stake', label: 'A' }, ORIGIN, { kind: 'stake', label: 'B' }, b);
  return inWords(view, plan, 'every place hangs on it.');
}

function tellingPull(view: JobView, [suspicion]: readonly Suspicion[]): NextPull | null {
  return suspicion ? pullThatTells(view, suspicion) : null;
}

/**
 * The pull that tells a suspected misreading: the same one again where one pull stands out; where several could be
 * meant, a fresh line to the thing that they share.
 */
export function pullThatTells(view: JobView, suspicion: Suspicion): NextPull | null {
  const body = view.pullBodies.get(suspicion.entries[0] ?? '')?.body;
  if (!body) return null;
  if (suspicion.entries.length > 1) {
    const designed = designedPlace(view, body.to.thing);
    const advice = designed && adviceFor(view, body.to.thing, designed, false);
    if (advice) return inWords(view, advice.pull, 'it should tell which of the pulls is misread.');
  }
  // What the other readings make of it.
  const expected = lengthRead(body, view.plan.instruments) - suspicion.misreading;
  const plan = { from: body.from, to: body.to, expected };
  return inWords(view, plan, 'it should bear out the reading or show it misread.');
}

function designedPlace(view: JobView, thing: Thing): SitePoint | null {
  return thing.kind === 'post' || thing.kind === 'hole-stake'
    ? (view.sited.get(thing.hole)?.site ?? null)
    : null;
}

function worstPlacePull(view: JobView, open: readonly Open[]): NextPull | null {
  const byNeed = open
    .map((place) => ({ place, need: needOf(place.position) }))
    .filter(({ need }) => need > 0)
    .sort((p, q) => q.need - p.need);
  for (const { place } of byNeed) {
    const pull =
      place.position.verdict === 'unmeasured' ? fixingPull(view, place) : settlingPull(view, place);
    if (pull) return pull;
  }
  return null;
}

/** Unmeasured first, then unsure from the least chance up, then what only wants a guard; 0 wants nothing. */
function needOf({ verdict, chance, checked }: Judgement): number {
  if (verdict === 'unmeasured') return 3;
  if (verdict === 'unsure') return 2 + (1 - (chance ?? 0)) / 2;
  return checked ? 0 : 1;
}

function fixingPull(view: JobView, { thing, designed }: Open): NextPull | null {
  const from = pointOf(view, thing)?.lack?.pullFrom ?? [{ kind: 'stake' as const, label: 'A' }];
  for (const other of from) {
    const at = pointOf(view, other)?.fix?.place;
    if (at || isA(other)) {
      const plan = pullPlan(view, other, at ?? ORIGIN, thing, designed);
      return inWords(view, plan, `it helps to fix ${thingName(thing, view.plan)}.`);
    }
  }
  return null;
}

const isA = (thing: Thing): boolean => thing.kind === 'stake' && thing.label === 'A';

function settlingPull(view: JobView, { thing, designed, position }: Open): NextPull | null {
  const advice = adviceFor(view, thing, designed, position.checked);
  return advice && inWords(view, advice.pull, gainWords(view, thing, position, advice));
}

function gainWords(view: JobView, thing: Thing, position: Judgement, advice: Advice): string {
  const name = thingName(thing, view.plan);
  if (position.verdict === 'unsure')
    return advice.chance >= IN_FROM || advice.chance <= OUT_TO
      ? `it should settle whether ${name} is in.`
      : `it brings ${name} nearer to a verdict.`;
  const unseen = small(advice.unseenShift, view.plan.units);
  return Number.isFinite(advice.unseenShift)
    ? `it guards ${name}: no misread pull could then move it more than ${unseen} unseen.`
    : `it helps to guard ${name} against a misread pull.`;
}

function inWords(view: JobView, { from, to, expected }: PullPlan, gain: string): NextPull {
  const reading = formatLength(readingOn(view.inHand, expected), view.plan.units);
  const text = `Pull ${endName(from, view.plan)} to ${endName(to, view.plan)}, about ${reading}: ${gain}`;
  return { from, to, expected, text: capital(text) };
}
