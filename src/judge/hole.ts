import type { HoleDepth } from '../build/index.ts';
import type { SitePoint } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { endName, thingName } from '../job/words.ts';
import type { Hole } from '../plan/hole.ts';
import { adviceFor } from './advice.ts';
import { wantedSincePour } from './after-pour.ts';
import { digGate } from './dig-gate.ts';
import { type DugJudgement, judgeDug } from './dug.ts';
import { judgeLevel } from './level.ts';
import { nudgeFor } from './nudge.ts';
import { judgePlumb } from './plumb.ts';
import { plumbNudgeFor } from './plumb-nudge.ts';
import { judgePosition, positionVerdict } from './position.ts';
import { pourGate } from './pour-gate.ts';
import { pouredAt } from './poured.ts';
import { quotedReadings } from './reading-words.ts';
import { judgeRoom } from './room.ts';
import { judgeSpacing, spacingVerdict } from './spacing.ts';
import { judgeTops } from './tops.ts';
import { judgeTwist } from './twist.ts';
import type { AssessedPlace, HoleAssessment, Judgement, Verdict } from './types.ts';
import { worstOf } from './verdict.ts';
import { type JobView, pointOf, postOf, stakeOf, stands } from './view.ts';
import { capital, listWords } from './words.ts';

/** What is said of the place of a thing, and of the set post as a whole, is said over all readings of the book. */
type Views = readonly [JobView, ...JobView[]];

/** Judgements of the places of all posts, for whoever stands beside them. */
export type PostPositions = ReadonlyMap<string, Judgement>;

export function postPositions(views: Views): PostPositions {
  const [view] = views;
  return new Map(
    view.holes.map(({ label }) => [
      label,
      agreedPosition(views, postOf(label), view.sited.get(label)?.site ?? null),
    ]),
  );
}

/**
 * All that is said of one hole.
 *
 * @param views the job as the readings have it, and as it would be without those that are believed wrong
 * @param baselineTrouble what is wrong with A–B, in words; null when nothing is
 */
export function assessHole(
  views: Views,
  hole: Hole,
  required: HoleDepth,
  posts: PostPositions,
  baselineTrouble: string | null,
): HoleAssessment {
  const [view] = views;
  const { label } = hole;
  const designed = view.sited.get(label)?.site ?? null;
  const stakePosition = agreedPosition(views, stakeOf(label), designed);
  const dug = judgeDug(view, label, required.depth, hole.holeDiameter);
  const pour = view.book.pours(label).at(-1)?.entry;
  const set = assessSet(views, hole, posts, pour !== undefined);
  const roomIn = (each: JobView) => judgeRoom(each, each.sited.get(label), dug.width.checked);
  const room = { ...roomIn(view), room: agreed(views, (each) => roomIn(each).room) };
  return {
    hole: label,
    designed,
    staked: {
      driven: view.book.standAt(stakeOf(label)) >= 0,
      at: placeOf(view, stakeOf(label)),
      position: stakePosition,
    },
    dug: { ...dugOf(dug, required.depth), ...room, shallower: required.lacks?.text ?? null },
    set,
    digGate: digGate(view, label, stakePosition, required, baselineTrouble),
    pourGate: pourGate(view, label, dug, set, baselineTrouble, required, room),
    poured: pour
      ? {
          at: pouredAt(pour),
          bags: pour.body.bags,
          readSince: wantedSincePour(view, label)?.length === 0,
        }
      : null,
  };
}

/**
 * A judgement that holds in every view, or else one that says what it hangs on.
 *
 * @param verdictIn the verdict in another view, where it can be had without the words
 */
function agreed(
  views: Views,
  judge: (view: JobView) => Judgement,
  verdictIn: (view: JobView) => Verdict = (view) => judge(view).verdict,
): Judgement {
  const [view, ...others] = views;
  const best = judge(view);
  return others.every((other) => verdictIn(other) === best.verdict) ? best : doubted(view, best);
}

/** The views whose heights differ: all come out of one levelling, which a misread tape leaves as it is. */
function levelViews([view, ...others]: Views): Views {
  return [view, ...others.filter(({ measured }) => measured.levelling !== view.measured.levelling)];
}

function doubted(view: JobView, best: Judgement): Judgement {
  const readings = quotedReadings(view, view.suspects);
  const again = readings.length === 1 ? 'looks misread: take it again' : 'may be misread: take them again';
  const why = `The verdict hangs on ${listWords(readings, 'or')}, which ${again} before anything is moved.`;
  if (best.verdict === 'unmeasured') return { ...best, why };
  const text = best.text.replace(/^[a-z]+/, 'unsure').replace(/(, unchecked)?$/, ', unchecked');
  return { ...best, verdict: 'unsure', checked: false, text, why };
}

function agreedPosition(views: Views, thing: Thing, designed: SitePoint | null): Judgement {
  return agreed(
    views,
    (view) => positionOf(view, thing, designed),
    (view) => positionVerdict(view, thing, designed),
  );
}

/** A position with the pull that would help it most named in its words. */
function positionOf(view: JobView, thing: Thing, designed: SitePoint | null): Judgement {
  const plain = judgePosition(view, thing, designed, '');
  const settled = plain.verdict !== 'unsure' && plain.checked;
  if (!designed || plain.verdict === 'unmeasured' || settled) return plain;
  const advice = adviceFor(view, thing, designed, plain.checked);
  return advice ? judgePosition(view, thing, designed, endName(advice.pull.from, view.plan)) : plain;
}

