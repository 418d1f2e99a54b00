import type { SitePoint, Vec } from '../geometry/point.ts';
import type { Instruments, Shape } from '../job/plan-schema.ts';
import type { LineInPlace, SitedHole } from '../plan/index.ts';
import type { Units } from '../units/index.ts';
import type { HolePulls } from './types.ts';

/** What is known when strings and ties are laid out. Site frame, metres. */
export interface StringsAsked {
  readonly shape: Shape;
  /** In the order of `holesOf`. */
  readonly holes: readonly SitedHole[];
  /** Where A and B stand. */
  readonly a: SitePoint;
  readonly b: SitePoint;
  readonly instruments: Instruments;
  readonly units: Units;
  /** Lines on the ground, site frame: no nail stands in a house or where none can stand, and no string runs through a house. */
  readonly lines?: readonly LineInPlace[];
}

/** A nail on a batter board, or an offset stake: where it goes, and what level tapes from A and from B then read. */
export interface NailPlace {
  readonly label: string;
  readonly site: SitePoint;
  /** As of a hole's stake; `hole` is the nail's label. */
  readonly pulls: HolePulls;
}

/** What a string is for: the centres of the posts, or one of their faces. */
export type StandsFor =
  | { readonly what: 'centres' }
  | {
      readonly what: 'faces';
      /** From the centres to the string: half the actual section and the gap, on one side. */
      readonly shift: Vec;
      readonly half: number;
      readonly gap: number;
    };

/** A string between two nails, over the centres (or past the faces) of the holes that it is for. */
export interface LaidString {
  /** `S1`. */
  readonly label: string;
  /** The first is the one nearer to A: the tape's zero end for the marks. */
  readonly nails: readonly [NailPlace, NailPlace];
  /** Nail to nail, level, metres. */
  readonly length: number;
  /** Where each hole lies along it, from the first nail. */
  readonly marks: readonly { readonly hole: string; readonly at: number }[];
  readonly standsFor: StandsFor;
  /** How far its middle hangs below its ends, metres. */
  readonly sag: number;
}

/** Two strings that cross over a hole's centre. */
export interface StringCrossing {
  readonly hole: string;
  /** Labels of the two that cross nearest to square. */
  readonly strings: readonly [string, string];
  /** At which they cross, radians, up to a right angle. */
  readonly angle: number;
}

export interface StringPlan {
  readonly strings: readonly LaidString[];
  readonly crossings: readonly StringCrossing[];
  /** Holes that no two strings cross well enough: no room for the nails. */
  readonly uncrossed: readonly string[];
}
