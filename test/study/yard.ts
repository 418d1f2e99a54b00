import { add, distance, dot, length, scale, subtract, unit, type Vec } from '../../src/geometry/point.ts';
import type { PullEnd, Side, Thing } from '../../src/job/entry-schema.ts';
import { SIDES } from '../../src/job/entry-schema.ts';
import { thingKey } from '../../src/job/log.ts';
import { GUESSED_LEAN } from '../../src/measure/sigma.ts';
import type { SitedHole } from '../../src/plan/index.ts';
import type { Draws } from './draws.ts';
import type { StudyPlan } from './plans.ts';

interface Post {
  readonly foot: Vec;
  /** Shift of the top per metre of height. */
  readonly lean: Vec;
  readonly top: number;
}

/** What a push does to a post: metres, and metres per metre. */
export interface Pushed {
  readonly foot: Vec;
  readonly lean: Vec;
  readonly top: number;
}

/**
 * How far past its tolerance anything may stand: four sigmas or more of how well it is measured. Within that, every place
 * is as likely as any other, which is what a chance of being within tolerance takes for granted.
 */
const BEYOND = { foot: 0.012, lean: 0.002, top: 0.006 } as const;
/** One sigma, each way, of how far hole stakes are driven off their marks; by job, metres. */
const STAKED_WITHIN_M = [0.002, 0.012] as const;

/** One sigma of A–B against the drawing, metres. */
const BASELINE_SIGMA_M = 0.005;
/** Steepest yard, metres per metre. */
const STEEPEST = 0.2;

/**
 * What really stands in a yard that slopes: places at the ground, leans and tops, site frame, metres. The tape's geometry
 * is worked out here anew, so that a fault in the tool's own cannot hide by being on both sides.
 */
export class Yard {
  readonly baseline: number;
  readonly #holes: ReadonlyMap<string, SitedHole>;
  readonly #places = new Map<string, Vec>();
  readonly #posts = new Map<string, Post>();
  readonly #grade: Vec;

  constructor({ laid, plan: { tolerances } }: StudyPlan, draws: Draws) {
    this.#holes = new Map(laid.holes.map((hole) => [hole.label, hole]));
    this.baseline = laid.baseline + draws.normal(BASELINE_SIGMA_M);
    this.#grade = scale(unit(draws.between(0, 2 * Math.PI)), draws.between(0, STEEPEST));
    this.#places.set('stake:A', { x: 0, y: 0 }).set('stake:B', { x: this.baseline, y: 0 });
    // C stands clear of the work, on the other side of A–B, where its two tapes cross about square.
    this.#places.set('stake:C', { x: this.baseline / 2, y: -this.baseline / 2 });
    const staked = draws.logBetween(...STAKED_WITHIN_M);
    for (const { label, site, top, section } of laid.holes) {
      const foot = add(site, draws.withinDisc(tolerances.position.m + BEYOND.foot));
      this.#places.set(`hole-stake:${label}`, add(site, draws.spread(staked)));
      this.#places.set(`post:${label}`, foot);
      // Nobody holds a level on a pier: it leans as much as the tool guesses where nothing was read.
      const lean =
        section.kind === 'pier'
          ? draws.spread(GUESSED_LEAN)
          : draws.withinDisc(tolerances.plumb + BEYOND.lean);
      const off = tolerances.level.m + BEYOND.top;
      this.#posts.set(label, { foot, lean, top: top + draws.between(-off, off) });
    }
  }

  /** Middle of a thing, at the ground. */
  placeOf(thing: Thing): Vec {
    const place = this.#places.get(thingKey(thing));
    if (!place) throw new RangeError(`Nothing stands at ${thingKey(thing)}`);
    return place;
  }

  /** Moves a thing, as a barrow does. */
  knock(thing: Thing, by: Vec): void {
    this.#places.set(thingKey(thing), add(this.placeOf(thing), by));
  }

  /** Moves a loose post: its foot by so much, its lean and the height of its top by so much more. */
  push(hole: string, { foot, lean, top }: Pushed): void {
    const before = this.postOf(hole);
    const after = { foot: add(before.foot, foot), lean: add(before.lean, lean), top: before.top + top };
    this.#posts.set(hole, after);
    this.#places.set(`post:${hole}`, after.foot);
  }

  postOf(hole: string): Post {
    const post = this.#posts.get(hole);
    if (!post) throw new RangeError(`No post stands at ${hole}`);
    return post;
  }

  /** Height of the ground under a thing. */
  groundAt(thing: Thing): number {
    return dot(this.#grade, this.placeOf(thing));
  }

  /** Lean out past a face. */
  leanPast(hole: string, side: Side): number {
    return dot(this.postOf(hole).lean, this.#outward(hole, side));
  }

  /** Level distance between what the two ends of a tape touch. */
  levelBetween(from: PullEnd, to: PullEnd): number {
    const [near, far] = [this.#touched(from), this.#touched(to)];
    return distance(near.at, far.at) - near.radius - far.radius;
  }

  #touched({ thing, touch, height }: PullEnd): { at: Vec; radius: number } {
    const middle = this.placeOf(thing);
    if (thing.kind !== 'post') return { at: middle, radius: 0 };
    const { section } = this.#holes.get(thing.hole)!;
    const raised = add(middle, scale(this.postOf(thing.hole).lean, height?.m ?? 0));
    if (touch.at === 'near-side' && section.kind === 'pier')
      return { at: raised, radius: section.diameter / 2 };
    if (touch.at !== 'face' || section.kind !== 'post')
      throw new RangeError(`The crew does not touch a ${section.kind} at its ${touch.at}`);
    const half = (touch.side === 'front' || touch.side === 'back' ? section.depth : section.width) / 2;
    return { at: add(raised, scale(this.#outward(thing.hole, touch.side), half)), radius: 0 };
  }

  #outward(hole: string, side: Side): Vec {
    return unit(this.#holes.get(hole)!.facing + (SIDES.indexOf(side) * Math.PI) / 2);
  }

  offMark(hole: string): number {
    return length(subtract(this.postOf(hole).foot, this.#holes.get(hole)!.site));
  }

  offHeight(hole: string): number {
    return this.postOf(hole).top - this.#holes.get(hole)!.top;
  }
}
