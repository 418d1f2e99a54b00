import { distance } from '../../../geometry/point.ts';
import { toSite } from '../../../geometry/rigid.ts';
import type { Thing } from '../../../job/entry-schema.ts';
import { thingKey } from '../../../job/log.ts';
import { groundLinesOf, type Situation } from '../../../judge/situation.ts';
import type { NailPlace, StringPlan, StringsAsked } from '../../../stakeout/string-types.ts';
import { stringPlan } from '../../../stakeout/strings.ts';
import { stakePlaces } from '../../drawn-site.ts';
import { type Present, presentOf } from '../present.ts';
import { STAKE_A, STAKE_B } from '../stake-step.ts';

/** The job's strings, and what they were laid out by. */
export interface JobStrings {
  readonly asked: StringsAsked;
  readonly plan: StringPlan;
}

/** Strings for the holes as they lie on the site; null until they do. */
export function stringsOf(situation: Situation): JobStrings | null {
  const { plan, laid } = situation;
  const stakes = stakePlaces(situation);
  if (!plan || !laid || !stakes || laid.holes.length === 0) return null;
  const asked = {
    shape: plan.shape,
    holes: laid.holes,
    ...stakes,
    instruments: plan.instruments,
    units: plan.units,
    lines: groundLinesOf(situation).lines.map((line) => ({
      ...line,
      from: toSite(laid.motion, line.from),
      to: toSite(laid.motion, line.to),
    })),
  };
  return { asked, plan: stringPlan(asked) };
}

/** What a nail or an offset stake wants next: to be driven, then to be tied to A and to B. */
export type NailTask = 'drive' | 'from-a' | 'from-b' | 'done';

/** A nail that is meant to stand farther than this from where it is wanted now was wanted for another plan: two inches. */
const SAME_NAIL = 0.05;

/** @param present what stands; the nail counts as driven where it was meant to stand at this very place */
export function nailTask(
  { laid }: Pick<Situation, 'laid'>,
  present: Present,
  thing: Thing,
  { site }: NailPlace,
): NailTask {
  const meant = laid?.references.find((reference) => thingKey(reference.thing) === thingKey(thing));
  if (!meant || distance(meant.site, site) > SAME_NAIL || !present.stands(thing)) return 'drive';
  if (!present.pull(STAKE_A, thing)) return 'from-a';
  return present.pull(STAKE_B, thing) ? 'done' : 'from-b';
}

export const nailThing = ({ label }: NailPlace) => ({ kind: 'nail', label }) as const;
export const offsetStake = ({ label }: NailPlace) => ({ kind: 'stake', label }) as const;

export const presentIn = ({ entries }: Pick<Situation, 'entries'>): Present => presentOf(entries);
