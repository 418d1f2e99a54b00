import { requiredDepthOf } from '../../src/build/index.ts';
import { add, scale, unit } from '../../src/geometry/point.ts';
import type { Entry } from '../../src/job/entry-schema.ts';
import { assessHole, postPositions } from '../../src/judge/hole.ts';
import { situate } from '../../src/judge/situation.ts';
import type { HoleAssessment } from '../../src/judge/types.ts';
import { type JobView, postOf, readingsOfTheBook, viewOf } from '../../src/judge/view.ts';
import { HAND } from '../../src/judge/worth-a-push.ts';
import { setBookOf } from '../../src/screens/set/set-book.ts';
import { nextHole, type StepOf, stepsOf } from '../../src/screens/set/set-order.ts';
import type { SetChoices, SetStep } from '../../src/screens/set/step.ts';
import type { Draws } from './draws.ts';
import type { StudyPlan } from './plans.ts';
import { Readings } from './readings.ts';
import type { Yard } from './yard.ts';

/**
 * What the hand does besides, one sigma each way: a foot that is pushed tilts the post, a top that is pushed shifts its foot.
 * Guesses at common practice; how far a push ends off its aim is the tool's own guess, `HAND`.
 */
const BESIDES = { leanOfPush: 0.001, footOfTilt: 0.001 } as const;

/** What is asked of one post for longer than this goes round in a circle; so does one that is pushed so often. */
const MOST_STEPS = 400;

const SETUP = '1';
const CHOICES: SetChoices = { setup: SETUP, left: () => new Set() };

/** What became of a build: its field book, and how often each post was pushed. */
export interface Built {
  readonly log: readonly Entry[];
  readonly nudges: ReadonlyMap<string, number>;
  readonly readings: number;
  /** False when it was still asking after `MOST_STEPS`. */
  readonly ended: boolean;
}

/**
 * Sets a whole job by what the Set screen asks for and nothing else: stands each post, takes each reading, pushes what is
 * out the way that the card says, and goes on until nothing more is asked. Nothing is left as it is.
 */
export class Builder extends Readings {
  readonly #job: StudyPlan;
  readonly #yard: Yard;
  readonly #draws: Draws;
  readonly #nudges = new Map<string, number>();
  #readings = 0;

  constructor(job: StudyPlan, yard: Yard, draws: Draws) {
    super(job, yard, draws);
    this.#job = job;
    this.#yard = yard;
    this.#draws = draws;
  }

  build(): Built {
    this.write({ kind: 'plan', plan: this.#job.plan });
    this.write(this.#job.site);
    for (const label of ['A', 'B']) this.stands({ kind: 'stake', label }, 'driven');
    const ended = this.#followCards();
    return { log: this.log, nudges: this.#nudges, readings: this.#readings, ended };
  }

  /** @returns false when it did not come to an end */
  #followCards(): boolean {
    let at: string | null = null;
    for (let i = 0; i < MOST_STEPS * this.#job.laid.holes.length; i++) {
      const cards = new Cards(this.log);
      if (at === null || cards.stepOf(at).do === 'done') at = cards.next(at);
      if (at === null) return true;
      this.#do(cards.stepOf(at), cards.hole(at));
    }
    return false;
  }

  #do(step: SetStep, hole: HoleAssessment): void {
    const post = postOf(hole.hole);
    switch (step.do) {
      case 'stand':
        this.stands(post, 'set');
        break;
      case 'baseline':
      case 'pull':
      case 'tell':
        this.#read(() => this.pull(step.pull.from, step.pull.to));
        break;
      case 'plumb':
        this.#read(() => this.plumb(hole.hole, step.side));
        break;
      case 'rod':
        this.#read(() => this.rod(step.on, this.#heightOf(step.on)));
        break;
      case 'move':
        this.#push(step, hole);
        break;
      case 'doubt':
        this.#resolve(step, hole);
        break;
      case 'lay':
      case 'done':
        throw new RangeError(`The card of ${hole.hole} says ${step.do}`);
    }
  }

  #heightOf(on: Extract<SetStep, { do: 'rod' }>['on']): number {
    if (on.point === 'benchmark') return 0;
    if (on.point === 'top') return this.#yard.postOf(on.hole).top;
    throw new RangeError(`The card asks for no ${on.point}`);
  }

  #read(take: () => void): void {
    this.#readings++;
    take();
  }

