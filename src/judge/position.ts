import { distance, length, type SitePoint, scale, subtract } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import { thingName } from '../job/words.ts';
import type { Fix, Lack } from '../measure/types.ts';
import { METRES_PER_INCH } from '../units/index.ts';
import { chanceWithinDisc, principalAxes, sigmaAlong } from './chance.ts';
import { guessWords } from './guesses.ts';
import { judged, unmeasured, verdictFound } from './judgement.ts';
import { shakenWords } from './moved-words.ts';
import { HALF_WIDTH_95 } from './normal.ts';
import type { Judgement, Verdict } from './types.ts';
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

/**
 * A stake need only bring the hole under the post, which has room in it: twice the post's tolerance. Our choice; held to
 * the post's own, two careful tapes from A and B would leave most stakes unsure.
 */
export const STAKE_ALLOWANCE = 2;

/** How far a hole's stake, or a set post, may be from its mark, metres. */
export function placeTolerance(view: JobView, thing: Thing): number {
  const { m } = view.plan.tolerances.position;
  return thing.kind === 'hole-stake' ? STAKE_ALLOWANCE * m : m;
}

/** Offsets below this have no direction worth the name: a hundredth of a millimetre. */
const NO_OFFSET = 1e-5;

/**
 * A hole's stake or a set post held against the disc of its tolerance about its designed place.
 *
 * @param designed null until the plan lies on the site
 * @param advice what the pull that would help most starts from: `post 4`; empty when nothing helps
 */
export function judgePosition(
  view: JobView,
  thing: Thing,
  designed: SitePoint | null,
  advice: string,
): Judgement {
  const tolerance = placeTolerance(view, thing);
  const point = pointOf(view, thing);
  if (!designed)
    return unmeasured('position', tolerance, 'Nothing can be placed yet: say where A and B stand first.');
  if (!point?.fix) return unmeasured('position', tolerance, lackWords(view, thing, point?.lack ?? null));
  const { fix } = point;
  // A reading that is believed wrong speaks against the place until it is struck or borne out.
  const doubted = view.suspectedThings.has(thingKey(thing));
  const shaken = view.shaken.things.has(thingKey(thing));
  const guarded = view.measured.settled && fix.unseenShift <= unseenAllowed(tolerance);
  const found = chanceOfFix(fix, designed, tolerance);
  const say: PlaceWords = { view, thing, fix, designed, advice, ...found };
  return judged(
    { quantity: 'position', ...found, tolerance, checked: guarded && !doubted && !shaken },
    {
      cell: (verdict, error, uncertainty) => cellWords(verdict, error, uncertainty, view.plan.units),
      out: () => outWords(say),
      unsure: () => withGuesses(say, unsureWords(say)),
      unchecked: (verdict) =>
        shaken
          ? shakenWords(view, thing)
          : doubted
            ? doubtedWords(say)
            : verdict === 'unsure'
              ? uncheckedWords(say)
              : withGuesses(say, uncheckedWords(say)),
    },
  );
}

/** As `judgePosition`, for whoever wants no words. */
export function positionVerdict(view: JobView, thing: Thing, designed: SitePoint | null): Verdict {
  const fix = designed && pointOf(view, thing)?.fix;
  return fix ? verdictFound(chanceOfFix(fix, designed, placeTolerance(view, thing))) : 'unmeasured';
}

/** What the sentences on a place are made of. */
interface PlaceWords {
  readonly view: JobView;
  readonly thing: Thing;
  readonly fix: Fix;
  readonly designed: SitePoint;
  readonly advice: string;
  readonly error: number;
  readonly sigma: number;
}

/** What is guessed is named beside the doubt that it makes; once, where a place is unsure and unchecked. */
function withGuesses({ view, thing }: PlaceWords, words: string): string {
  const guesses = guessWords(view, thing);
  return guesses === '' ? words : `${words} ${guesses}`;
}

function outWords({ view, thing, fix, designed, error }: PlaceWords): string {
  const { units } = view.plan;
  const allowed = placeTolerance(view, thing);
  const name = thingName(thing, view.plan);
  const way = moveWords(fix.place, subtract(fix.place, designed), view.ground, 'too far');
  const off = `${capital(name)} is ${small(error, units)} off its mark, and ${small(allowed, units)} is allowed: it stands ${way}.`;
  return thing.kind === 'hole-stake' ? `${off} Move it, and pull to it again.` : off;
}

function unsureWords({ view, thing, fix, designed, advice, error, sigma }: PlaceWords): string {
  const { units } = view.plan;
  const allowed = placeTolerance(view, thing);
  const known = small(HALF_WIDTH_95 * sigma, units);
  const off = `${capital(thingName(thing, view.plan))} measures ${small(error, units)} off its mark, known to ± ${known}, and ${small(allowed, units)} is allowed: it may be in or out.`;
  const cures = [
    ...(advice === '' ? [] : [`pull to it from ${advice}`]),
    // A move is worth naming only once the place is known better than it is off.
    ...(error > HALF_WIDTH_95 * sigma && !inConcrete(view, thing)
      ? [`move it ${moveWords(fix.place, subtract(designed, fix.place), view.ground)}`]
      : []),
  ];
  return cures.length === 0 ? off : `${off} ${capital(cures.join(', or '))}.`;
}

/** Nobody can move it any more. */
const inConcrete = (view: JobView, thing: Thing): boolean =>
  thing.kind === 'post' && view.book.pours(thing.hole).length > 0;

const doubtedWords = ({ view, thing }: PlaceWords): string =>
  `A pull to ${thingName(thing, view.plan)} looks misread: pull it again, and strike the wrong one.`;

function uncheckedWords({ view, thing, fix, advice }: PlaceWords): string {
  const name = thingName(thing, view.plan);
  const cure = advice === '' ? '' : ` Pull to it from ${advice}.`;
  if (!view.measured.settled)
    return 'The pulls contradict one another so badly that no place can be trusted: find the wrong one first.';
  if (Number.isFinite(fix.unseenShift))
    return `One misread pull could move ${name} by ${small(fix.unseenShift, view.plan.units)} unseen.${cure}`;
  return `Nothing guards the place of ${name}: one misread pull would move it unseen.${cure}`;
}

/** Chance, error and sigma of a place against its mark. All metres. */
interface Offness {
  readonly chance: number;
  readonly best: () => number;
  readonly error: number;
  readonly sigma: number;
}

/** Integrated once for each fix and mark: the place's own verdict, its spacings and the next pulls all ask. */
const known = new WeakMap<Fix, { designed: SitePoint; tolerance: number; off: Offness }>();

function chanceOfFix(fix: Fix, designed: SitePoint, tolerance: number): Offness {
  const before = known.get(fix);
  if (before && before.designed === designed && before.tolerance === tolerance) return before.off;
  const off = offnessOf(fix, designed, tolerance);
  known.set(fix, { designed, tolerance, off });
  return off;
}

function offnessOf(fix: Fix, designed: SitePoint, tolerance: number): Offness {
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
