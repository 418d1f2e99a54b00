import type { SitePoint } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import { thingName } from '../job/words.ts';
import type { Suspicion } from '../measure/types.ts';
import { adviceFor } from './advice.ts';
import { foresee, foreseeBaseline } from './foresight.ts';
import { baselinePull, pullThatTells } from './next-pull.ts';
import { beyondGuarding, beyondSettling, beyondSpacing, gainWords, inWords } from './next-words.ts';
import { judgePosition } from './position.ts';
import { pullsInReach } from './possible-pulls.ts';
import { type PullPlan, pullPlan } from './pull-ends.ts';
import { pullAgain, pullThatFixes } from './pull-that-fixes.ts';
import { MOST_TO_SETTLE, settling } from './settling.ts';
import { judgeSpacing, spacingVerdict } from './spacing.ts';
import type { BeyondPulls, HoleAssessment, Judgement, NextPull } from './types.ts';
import { type JobView, pointOf, postOf, stakeOf, stands } from './view.ts';

/** A plan for an hour; what comes after it is worked out anew from what was read. */
const MOST_PULLS = 24;
/** What to pull, in order, and what no pull can settle. */
export interface PullSequence {
  readonly pulls: readonly NextPull[];
  readonly beyond: readonly BeyondPulls[];
}

/** A thing whose position stands to be settled. */
interface Open {
  readonly thing: Thing;
  readonly designed: SitePoint;
}

/**
 * The pulls that would help the job most, each as if those before it had been read as predicted, until nothing is unsure
 * or unchecked or no pull can help (greedy; each step is a rank-one update). First what every place hangs on: A–B, then
 * suspected misreadings. Then the worst place among set posts not yet in concrete, their spacings, and the worst among stakes
 * not yet dug. What hangs on a stake that may have moved waits for that.
 */
export function pullSequence(
  view: JobView,
  suspicions: readonly Suspicion[],
  holes: readonly HoleAssessment[],
): PullSequence {
  if (!view.laid) return { pulls: [], beyond: [] };
  const plan = new Plan(view);
  plan.first(baselinePull(view), (ahead) => foreseeBaseline(ahead, view.laid!.baseline));
  for (const suspicion of suspicions)
    plan.first(pullThatTells(view, suspicion), (ahead, pull) => foresee(ahead, pull));
  plan.settle(openPosts(view, holes));
  plan.settleSpacings(holes);
  plan.settle(openStakes(view, holes));
  return plan;
}

function openPosts(view: JobView, holes: readonly HoleAssessment[]): Open[] {
  return holes.flatMap(({ hole, designed, poured }) =>
    designed && !poured && isOpen(view, postOf(hole)) ? [{ thing: postOf(hole), designed }] : [],
  );
}

function openStakes(view: JobView, holes: readonly HoleAssessment[]): Open[] {
  return holes.flatMap(({ hole, designed, dug }) =>
    designed && dug.at === null && isOpen(view, stakeOf(hole)) ? [{ thing: stakeOf(hole), designed }] : [],
  );
}

const isOpen = (view: JobView, thing: Thing): boolean =>
  stands(view, thing) && !view.shaken.things.has(thingKey(thing));

/** A plan as it grows, with the job as it would be known at its end. */
class Plan implements PullSequence {
  readonly pulls: NextPull[] = [];
  readonly beyond: BeyondPulls[] = [];
  readonly #now: JobView;
  #ahead: JobView;

  constructor(view: JobView) {
    this.#now = view;
    // The pulls that tell come first: by then what is suspected is struck, or borne out.
    this.#ahead = { ...view, suspects: new Set(), suspectedThings: new Set() };
  }

