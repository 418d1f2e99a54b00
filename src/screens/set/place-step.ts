import type { SitePoint } from '../../geometry/point.ts';
import type { Thing } from '../../job/entry-schema.ts';
import { thingKey } from '../../job/log.ts';
import { adviceFor } from '../../judge/advice.ts';
import { restsOnGuessedLean } from '../../judge/guesses.ts';
import { possiblePulls, pullsInReach } from '../../judge/possible-pulls.ts';
import { type PullPlan, pullPlan } from '../../judge/pull-ends.ts';
import { settling } from '../../judge/settling.ts';
import type { HoleAssessment, Judgement, Nudge } from '../../judge/types.ts';
import { type JobView, pointOf, postOf, pullsBetween } from '../../judge/view.ts';
import type { SetBook } from './set-book.ts';
import { isToMakeSure, type Part, pouredAt, type SetStep } from './step.ts';

const ORIGIN: SitePoint = { x: 0, y: 0 };
const A: Thing = { kind: 'stake', label: 'A' };
const B: Thing = { kind: 'stake', label: 'B' };

/** @param expected as planned, metres */
export const baselinePull = (expected: number): PullPlan => ({
  from: { thing: A, touch: { at: 'nail' } },
  to: { thing: B, touch: { at: 'nail' } },
  expected,
});

/** The two pulls that set a post: from A and from B, to the faces that look towards them. */
export function stakePulls(view: JobView, hole: string, designed: SitePoint): PullPlan[] {
  const b: SitePoint = { x: view.measured.baseline?.length ?? view.laid?.baseline ?? 0, y: 0 };
  return [pullPlan(view, A, ORIGIN, postOf(hole), designed), pullPlan(view, B, b, postOf(hole), designed)];
}

/** What is still to be done about a post's place; null when that is known, guarded and right, or left as it is. */
export function placeStep(
  { view }: SetBook,
  hole: HoleAssessment,
  designed: SitePoint,
  left: ReadonlySet<Part>,
  doubt: () => SetStep | null,
): SetStep | null {
  const { position, nudge } = hole.set;
  const fixing = fixingPull(view, hole, designed);
  if (fixing) return { do: 'pull', pull: fixing, why: hole.poured ? AFTER_POUR : null };
  const doubted = doubt();
  if (doubted) return doubted;
  // Where its foot stands is known once its lean is: nothing is pushed on a guess.
  if (!hole.poured && restsOnGuessedLean(view, postOf(hole.hole))) return null;
  const move: SetStep | null = left.has('place')
    ? null
    : { do: 'move', part: 'place', nudge, rod: null, why: position.why };
  if (position.verdict === 'out' && (position.checked || hole.poured)) return move;
  if (isToMakeSure(view, hole, position) && nudge?.worthIt) return move;
  if (hole.poured || (position.verdict === 'in' && position.checked)) return null;
  const advised = advisedPull(view, hole, designed);
  if (advised) return { do: 'pull', pull: advised, why: position.why };
  if (!move || !isToMove(position, nudge)) return null;
  const again = position.checked ? null : unguardedPull(view, hole.hole, designed);
  return again ? { do: 'pull', pull: again, why: BEFORE_MOVING } : move;
}

/** What no further tape settles is pushed nearer to its mark while it can be: left so near the edge it may well be out. */
const isToMove = ({ verdict }: Judgement, nudge: Nudge | null): boolean =>
  verdict === 'out' || (verdict === 'unsure' && nudge !== null && nudge.worthIt);

/** The same line read more often than this repeats its own mistakes: what it does not settle waits for something to stand. */
const MOST_READINGS = 2;

/** The spare pull that helps most, as long as it is worth the walk. */
function advisedPull(view: JobView, { hole, set }: HoleAssessment, designed: SitePoint): PullPlan | null {
  const post = postOf(hole);
  const guarded = set.position.checked;
  if (guarded && !settling(view, post, designed).settled) return null;
  const advice = adviceFor(view, post, designed, guarded);
  if (!advice) return null;
  const readings = pullsBetween(view, advice.pull.from.thing, post).length;
  return readings < MOST_READINGS ? advice.pull : null;
}

const BEFORE_MOVING =
  'It measures out. Read this tape once more before it is moved: one misread tape would look just the same.';

/** Where nothing else guards a post: a tape to it that was read only once. Expected is what bears the first reading out. */
function unguardedPull(view: JobView, hole: string, designed: SitePoint): PullPlan | null {
  const post = postOf(hole);
  const at = pointOf(view, post)?.fix?.place ?? designed;
  const once = stakePulls(view, hole, at).filter((pull) => canPull(view, pull, post, designed));
  return once.find(({ from }) => pullsBetween(view, from.thing, post).length < MOST_READINGS) ?? null;
}

const AFTER_POUR = 'It is poured: whether it still stands where it did shows only in readings made since.';

/** The next pull that fixes the place: from A, from B, and where one of them cannot be pulled, from what stands in its stead. */
function fixingPull(view: JobView, { hole }: HoleAssessment, designed: SitePoint): PullPlan | null {
  const post = postOf(hole);
  const fromStakes = stakePulls(view, hole, designed).filter((pull) => canPull(view, pull, post, designed));
  const unread = fromStakes.find(({ from }) => !readSince(view, hole, from.thing));
  if (unread) return unread;
  const lack = pointOf(view, post)?.lack;
  if (!lack) return null;
  const wanted = new Set(lack.pullFrom.map(thingKey));
  const others = possiblePulls(view, post, designed).filter(({ before }) => before === 0);
  const best = others.find(({ from }) => wanted.has(thingKey(from))) ?? others[0];
  return best ? pullPlan(view, best.from, best.fromAt, post, designed) : null;
}

/** Within the tape, and no post in the way. Before A–B is pulled nothing more than the length is known. */
function canPull(view: JobView, { from, expected }: PullPlan, post: Thing, designed: SitePoint): boolean {
  if (expected > view.plan.instruments.tapeLength.m) return false;
  const key = thingKey(from.thing);
  return (
    pullsInReach(view, post, designed)
      .find((pull) => thingKey(pull.from) === key)
      ?.open() ?? true
  );
}

/** Whether a pull that counts was made between a post and something, since the pour where there was one. */
function readSince(view: JobView, hole: string, from: Thing): boolean {
  const since = pouredAt(view, hole);
  const pulls = pullsBetween(view, from, postOf(hole));
  if (since < 0) return pulls.length > 0;
  const fresh = new Set(view.entries.slice(since + 1).map(({ id }) => id));
  return pulls.some(({ entry }) => fresh.has(entry));
}