  /** Pulls a doubted line again; of two that disagree strikes the one that everything else speaks against most. */
  #resolve(step: Extract<SetStep, { do: 'doubt' }>, hole: HoleAssessment): void {
    if (step.again === 'not-yet') this.#read(() => this.pull(step.pull.from, step.pull.to));
    else this.write({ kind: 'strike', entry: step.entry.id, reason: `Misread, at ${hole.hole}` });
  }

  #push(step: Extract<SetStep, { do: 'move' }>, { hole, set }: HoleAssessment): void {
    const { foot, lean, top } = HAND;
    const { leanOfPush, footOfTilt } = BESIDES;
    const still = { x: 0, y: 0 };
    this.#nudges.set(hole, (this.#nudges.get(hole) ?? 0) + 1);
    if (step.part === 'place') {
      if (!step.nudge) throw new RangeError(`${hole} is to be moved, and nobody says where to`);
      const by = scale(unit(step.nudge.bearing), step.nudge.distance);
      this.#yard.push(hole, {
        foot: add(by, this.#draws.spread(foot)),
        lean: this.#draws.spread(leanOfPush),
        top: 0,
      });
    } else if (step.part === 'plumb') {
      const nudge = set.plumbNudge;
      // Where readings are doubted the card says only: until the bubble is in the middle on two faces.
      const by = nudge
        ? scale(unit(nudge.bearing), nudge.distance / nudge.over)
        : scale(this.#yard.postOf(hole).lean, -1);
      this.#yard.push(hole, {
        foot: this.#draws.spread(footOfTilt),
        lean: add(by, this.#draws.spread(lean)),
        top: 0,
      });
    } else {
      this.#yard.push(hole, {
        foot: still,
        lean: still,
        top: this.#draws.normal(top) - (set.level.error ?? 0),
      });
    }
    this.stands(postOf(hole), 'nudged');
  }
}

/** The cards of the Set screen over one state of the log. Holes are judged when they are asked for: most steps ask for one. */
class Cards {
  readonly #view: JobView;
  readonly #views: readonly [JobView, ...JobView[]];
  readonly #positions: ReturnType<typeof postPositions>;
  readonly #stepOf: StepOf;
  readonly #known = new Map<string, HoleAssessment>();

  constructor(log: readonly Entry[]) {
    const view = viewOf(situate(log));
    if (!view) throw new RangeError('The field book has no plan');
    this.#view = view;
    this.#views = readingsOfTheBook(view);
    this.#positions = postPositions(this.#views);
    this.#stepOf = stepsOf(setBookOf(view), CHOICES);
  }

  hole(label: string): HoleAssessment {
    const known = this.#known.get(label) ?? this.#assess(label);
    this.#known.set(label, known);
    return known;
  }

  #assess(label: string): HoleAssessment {
    const hole = this.#view.holes.find((each) => each.label === label)!;
    return assessHole(this.#views, hole, requiredDepthOf(this.#view.plan, label), this.#positions, null);
  }

  stepOf(label: string): SetStep {
    return this.#stepOf(this.hole(label));
  }

  /** Where the main button leads from a post that is done; where the screen opens, once all round it are done. */
  next(after: string | null): string | null {
    const holes = this.#view.holes.map(({ label }) => this.hole(label));
    return nextHole(this.#view, holes, this.#stepOf, after) ?? nextHole(this.#view, holes, this.#stepOf);
  }
}
