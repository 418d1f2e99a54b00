import type { PlanPoint } from '../geometry/point.ts';
import type { PullEnd } from '../job/entry-schema.ts';

/** How sharply two tapes fix a place. */
export interface Crossing {
  /** Angle between the tapes at the hole, radians, 0 to pi. */
  readonly angle: number;
  /** Root mean square of the distance from the true place, metres: sigma sqrt(2) / sin(angle) for equal tapes. */
  readonly drms: number;
  /** One sigma along the worst direction, metres. */
  readonly worstAxis: number;
  readonly grade: 'good' | 'fair' | 'poor';
}

/** What to pull for one hole's stake. Plan lengths are level. */
export interface HolePulls {
  readonly hole: string;
  readonly fromA: number;
  readonly fromB: number;
  /** Seen by a person who walks from A to B. */
  readonly side: 'left' | 'right' | 'on-line';
  /** Along A–B from A, and square off it (left is positive), metres. */
  readonly station: number;
  readonly offset: number;
  readonly crossing: Crossing;
  /** Fits the tape from both stakes. */
  readonly withinTape: boolean;
}

/** A pull that ought to be made, with what it should read. */
export interface PlannedPull {
  readonly purpose: 'fix' | 'across' | 'neighbour' | 'diagonal' | 'chord' | 'baseline';
  readonly from: PullEnd;
  readonly to: PullEnd;
  /** Level tape reading, metres. */
  readonly expected: number;
}

/** Where A and B would stand, and what that gives. */
export interface StakeChoice {
  readonly a: PlanPoint;
  readonly b: PlanPoint;
  readonly baseline: number;
  readonly perHole: readonly {
    readonly hole: string;
    readonly crossing: Crossing;
    readonly withinTape: boolean;
  }[];
  /** The hole that is fixed worst; null when the plan has no holes. */
  readonly worst: { readonly hole: string; readonly crossing: Crossing } | null;
  /** Short sentences on what is wrong with this choice: in a hole, beyond the tape, on the holes' line. */
  readonly objections: readonly string[];
}
