import type { SitePoint, Vec } from '../geometry/point.ts';
import type { PullEnd, Thing } from '../job/entry-schema.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { Covariance } from '../measure/types.ts';
import type { SitedHole } from '../plan/index.ts';

/** Something that still stands and whose place is known. Site frame. */
export interface StandingThing {
  readonly thing: Thing;
  readonly place: SitePoint;
  readonly covariance: Covariance;
  /** What a post or pier is, with its place as measured; null for stakes and nails. */
  readonly post: SitedHole | null;
}

export interface RefindAsked {
  /** The centre that is looked for. */
  readonly target: Vec;
  readonly standing: readonly StandingThing[];
  readonly instruments: Instruments;
}

/** One tape of a way back. */
export interface RefindPull {
  readonly from: PullEnd;
  /** Level length to the centre, metres. */
  readonly expected: number;
}

/** Two tapes that meet at the centre. */
export interface TapesBack {
  readonly how: 'tapes';
  readonly pulls: readonly [RefindPull, RefindPull];
  /** Of a person who walks from the first thing to the second. */
  readonly side: 'left' | 'right';
  /** Between the tapes, radians, 0 to pi. */
  readonly angle: number;
  /** Expected error of the place found (root mean square), metres. */
  readonly error: number;
  /** A third tape that shows whether one of the two was misread; null when nothing else is in reach. */
  readonly proof: RefindPull | null;
}

/** A string between two things, and the place along it. */
export interface StringBack {
  readonly how: 'string';
  readonly from: Thing;
  readonly to: Thing;
  /** From the first, along the string, metres. */
  readonly station: number;
  /** Square off the string, metres, and to which side of a person who walks from the first to the second. */
  readonly offset: number;
  readonly side: 'left' | 'right' | 'on';
  readonly error: number;
}

/** Why there is no way back by two tapes. */
export type NoTapes = 'nothing-stands' | 'one-stands' | 'beyond-tape' | 'blocked' | 'in-line';

export interface Refound {
  readonly tapes: TapesBack | null;
  /** Why not, when there are none; null when there are. */
  readonly noTapes: NoTapes | null;
  readonly string: StringBack | null;
}
