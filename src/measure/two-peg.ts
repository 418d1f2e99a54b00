import type { Entry, EntryOf } from '../job/entry-schema.ts';
import { isKind } from '../job/log.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { rodSigma } from './sigma.ts';

/** What a two-peg test says of the level. */
export interface Collimation {
  /** The `two-peg` entry. */
  readonly entry: string;
  /** Rise of the line of sight, metres per metre: positive when the level looks up and so reads too much far away. */
  readonly slope: number;
  /** One sigma of `slope`. */
  readonly sigma: number;
  /**
   * - `true`: no more than its own four readings may be wrong by, so nothing is corrected
   * - `off`: readings are corrected where the sight is known, and doubted where it is not
   * - `unbelievable`: no level is so far off, so one of the four was misread; nothing is corrected
   */
  readonly says: 'true' | 'off' | 'unbelievable';
}

/** Fewer metres of difference between the two sights than this tell nothing of the line of sight. */
const LEAST_UNEQUAL_M = 1;

/** An error beyond this many of its own sigmas is taken as found: one true level in twenty is suspected by luck. */
const FOUND_FROM = 2;

/** A level that looks up or down by a hand's breadth in ten metres is not looked through twice: 10 mm in a metre. */
const BELIEVED_TO = 0.01;

/**
 * Collimation by the two-peg test. From midway both readings are wrong alike, so that their difference is true; from near
 * one peg it is wrong by the slope times the difference of the sights: c = ((a₂ − b₂) − (a₁ − b₁)) / (s_a − s_b), common
 * practice in levelling. Four readings make its sigma 2σ / |s_a − s_b|.
 *
 * @returns null where the second set-up stands about as far from both pegs, or a length is none: nothing follows then
 */
export function collimationOf(
  { id, body }: Pick<EntryOf<'two-peg'>, 'id' | 'body'>,
  instruments: Pick<Instruments, 'rodError'>,
): Collimation | null {
  const { middle, near, sights } = body;
  const unequal = sights.a.m - sights.b.m;
  const slope = (near.a.m - near.b.m - (middle.a.m - middle.b.m)) / unequal;
  if (Math.abs(unequal) < LEAST_UNEQUAL_M || !Number.isFinite(slope)) return null;
  const sigma = (2 * rodSigma(instruments)) / Math.abs(unequal);
  const off = Math.abs(slope) > FOUND_FROM * sigma;
  const says = Math.abs(slope) > BELIEVED_TO ? 'unbelievable' : off ? 'off' : 'true';
  return { entry: id, slope, sigma, says };
}

/** The tests of the level in a log, and which of them holds for what was read when. */
export class Collimations {
  readonly all: Collimation[] = [];
  readonly #orders: number[] = [];

  /** @param entries that stand, in order */
  constructor(entries: readonly Entry[], instruments: Pick<Instruments, 'rodError'>) {
    entries.forEach((entry, order) => {
      const collimation = isKind(entry, 'two-peg') ? collimationOf(entry, instruments) : null;
      if (!collimation) return;
      this.all.push(collimation);
      this.#orders.push(order);
    });
  }

  /** The last test before a reading, or the first one after it: a level is tested, and adjusted, between readings. */
  at(order: number): Collimation | null {
    const before = this.#orders.findLastIndex((test) => test < order);
    return this.all[Math.max(before, 0)] ?? null;
  }
}
