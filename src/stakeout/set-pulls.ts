import { distance, type Vec } from '../geometry/point.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole } from '../plan/index.ts';
import { blocked } from './blocked.ts';
import { postEnd, stakeEnd, touchedLine, touchedPoint } from './ends.ts';
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
  const standing = holes.filter((other) => other.label !== hole.label && set.has(other.label));
  const possible = ({ pull, line, other }: Candidate) =>
    pull.expected <= instruments.tapeLength.m &&
    !blocked(
      ...line,
      standing.filter((third) => third !== other),
    );
  const pulls = [
    fromStake(hole, 'A', { x: 0, y: 0 }),
    fromStake(hole, 'B', { x: baseline, y: 0 }),
    ...standing.map((other) => between(hole, other)),
  ]
    .filter(possible)
    .map(({ pull }) => pull);
  const of = (wanted: PlannedPull['purpose']) => pulls.filter(({ purpose }) => purpose === wanted);
  return [...of('fix'), ...of('neighbour'), ...longest(of('across'))];
}

/** A pull, the line that the tape takes, and the post at its other end, if there is one. */
interface Candidate {
  readonly pull: PlannedPull;
  readonly line: readonly [Vec, Vec];
  readonly other: SitedHole | null;
}

function fromStake(hole: SitedHole, label: string, at: Vec): Candidate {
  const to = postEnd(hole, at);
  const touched = touchedPoint(hole, to, at);
  const pull = { purpose: 'fix', from: stakeEnd(label), to, expected: distance(at, touched) } as const;
  return { pull, line: [at, touched], other: null };
}

function between(hole: SitedHole, other: SitedHole): Candidate {
  const from = postEnd(hole, other.site);
  const to = postEnd(other, hole.site);
  const line = touchedLine(hole, from, other, to);
  const purpose = hole.neighbours.includes(other.label) ? 'neighbour' : 'across';
  return { pull: { purpose, from, to, expected: distance(...line) }, line, other };
}

/** The longest of some pulls, alone; none of none. */
function longest(pulls: readonly PlannedPull[]): PlannedPull[] {
  const most = Math.max(...pulls.map(({ expected }) => expected));
  return pulls.filter(({ expected }) => expected === most).slice(0, 1);
}
