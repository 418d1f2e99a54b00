import {
  add,
  bearingOf,
  distance,
  type SitePoint,
  scale,
  subtract,
  unit,
  type Vec,
} from '../../geometry/point.ts';
import type { PullEnd, Thing } from '../../job/entry-schema.ts';
import { type LaidPlan, type SitedHole, touchOffset } from '../../plan/index.ts';
import { normalNoise } from './noise.ts';
import * as scenario from './scenario.ts';

/** What really stands in the orchard: known to this script alone. Metres, site frame. */
export interface Truth {
  readonly baseline: number;
  readonly stakes: ReadonlyMap<string, SitePoint>;
  readonly posts: ReadonlyMap<string, { readonly foot: SitePoint; readonly lean: Vec; readonly top: number }>;
  readonly holes: ReadonlyMap<string, SitedHole>;
}

/** Makes the truth from the plan: near it everywhere, but for one post. */
export function makeTruth(laid: LaidPlan): Truth {
  const noise = normalNoise(scenario.SEED);
  const spread = (sigma: number): Vec => ({ x: noise(sigma), y: noise(sigma) });
  const holes = new Map(laid.holes.map((hole) => [hole.label, hole]));
  const stakes = new Map(
    laid.holes.map(({ label, site }) => [label, add(site, spread(scenario.STAKE_SPREAD))]),
  );
  const posts = new Map(
    laid.holes.map(({ label, site, top }) => {
      const off =
        label === scenario.OUT_POST
          ? scale(unit(scenario.OUT_BEARING), scenario.OUT_BY)
          : spread(scenario.POST_SPREAD);
      const post = {
        foot: add(site, off),
        lean: spread(scenario.LEAN_SPREAD),
        top: top + noise(scenario.TOP_SPREAD),
      };
      return [label, post];
    }),
  );
  return { baseline: laid.baseline + scenario.BASELINE_OFF, stakes, posts, holes };
}

/** Where the middle of a thing really is, at the ground. */
function middleOf(truth: Truth, thing: Thing): SitePoint {
  if (thing.kind === 'stake') return thing.label === 'A' ? { x: 0, y: 0 } : { x: truth.baseline, y: 0 };
  const at =
    thing.kind === 'post'
      ? truth.posts.get(thing.hole)?.foot
      : thing.kind === 'hole-stake' && truth.stakes.get(thing.hole);
  if (!at) throw new RangeError(`Nothing stands at ${JSON.stringify(thing)}`);
  return at;
}

/** The true level distance between what the two ends of a tape touch, metres. */
export function trueDistance(truth: Truth, from: PullEnd, to: PullEnd): number {
  const [p, q] = [middleOf(truth, from.thing), middleOf(truth, to.thing)];
  return distance(touched(truth, from, p, q), touched(truth, to, q, p));
}

function touched(truth: Truth, end: PullEnd, at: SitePoint, other: SitePoint): SitePoint {
  const hole = end.thing.kind === 'post' ? truth.holes.get(end.thing.hole) : undefined;
  const offset = touchOffset(
    hole?.section ?? null,
    hole?.facing ?? 0,
    end.touch,
    bearingOf(subtract(other, at)),
  );
  if (!offset) throw new RangeError(`Nothing to touch at ${JSON.stringify(end)}`);
  return add(at, offset);
}
