import type { SitePoint, Vec } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import type { Levelling } from './heights.ts';

/** Covariance of a plane vector, square metres (or dimensionless for a lean). */
export interface Covariance {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** One-sigma error ellipse: half axes in metres, bearing of the long axis in radians anticlockwise from +x. */
export interface Ellipse {
  readonly semiMajor: number;
  readonly semiMinor: number;
  readonly bearing: number;
}

/** A place that the readings fix. */
export interface Fix {
  /** At the ground. */
  readonly place: SitePoint;
  readonly covariance: Covariance;
  readonly ellipse: Ellipse;
  /**
   * How far the worst misreading that would go unseen could move this place, metres (external reliability: Baarda,
   * "A testing procedure for use in geodetic networks", 1968). Infinity when a pull here has no spare to guard it.
   */
  readonly unseenShift: number;
}

/**
 * Why a place is not known, and what would make it so.
 *
 * - `no-pulls`: nothing was pulled to it during this stand
 * - `one-pull`: pulled from one place only
 * - `in-line`: what it was pulled from stands in one line with it, or in a line that leaves open on which side it is
 * - `not-connected`: what it was pulled from is not known itself
 */
export interface Lack {
  readonly reason: 'no-pulls' | 'one-pull' | 'in-line' | 'not-connected';
  /** Things to pull from, best first. Where there are no pulls yet, the first two are needed; else one is enough. */
  readonly pullFrom: readonly Thing[];
}

/** One thing during one stand. */
export interface MeasuredPoint {
  readonly thing: Thing;
  /** 1 for the first stand. */
  readonly stand: number;
  /** The last stand of its thing. */
  readonly current: boolean;
  readonly fix: Fix | null;
  readonly lack: Lack | null;
  /** Posts only: top's shift per metre of height, site frame; null when plumb was not read on two adjacent faces. */
  readonly lean: { readonly perMetre: Vec; readonly covariance: Covariance } | null;
}

/** What the adjustment says of one pull. */
export interface PullResult {
  readonly entry: string;
  /** Both ends are current stands. An older pull still serves the things that have not moved since. */
  readonly current: boolean;
  /** Metres, as that very tape would read, held as it was. */
  readonly predicted: number;
  /** Reading minus predicted, metres. */
  readonly residual: number;
  /** One sigma of the reading, metres. */
  readonly sigma: number;
  /** 0 (nothing guards it) to 1 (wholly guarded). */
  readonly redundancy: number;
  /** |residual| over its own sigma; 0 where redundancy is 0. */
  readonly standardised: number;
  /** Smallest misreading that would be noticed, metres: 4.13 sigma / sqrt(redundancy). */
  readonly smallestCaught: number;
}

/** What the adjustment says of one part of what was measured off a string; an offset is positive on the left. */
export interface OffsetResult extends PullResult {
  readonly part: 'station' | 'offset';
}

/**
 * Readings one of which is believed wrong: pulls, plumb readings or rod readings. More than one entry means that the
 * geometry cannot tell them apart; the likeliest is first.
 */
export interface Suspicion {
  readonly entries: readonly string[];
  /** Reading minus truth, metres, as estimated for the first. Of a plumb reading: of its offset, out positive. */
  readonly misreading: number;
}

/** A reading that stands in the log and could not be used. Never left out in silence. */
export interface Unused {
  readonly entry: string;
  /**
   * - `same-thing`: both ends touch one thing
   * - `not-in-plan`: the plan that stands has no such hole, so neither place nor size is known
   * - `no-size`: a face, corner or near side of something that has none (a stake, a nail; the corner of a round)
   * - `no-length`: a reading that no tape and no rod gives: zero, negative or beyond all bounds
   * - `level-and-not`: two heights compared, neither of them the higher, and a difference between them all the same
   * - `no-lean`: a plumb reading of more than 45°: that is no post
   * - `no-tape`: a pull with a tape that the plan does not list, or of which it says what cannot be
   */
  readonly reason:
    | 'same-thing'
    | 'not-in-plan'
    | 'no-size'
    | 'no-length'
    | 'no-lean'
    | 'level-and-not'
    | 'no-tape';
}

export interface GlobalTest {
  /** Weighted sum of squared residuals. */
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** Chance of so large a sum by luck alone. */
  readonly chance: number;
}

/** A stake that seems to stand elsewhere since some pull. */
export interface Move {
  readonly stake: Thing;
  /** The first pull that finds it elsewhere. */
  readonly since: string;
  /** From where it stood to where it stands, metres, site frame; null where the pulls since do not fix it. */
  readonly by: Vec | null;
  /** Of `by`, square metres. */
  readonly covariance: Covariance | null;
}

export interface Moves {
  /** Likeliest first; more than one means that the pulls do not tell which stake moved. */
  readonly moves: readonly Move[];
  /** One misread pull would explain the readings as well. */
  readonly orMisread: boolean;
  /** How many times as likely the first move is as what comes next to it, another stake's or one misread pull. */
  readonly odds: number;
}

/** A measured height above the benchmark. */
export interface MeasuredHeight {
  /** `top:3`, `ground:3`, `bottom:3`, `stake:A`, `turning-point:1`, `benchmark`. */
  readonly key: string;
  readonly height: number;
  readonly sigma: number;
  /** How far the worst misreading that would go unseen could move it, metres; Infinity while `unguarded` names any. */
  readonly unseenShift: number;
  /** Readings it hangs on that no spare one guards. */
  readonly unguarded: readonly string[];
}

export interface Measured {
  /** Of all stands, current or not. */
  readonly points: readonly MeasuredPoint[];
  readonly pulls: readonly PullResult[];
  /** Of each entry its station and its offset, as far as they were read. */
  readonly offsets: readonly OffsetResult[];
  readonly suspicions: readonly Suspicion[];
  readonly globalTest: GlobalTest;
  /** A stake that moved without anybody's saying so; null when nothing says so. */
  readonly moves: Moves | null;
  /** A–B as adjusted, metres, with its sigma; null until it is pulled. */
  readonly baseline: { readonly length: number; readonly sigma: number } | null;
  /** The same of the stakes that carry the site frame, which are others once A or B was driven again; metres. */
  readonly frameBaseline: number | null;
  /** A–B as the plan was laid, metres. */
  readonly designedBaseline: number | null;
  readonly heights: readonly MeasuredHeight[];
  /** The same test of the rod readings alone. */
  readonly heightsTest: GlobalTest;
  readonly levelling: Levelling;
  readonly unused: readonly Unused[];
  /** False when pulls contradict each other so badly that no best places could be found: then no place is to be trusted. */
  readonly settled: boolean;
}
