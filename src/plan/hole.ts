import type { PlanPoint, SitePoint } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';

/** Outline of what a hole holds, actual sizes in metres. */
export type Section =
  | { readonly kind: 'post'; readonly width: number; readonly depth: number }
  | { readonly kind: 'pier'; readonly diameter: number };

/** One designed place of a plan. SI throughout. */
export interface Hole {
  readonly label: string;
  readonly place: PlanPoint;
  readonly section: Section;
  /** Bearing that the front face looks to, radians anticlockwise from the plan's +x. */
  readonly facing: number;
  /** Target height of the top above the benchmark, metres. */
  readonly top: number;
  readonly holeDiameter: number;
  /** Labels of the holes next to it along the structure: those whose spacing is judged. */
  readonly neighbours: readonly string[];
}

/** Where a further reference stake or nail is meant to stand, with the plan laid on the site. */
export interface SitedReference {
  readonly thing: Extract<Thing, { kind: 'stake' | 'nail' }>;
  readonly site: SitePoint;
}

/** A hole with the plan laid on the site. `facing` is then anticlockwise from the site's +x. */
export interface SitedHole extends Omit<Hole, 'place'> {
  readonly site: SitePoint;
}