function placeOf(view: JobView, thing: Thing): AssessedPlace | null {
  const fix = pointOf(view, thing)?.fix;
  return fix ? { place: fix.place, covariance: fix.covariance, ellipse: fix.ellipse } : null;
}

function dugOf(
  { last, depth, width, aimDepth }: DugJudgement,
  requiredDepth: number | null,
): Omit<HoleAssessment['dug'], 'room' | 'middle' | 'shallower'> {
  const obstruction = last && last.body.obstruction !== 'none' ? last.body.obstruction : null;
  return { at: last?.at ?? null, requiredDepth, aimDepth, depth, width, obstruction };
}

function assessSet(views: Views, hole: Hole, posts: PostPositions, poured: boolean): HoleAssessment['set'] {
  const [view] = views;
  const post = postOf(hole.label);
  const position = posts.get(hole.label)!;
  const plumb = agreed(views, (each) => judgePlumb(each, hole.label));
  const levels = levelViews(views);
  const level = agreed(levels, (each) => judgeLevel(each, hole.label, hole.top));
  const spacing = spacingOf(views, hole, posts);
  // A spacing that is not known yet, or that waits for a neighbour to be put right, is no fault of this post.
  const own = spacing.filter(
    ({ verdict, to }) => verdict !== 'unmeasured' && !isTheirs(posts, hole.label, to),
  );
  const twist = judgeTwist(view, hole.label);
  // Nobody has to measure how a post is turned: only what was found out counts.
  const turned = twist?.verdict === 'out' ? [twist] : [];
  const judgements = [position, plumb, level, ...turned, ...own];
  const waiting = spacing.find(({ verdict, to }) => isWrong(verdict) && isTheirs(posts, hole.label, to));
  const sited = view.sited.get(hole.label);
  const surely = views.every((each) => positionVerdict(each, post, sited?.site ?? null) === position.verdict);
  return {
    done: stands(view, post),
    at: placeOf(view, post),
    position,
    plumb,
    level,
    tops: agreed(levels, (each) => judgeTops(each, hole.label)),
    twist,
    spacing,
    verdict: worstOf(judgements.map(({ verdict }) => verdict)),
    headline: headline(view, hole.label, judgements, spacing, waiting),
    nudge: sited && surely ? nudgeFor(view, sited, position, poured) : null,
    plumbNudge: sited ? plumbNudgeFor(view, sited, plumb, poured) : null,
  };
}

function spacingOf(views: Views, hole: Hole, posts: PostPositions): HoleAssessment['set']['spacing'] {
  const [view] = views;
  const here = view.sited.get(hole.label);
  return hole.neighbours.flatMap((to) => {
    const there = view.sited.get(to);
    if (!here || !there) return [];
    const first = seeToFirst(view, posts, [hole.label, to]);
    const judgement = agreed(
      views,
      (each) => judgeSpacing(each, here, there, first),
      (each) => spacingVerdict(each, here, there),
    );
    return [{ ...judgement, to }];
  });
}

const isWrong = (verdict: Verdict): boolean => verdict === 'out' || verdict === 'unsure';

/** Between a post in place and one that is not, a wrong spacing is the other one's fault. */
const isTheirs = (posts: PostPositions, here: string, there: string): boolean =>
  posts.get(here)?.verdict === 'in' && isWrong(posts.get(there)?.verdict ?? 'unmeasured');

/** Which of two posts is to be put right before their spacing means anything; null when both stand in place. */
function seeToFirst(view: JobView, posts: PostPositions, pair: readonly string[]): string | null {
  const wrong = pair.find((hole) => isWrong(posts.get(hole)?.verdict ?? 'unmeasured'));
  if (wrong === undefined) return null;
  const name = capital(thingName(postOf(wrong), view.plan));
  const what = posts.get(wrong)?.verdict === 'out' ? 'is out of place' : 'is not known to be in place';
  return `${name} ${what}: see to it first.`;
}

type Spacing = HoleAssessment['set']['spacing'][number];

/** In a sentence or two: the first thing that is wrong, or not guarded, or waits for a neighbour, or that all is well. */
function headline(
  view: JobView,
  hole: string,
  judgements: readonly Judgement[],
  spacing: readonly Spacing[],
  waiting: Spacing | undefined,
): string {
  const post = postOf(hole);
  const name = capital(thingName(post, view.plan));
  if (!stands(view, post)) return `${name} is not set yet.`;
  const worst = worstOf(judgements.map(({ verdict }) => verdict));
  const named = judgements.find(({ verdict }) => verdict === worst);
  if (worst !== 'in' && named) return named.why;
  const unguarded = judgements.find(({ checked }) => !checked);
  if (unguarded) return `${name} is in as far as measured. ${unguarded.why}`;
  if (waiting) return `${name} is in, but for its spacing. ${waiting.why}`;
  return `${name} is in: ${measuredWords(view, spacing)}`;
}

/** What was found in. A spacing that nobody has measured yet is not among it. */
function measuredWords(view: JobView, spacing: readonly Spacing[]): string {
  const waits = spacing.filter(({ verdict }) => verdict === 'unmeasured');
  if (spacing.length > 0 && waits.length === 0) return 'place, plumb, height and spacing.';
  const rest = 'place, plumb and height.';
  if (waits.length === 0) return rest;
  const names = listWords(waits.map(({ to }) => thingName(postOf(to), view.plan)));
  return `${rest} Its spacing to ${names} is not measured yet.`;
}