  get #full(): boolean {
    return this.pulls.length >= MOST_PULLS;
  }

  first(pull: NextPull | null, after: (ahead: JobView, pull: NextPull) => JobView): void {
    if (!pull || this.#full) return;
    this.pulls.push(pull);
    this.#ahead = after(this.#ahead, pull);
  }

  /** Worst first: unmeasured, unsure from the least chance up, then what only wants a guard. */
  settle(open: readonly Open[]): void {
    const waiting = new Map(open.map((each) => [thingKey(each.thing), { ...each, is: this.#judge(each) }]));
    while (!this.#full) {
      const worst = [...waiting.values()].reduce<(Open & { is: Judgement }) | null>(
        (most, each) => (needOf(each.is) > (most ? needOf(most.is) : 0) ? each : most),
        null,
      );
      if (!worst) return;
      const touched = this.#help(worst, worst.is);
      if (touched.length === 0) waiting.delete(thingKey(worst.thing));
      for (const key of touched) {
        const each = waiting.get(key);
        if (each) waiting.set(key, { ...each, is: this.#judge(each) });
      }
    }
  }

  /** @returns keys of what is better known now; none when no pull helps, which is then said */
  #help({ thing, designed }: Open, is: Judgement): string[] {
    if (is.verdict === 'unsure' && is.checked) return this.#tellVerdict({ thing, designed }, is);
    const pull =
      is.verdict === 'unmeasured'
        ? pullThatFixes(this.#ahead, thing, designed)
        : (adviceFor(this.#ahead, thing, designed, false)?.pull ?? pullAgain(this.#ahead, thing));
    if (pull) return this.#take(pull, { thing, designed });
    this.beyond.push({ thing, text: beyondGuarding(this.#ahead, thing) });
    return [];
  }

  /** Pulls for the sake of a verdict are worth the walk only if it is reached at the end of them. */
  #tellVerdict({ thing, designed }: Open, is: Judgement): string[] {
    const { pulls, ahead, settled } = settling(this.#ahead, thing, designed);
    if (!settled) {
      this.beyond.push({ thing, text: beyondSettling(this.#now, ahead, thing, is) });
      return [];
    }
    return pulls.flatMap((pull) => (this.#full ? [] : this.#take(pull, { thing, designed })));
  }

  #take(pull: PullPlan, { thing, designed }: Open): string[] {
    const before = this.#ahead;
    this.#ahead = foresee(before, pull);
    const then = judgePosition(this.#ahead, thing, designed, '');
    const guess = !pointOf(this.#now, thing)?.fix;
    this.pulls.push(inWords(this.#now, pull, gainWords(before, this.#ahead, thing, then, guess)));
    return [pull.from, pull.to].map((end) => thingKey(end.thing));
  }

  #judge({ thing, designed }: Open): Judgement {
    return judgePosition(this.#ahead, thing, designed, '');
  }

  /** Spacings between posts that stand in place, of which one at least is loose. */
  settleSpacings(holes: readonly HoleAssessment[]): void {
    const done = new Set<string>();
    for (const { hole, set, poured } of holes) {
      for (const { to } of set.spacing) {
        const other = holes.find((each) => each.hole === to);
        const pair = [hole, to].sort().join(' ');
        if (done.has(pair) || !other || (poured && other.poured)) continue;
        done.add(pair);
        this.#settleSpacing(hole, to);
      }
    }
  }

  #settleSpacing(hole: string, to: string): void {
    const [here, there] = [this.#now.sited.get(hole), this.#now.sited.get(to)];
    const ends = [postOf(hole), postOf(to)] as const;
    if (!here || !there || !ends.every((end) => this.#standsInPlace(end))) return;
    const verdictIn = (view: JobView) => spacingVerdict(view, here, there);
    if (verdictIn(this.#ahead) !== 'unsure') return;
    const name = ends.map((end) => thingName(end, this.#now.plan)).join(' to ');
    const pull = this.#pullBetween(ends);
    let ahead = this.#ahead;
    let count = 0;
    for (; pull && count < MOST_TO_SETTLE && verdictIn(ahead) === 'unsure'; count++)
      ahead = foresee(ahead, pull);
    const verdict = verdictIn(ahead);
    if (!pull || verdict === 'unsure') {
      const is = judgeSpacing(this.#ahead, here, there, null);
      this.beyond.push({ thing: ends[0], text: beyondSpacing(this.#now, ends, is) });
      return;
    }
    for (let i = 1; i <= count && !this.#full; i++) {
      const gain =
        i < count ? `it brings ${name} nearer to a verdict.` : `then ${name} is expected to be ${verdict}.`;
      this.pulls.push(inWords(this.#now, pull, gain));
    }
    this.#ahead = ahead;
  }

  #standsInPlace(post: Thing): boolean {
    const designed = 'hole' in post ? this.#now.sited.get(post.hole)?.site : undefined;
    if (!designed || !isOpen(this.#now, post)) return false;
    const { verdict, checked } = judgePosition(this.#ahead, post, designed, '');
    return verdict === 'in' && checked;
  }

  #pullBetween([one, other]: readonly [Thing, Thing]): PullPlan | null {
    const at = pointOf(this.#ahead, other)?.fix?.place;
    const found =
      at && pullsInReach(this.#ahead, other, at).find(({ from }) => thingKey(from) === thingKey(one));
    return at && found?.open() ? pullPlan(this.#ahead, one, found.fromAt, other, at) : null;
  }
}

/** Unmeasured first, then unsure from the least chance up, then what only wants a guard; 0 wants nothing. */
function needOf({ verdict, chance, checked }: Judgement): number {
  if (verdict === 'unmeasured') return 3;
  if (verdict === 'unsure') return 2 + (1 - (chance ?? 0)) / 2;
  return checked ? 0 : 1;
}
