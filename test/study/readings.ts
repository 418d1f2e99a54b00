import {
  type Body,
  type Entry,
  type Hold,
  type PullEnd,
  SIDES,
  type Side,
  type Thing,
} from '../../src/job/entry-schema.ts';
import { type Length, roundedLength } from '../../src/job/length.ts';
import { stepOf } from '../../src/units/index.ts';
import type { Draws } from './draws.ts';
import type { StudyPlan } from './plans.ts';
import type { Yard } from './yard.ts';

const STARTED = Date.UTC(2026, 4, 1, 8);
const BETWEEN_MS = 60_000;
/** Shares of the pulls between things at the ground that lie along the slope, by job. */
const ALONG_SLOPE = [0, 0.3, 0.6] as const;
/** Height of the level's line of sight above the benchmark, and the length the plumb level spans; metres. */
const SIGHT_M = 1.6;
const LEVEL_OVER_M = 1.2192;
/** Share of the posts on which plumb is read on two faces only. */
const TWO_FACES = 0.2;
/** A level tape touches a post at the ground where that is lower by less, metres. */
const AT_GROUND_M = 0.05;

/**
 * Whoever holds tape, level and rod, and writes the field book: the truth is read with the noise that the plan's instruments
 * state. A stated sigma is of the reading as it is logged, so what rounding to the tape's marks adds (step²/12) is part of
 * it and is not added once more.
 */
export class Readings {
  readonly log: Entry[] = [];
  readonly #job: StudyPlan;
  readonly #yard: Yard;
  readonly #draws: Draws;
  readonly #alongSlope: number;
  readonly #exact: boolean;

  /** @param exact true for readings without noise or rounding, as theory wants them */
  constructor(job: StudyPlan, yard: Yard, draws: Draws, exact = false) {
    this.#exact = exact;
    this.#job = job;
    this.#yard = yard;
    this.#draws = draws;
    this.#alongSlope = draws.pick(ALONG_SLOPE);
  }

  pull(from: PullEnd, to: PullEnd): void {
    if (this.#draws.happens(this.#alongSlope)) this.#pullAlong(from, to);
    else this.#pullLevel(from, to);
  }

  #pullAlong(from: PullEnd, to: PullEnd): void {
    const rise = this.#riseTo(from, to);
    const { rodError } = this.#job.plan.instruments;
    // Two rod readings give the rise.
    const read = Math.abs(rise + this.#noise(Math.SQRT2 * rodError.m));
    const hold = { how: 'slope', rise: this.length(read) } as const;
    this.#logPull(from, to, Math.hypot(this.#yard.levelBetween(from, to), rise), hold);
  }

  /** Held level from the higher ground; the lower end touches its post as high up, or is plumbed down to its nail. */
  #pullLevel(from: PullEnd, to: PullEnd): void {
    const rise = this.#riseTo(from, to);
    const [near, far] = [this.#raised(from, rise), this.#raised(to, -rise)];
    this.#logPull(near, far, this.#yard.levelBetween(near, far), { how: 'level' });
  }

  #raised(end: PullEnd, height: number): PullEnd {
    return end.thing.kind === 'post' && height > AT_GROUND_M ? { ...end, height: this.length(height) } : end;
  }

  #riseTo(from: PullEnd, to: PullEnd): number {
    return this.#yard.groundAt(to.thing) - this.#yard.groundAt(from.thing);
  }

  #logPull(from: PullEnd, to: PullEnd, true_: number, hold: Hold): void {
    const { tapeError, tapeErrorPerMetre } = this.#job.plan.instruments;
    const noise = this.#noise(Math.hypot(tapeError.m, tapeErrorPerMetre * true_));
    this.write({ kind: 'pull', from, to, reading: this.length(true_ + noise), hold });
  }

  plumbAll(hole: string): void {
    const faces = this.#draws.happens(TWO_FACES) ? SIDES.slice(0, 2) : SIDES;
    for (const side of faces) this.plumb(hole, side);
  }

  plumb(hole: string, side: Side): void {
    const over = this.length(LEVEL_OVER_M);
    const noise = this.#noise(this.#job.plan.instruments.plumbError * over.m);
    const read = this.#yard.leanPast(hole, side) * over.m + noise;
    const offset = this.length(Math.abs(read));
    const leans = offset.m === 0 ? 'none' : read > 0 ? 'out' : 'in';
    this.write({ kind: 'plumb', hole, side, offset, over, leans });
  }

  rod(on: Extract<Body, { kind: 'rod' }>['on'], height: number): void {
    const reading = SIGHT_M - height + this.#noise(this.#job.plan.instruments.rodError.m);
    this.write({ kind: 'rod', setup: '1', on, reading: this.length(reading) });
  }

  /** What is left of a stated sigma when the rounding that follows has its share. */
  #noise(sigma: number): number {
    if (this.#exact) return 0;
    const step = stepOf(this.#job.plan.units);
    return this.#draws.normal(Math.sqrt(sigma ** 2 - step ** 2 / 12));
  }

  length(m: number) {
    return this.#exact ? exactLength(m) : roundedLength(m, this.#job.plan.units);
  }

  stands(thing: Thing, event: 'driven' | 'set' | 'nudged'): void {
    this.write({ kind: 'stand', thing, event });
  }

  write(body: Body): void {
    const seq = this.log.length + 1;
    const at = new Date(STARTED + seq * BETWEEN_MS).toISOString();
    this.log.push({ id: `study-${String(seq).padStart(5, '0')}`, seq, at, body });
  }
}

/** A length whose text is as exact as its metres. */
const exactLength = (m: number): Length => ({ m, typed: String(m), units: 'm' });
