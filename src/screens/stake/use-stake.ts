import { useMemo } from 'preact/hooks';
import { bearingOf, distance, type SitePoint, subtract } from '../../geometry/point.ts';
import { type RigidMotion, toPlan } from '../../geometry/rigid.ts';
import type { Plan } from '../../job/plan-schema.ts';
import type { Situation } from '../../judge/situation.ts';
import { aloneOrder, type HolePulls, holePulls, type PlannedPull, workOrder } from '../../stakeout/index.ts';
import { referencePlaces, stakePlaces } from '../drawn-site.ts';
import { type JobBook, useJobBook } from '../job-book.ts';
import { checksOf } from './checks-of.ts';
import { type Present, presentOf } from './present.ts';
import { putOffIn } from './put-off.ts';
import { nailPull } from './stake-pulls.ts';
import { type StakeState, type StakeStep, stakeStep } from './stake-step.ts';

/** All that the cards of the Stake phase show, worked out once for each change of the log. */
export interface Stake {
  readonly state: StakeState;
  readonly step: StakeStep;
  /** By hole; empty until the plan lies on the site. */
  readonly pulls: ReadonlyMap<string, HolePulls>;
}

/** What the user chose to go past, and whether one person does it all. */
export interface StakeChoices extends Pick<StakeState, 'goOn' | 'pastMoved'> {
  readonly alone?: boolean;
}

export function useStake(focused: string | null, { goOn, pastMoved, alone }: Required<StakeChoices>): Stake {
  const { situation, assessment } = useJobBook();
  return useMemo(
    () => stakeOf({ situation, assessment }, focused, { goOn, pastMoved, alone }),
    [situation, assessment, focused, goOn, pastMoved, alone],
  );
}

export function stakeOf(
  { situation, assessment }: Pick<JobBook, 'situation' | 'assessment'>,
  focused: string | null,
  { alone = false, ...choices }: StakeChoices = {},
): Stake {
  const { plan, entries } = situation;
  const present = presentOf(entries);
  const state: StakeState = {
    situation,
    assessment,
    present,
    putOff: putOffIn(entries, present),
    order: orderOfWork(situation, alone),
    checks: () => checksOf(situation),
    fromFurther: plan ? pullsFromFurther(situation, present, plan) : [],
    focused,
    ...choices,
  };
  const pulls = new Map(pullsFromStakes(situation).map((each) => [each.hole, each]));
  return { state, step: stakeStep(state), pulls };
}

/** Labels of the holes, in the order in which the stakes are best driven. */
export function orderOfWork(situation: Pick<Situation, 'laid' | 'measured'>, alone: boolean): string[] {
  const places = (situation.laid?.holes ?? []).map(({ label, site }) => ({ label, at: site }));
  const stakes = alone ? stakePlaces(situation) : null;
  return stakes ? aloneOrder(places, stakes.a, stakes.b) : workOrder(places);
}

function pullsFromFurther(situation: Situation, present: Present, plan: Plan): PlannedPull[] {
  const reach = plan.instruments.tapeLength.m;
  const standing = referencePlaces(situation).filter(({ thing }) => present.stands(thing));
  return standing.flatMap(({ thing, place }) =>
    (situation.laid?.holes ?? [])
      .map(({ label, site }) => nailPull(thing, { kind: 'hole-stake', hole: label }, distance(place, site)))
      .filter(({ expected }) => expected <= reach)
      .map((pull) => ({ ...pull, purpose: 'fix' as const })),
  );
}

/** Lengths from A and B as they really stand: B is seldom driven just where it was planned. */
export function pullsFromStakes(situation: Pick<Situation, 'plan' | 'laid' | 'measured'>): HolePulls[] {
  const { plan, laid } = situation;
  const stakes = stakePlaces(situation);
  if (!plan || !laid || !stakes) return [];
  const line = subtract(stakes.b, stakes.a);
  const frame = { turn: bearingOf(line), shift: stakes.a };
  const seen = laid.holes.map((hole) => ({ ...hole, site: seenFrom(frame, hole.site) }));
  return holePulls(seen, distance(stakes.a, stakes.b), plan.instruments);
}

/** A place as seen from A along A–B: station and offset. */
function seenFrom(frame: RigidMotion, at: SitePoint): SitePoint {
  const { x, y } = toPlan(frame, at);
  return { x, y };
}
