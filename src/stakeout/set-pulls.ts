import { distance, type Vec } from '../geometry/point.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole } from '../plan/index.ts';
import { blocked } from './blocked.ts';
import { postEnd, readingBetween, stakeEnd, touchedPoint } from './ends.ts';
import type { PlannedPull } from './types.ts';

/** What to pull to a set post, from where. */
export interface SetPullsInput {
  readonly hole: SitedHole;
  /** All holes of the plan as laid, this one too. */
  readonly holes: readonly SitedHole[];
  /** Labels of the holes whose posts are set. */
  readonly set: ReadonlySet<string>;
  /** A to B as it is, metres. */
  readonly baseline: number;
  readonly instruments: Instruments;
}

/**
 * Pulls that fix and prove one set post: from A and from B, then to the set neighbours, then across to the farthest set
 * post. Each says what the tape touches: the middle of the face that looks best to the other end, or the near side of a
 * round. `expected` is the level reading between those very points when everything stands as planned, metres.
 *
 * Pulls that the tape does not reach, or in whose way a set post stands, are left out.
 */
export function setPulls({ hole, holes, set, baseline, instruments }: SetPullsInput): PlannedPull[] {
  const standing = holes.filter(
    (other) => other !== hole && other.label !== hole.label && set.has(other.label),
  );
  const reach = instruments.tapeLength.m;
  const open = (pull: PlannedPull, p: Vec, q: Vec, passing: readonly SitedHole[]) =>
    pull.expected <= reach && !blocked(p, q, passing);
  const fixes = stakes(baseline)
    .map(({ label, at }) => ({ at, pull: fixPull(hole, label, at) }))
    .filter(({ at, pull }) => open(pull, at, hole.site, standing))
    .map(({ pull }) => pull);
  const between = standing
    .map((other) => ({ other, pull: betweenPull(hole, other) }))
    .filter(({ other, pull }) =>
      open(
        pull,
        hole.site,
        other.site,
        standing.filter((third) => third !== other),
      ),
    )
    .map(({ pull }) => pull);
  const far = between
    .filter(({ purpose }) => purpose === 'across')
    .reduce<PlannedPull[]>(
      (best, pull) => (best[0] && best[0].expected >= pull.expected ? best : [pull]),
      [],
    );
  return [...fixes, ...between.filter(({ purpose }) => purpose === 'neighbour'), ...far];
}

const stakes = (baseline: number) => [
  { label: 'A', at: { x: 0, y: 0 } },
  { label: 'B', at: { x: baseline, y: 0 } },
];

function fixPull(hole: SitedHole, label: string, at: Vec): PlannedPull {
  const to = postEnd(hole, at);
  return { purpose: 'fix', from: stakeEnd(label), to, expected: distance(at, touchedPoint(hole, to, at)) };
}

function betweenPull(hole: SitedHole, other: SitedHole): PlannedPull {
  const from = postEnd(hole, other.site);
  const to = postEnd(other, hole.site);
  const purpose = hole.neighbours.includes(other.label) ? 'neighbour' : 'across';
  return { purpose, from, to, expected: readingBetween(hole, from, other, to) };
}
