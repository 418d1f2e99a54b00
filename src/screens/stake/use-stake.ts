import { useMemo } from 'preact/hooks';
import { bearingOf, distance, type SitePoint, subtract } from '../../geometry/point.ts';
import { type RigidMotion, toPlan } from '../../geometry/rigid.ts';
import type { Plan } from '../../job/plan-schema.ts';
import type { Situation } from '../../judge/situation.ts';
import { checkPulls, type HolePulls, holePulls, type PlannedPull, workOrder } from '../../stakeout/index.ts';
import { referencePlaces, stakePlaces } from '../drawn-site.ts';
import { type JobBook, useJobBook } from '../job-book.ts';
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

/** What the user chose to go past. */
export type StakeChoices = Pick<StakeState, 'goOn' | 'pastMoved'>;

export function useStake(focused: string | null, { goOn, pastMoved }: Required<StakeChoices>): Stake {
  const { situation, assessment } = useJobBook();
  return useMemo(
    () => stakeOf({ situation, assessment }, focused, { goOn, pastMoved }),
    [situation, assessment, focused, goOn, pastMoved],
  );
}

export function stakeOf(
  { situation, assessment }: Pick<JobBook, 'situation' | 'assessment'>,
  focused: string | null,
  choices: StakeChoices = {},
): Stake {
  const { plan, laid, entries } = situation;
  const sited = laid?.holes ?? [];
  const present = presentOf(entries);
  const state: StakeState = {
    situation,
    assessment,
    present,
    putOff: putOffIn(entries, present),
    order: workOrder(sited.map(({ label, site }) => ({ label, at: site }))),
    checks: plan ? checkPulls(sited, plan.instruments) : [],
    fromFurther: plan ? pullsFromFurther(situation, present, plan) : [],
    focused,
    ...choices,
  };
  const pulls = new Map(pullsFromStakes(situation).map((each) => [each.hole, each]));
  return { state, step: stakeStep(state), pulls };
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
function pullsFromStakes(situation: Situation): HolePulls[] {
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
