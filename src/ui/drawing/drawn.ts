import type { Vec } from '../../geometry/point.ts';
import type { Ellipse } from '../../measure/types.ts';
import type { Section } from '../../plan/hole.ts';
import type { HoleLook } from '../mark-shapes.tsx';

/** A hole as the drawing wants it. Metres and radians anticlockwise from +x, in one frame for the whole drawing. */
export interface DrawnHole extends HoleLook {
  readonly label: string;
  readonly place: Vec;
  /** Drawn at its actual size where that is large enough to see. */
  readonly section?: Section;
  readonly facing?: number;
  readonly holeDiameter?: number;
  /** The hole that is worked on now. */
  readonly live?: boolean;
  /** One sigma; drawn exaggerated, and the drawing says by how much. */
  readonly ellipse?: Ellipse;
  /** Which way to push. Its length on the drawing means nothing. */
  readonly nudge?: { readonly bearing: number; readonly words: string };
}

/** A side of what a hole holds that is touched now, by the name that the words give it. */
export interface DrawnFace {
  readonly hole: string;
  /** Bearing that it looks to. */
  readonly bearing: number;
  /** `outer`, `clockwise`, `left`. */
  readonly name: string;
}

/** A tape from one place to another. `live`: being pulled now. `check`: a check pull. `string`: a string, no tape. */
export interface DrawnPull {
  readonly from: Vec;
  readonly to: Vec;
  readonly kind: 'live' | 'check' | 'string';
  /** `from A to stake 4`, for the text alternative. */
  readonly words: string;
}

/** A further stake or nail to pull to, by the letter that it is called by. */
export interface DrawnReference {
  readonly label: string;
  readonly place: Vec;
  /** Of a small nail among holes: a dot, whose label stands on the side away from here. */
  readonly awayFrom?: Vec;
}

/** A line on the ground: a boundary, a wall of a house, the edge of where stakes can stand. */
export interface DrawnLine {
  readonly name: string;
  readonly from: Vec;
  readonly to: Vec;
  /** It ends at its two points; other lines run on. */
  readonly wall: boolean;
  /** The side on which nothing can stand, of a person who walks from `from` to `to`. */
  readonly barred?: 'left' | 'right';
}

/** Everything on one drawing. */
export interface Drawn {
  readonly holes: readonly DrawnHole[];
  /** Reference stakes, when they have a place. The drawing is then turned as the user stands. */
  readonly stakes?: { readonly a: Vec; readonly b: Vec };
  /** Further stakes and nails. */
  readonly references?: readonly DrawnReference[];
  readonly pulls?: readonly DrawnPull[];
  /** Only what lies within `reach` of a place is shown, as large as it will go; without it all is shown. */
  readonly focus?: { readonly at: Vec; readonly reach: number };
  readonly faces?: readonly DrawnFace[];
  readonly lines?: readonly DrawnLine[];
  /** Bearing that the plan's front looks to; an arrow shows it. */
  readonly front?: number;
}
