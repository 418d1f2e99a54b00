import { distance, length, type SitePoint, scale, subtract } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import { thingName } from '../job/words.ts';
import type { Fix, Lack } from '../measure/types.ts';
import { METRES_PER_INCH } from '../units/index.ts';
import { chanceWithinDisc, principalAxes, sigmaAlong } from './chance.ts';
import { judged, unmeasured } from './judgement.ts';
import type { Judgement } from './types.ts';
import { type JobView, pointOf } from './view.ts';
import { capital, cellWords, listWords, moveWords, small } from './words.ts';

/**
 * A position is checked when no misreading that would go unseen could move it by more than its tolerance. Where that is
 * finer than the tape can guard, this holds instead: two thirds of an inch, which is how far a slip of one inch moves a
 * place that three well-spread pulls fix (a redundancy of a third each). Slips with a tape are whole marks, an inch or a
 * foot; a finer floor would ask for more pulls than a post has things to pull from.
 */
const UNSEEN_FLOOR = (2 / 3) * METRES_PER_INCH;
export const unseenAllowed = (tolerance: number): number => Math.max(tolerance, UNSEEN_FLOOR);

/** Offsets below this have no direction worth the name: a hundredth of a millimetre. */
const NO_OFFSET = 1e-5;

/**
 * A hole's stake or a set post held against the disc of the position tolerance about its designed place.
 *
 * @param designed null until the plan lies on the site
 * @param advice the pull that would help most, as the end of a sentence: `from post 4`; empty when nothing helps
 */
export function judgePosition(
  view: JobView,
  thing: Thing,
  designed: SitePoint | null,
  advice: string,
): Judgement {
  const tolerance = view.plan.tolerances.position.m;
  const point = pointOf(view, thing);
  if (!designed)
    return unmeasured('position', tolerance, 'Nothing can be placed yet: say where A and B stand first.');
  if (!point?.fix) return unmeasured('position', tolerance, lackWords(view, thing, point?.lack ?? null));
  const { fix } = point;
  // A pull that is believed wrong still pulls on the place, until it is struck or borne out.
  const doubted = view.suspectedThings.has(thingKey(thing));
  const found = chanceOfFix(fix, designed, tolerance);
  const name = capital(thingName(thing, view.plan));
  const { units } = view.plan;
  const allowed = small(tolerance, units);
  const once = advice === '' ? '' : ` Pull to it ${advice}.`;
  return judged(
    {
      quantity: 'position',
      ...found,
      tolerance,
      checked: view.measured.settled && !doubted && fix.unseenShift <= unseenAllowed(tolerance),
    },
    {
      cell: (verdict, error, uncertainty) => cellWords(verdict, error, uncertainty, units),
      out: () =>
        `${name} is ${small(found.error, units)} off its mark, and ${allowed} is allowed: it stands ${moveWords(fix.place, subtract(fix.place, designed), view.ground)}.`,
      unsure: () =>
        `${name} measures ${small(found.error, units)} off its mark, known to ± ${small(1.96 * found.sigma, units)}, and ${allowed} is allowed: it may be in or out.${once}`,
      unchecked: () =>
        doubted
          ? `A pull to ${lower(name)} looks misread: pull it again, and strike the wrong one.`
          : uncheckedWords(fix, name, units, once),
    },
  );
}

function uncheckedWords(fix: Fix, name: string, units: JobView['plan']['units'], once: string): string {
  if (Number.isFinite(fix.unseenShift))
    return `One misread pull could move ${lower(name)} by ${small(fix.unseenShift, units)} unseen.${once}`;
  return `Nothing guards the place of ${lower(name)}: one misread pull would move it unseen.${once}`;
}

const lower = (name: string): string => name.slice(0, 1).toLowerCase() + name.slice(1);

/** Chance, error and sigma of a place against its mark. All metres. */
export function chanceOfFix(
  fix: Pick<Fix, 'place' | 'covariance'>,
  designed: SitePoint,
  tolerance: number,
): { chance: number; best: () => number; error: number; sigma: number } {
  const offset = subtract(fix.place, designed);
  const error = distance(fix.place, designed);
  const sigma =
    error > NO_OFFSET
      ? sigmaAlong(fix.covariance, scale(offset, 1 / length(offset)))
      : principalAxes(fix.covariance).major;
  return {
    chance: chanceWithinDisc(offset, fix.covariance, tolerance),
    best: () => chanceWithinDisc({ x: 0, y: 0 }, fix.covariance, tolerance),
    error,
    sigma,
  };
}

/** Why a place is not known, and the pull that would make it so. */
export function lackWords(view: JobView, thing: Thing, lack: Lack | null): string {
  const name = thingName(thing, view.plan);
  const from = (lack?.pullFrom ?? []).map((other) => thingName(other, view.plan));
  switch (lack?.reason ?? 'no-pulls') {
    case 'no-pulls':
      return `${capital(name)} is not measured: pull to it from ${listWords(from.length > 1 ? from.slice(0, 2) : ['A', 'B'])}.`;
    case 'one-pull':
      return `One pull does not fix ${name}: pull to it from ${from[0] ?? 'another stake'} too.`;
    case 'in-line':
      return `The pulls to ${name} lie in one line and do not fix it: pull to it from ${from[0] ?? 'something that stands to the side'}.`;
    case 'not-connected':
      return `The pulls to ${name} start from things that are not fixed themselves: pull to it from ${from[0] ?? 'A'}.`;
  }
}
