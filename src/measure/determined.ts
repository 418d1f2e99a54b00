import { bearingOf, distance, subtract, type Vec } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { LOOSE_M } from './adjust.ts';
import { ellipseOf } from './ellipse.ts';
import { type Images, SIDES_ALIKE } from './mirror.ts';
import { PER_NODE } from './model.ts';
import { type Node, nodesOf } from './network.ts';
import type { OffsetReading } from './offset-rows.ts';
import { clearlyNearer, type Sided } from './sides.ts';
import { tapeSigma } from './sigma.ts';
import { placeCovariance, placeOf, type Solution } from './solution.ts';
import type { Covariance, Ellipse, Lack } from './types.ts';

/** A place known no better than this, one sigma along the worst direction, is no place on a site of posts. Metres. */
const KNOWN_WITHIN_M = 1;

/**
 * A place must lie this many of its sigmas off the line of what it was pulled from. Nearer, the two meeting places of the
 * tapes run into each other: the distance equations are then too curved for an ellipse to mean anything.
 */
const CLEAR_OF_LINE = 4;

export interface Known {
  readonly place: Vec;
  readonly covariance: Covariance;
}

/** What is determined, by node: its place and covariance, or why not. */
export function determine(sided: Sided, instruments: Instruments): (Known | Lack)[] {
  const { solution } = sided;
  const { byNode: readings, network } = solution.model;
  const { placing: all } = network;
  const known = knownPlaces(sided);
  const advise = adviser(solution, known, instruments);
  return network.nodes.map((node) => {
    const found = known[node.index];
    if (found) return found;
    const own = readings[node.index]!.map((k): Bond => {
      const others = nodesOf(all[k]!).filter((other) => other !== node.index);
      return { others, part: 'part' in all[k]! ? all[k].part : 'length' };
    });
    return { reason: reasonOf(own, known), pullFrom: advise(node, own.length === 0) };
  });
}

export const isKnown = (one: Known | Lack): one is Known => 'place' in one;

function knownPlaces({ solution, eitherSide, images }: Sided): (Known | null)[] {
  return solution.model.network.nodes.map((node) => {
    const covariance = placeCovariance(solution, node.index);
    if (!covariance || eitherSide.has(node.index)) return null;
    const ellipse = ellipseOf(covariance);
    if (!(ellipse.semiMajor <= KNOWN_WITHIN_M)) return null;
    const place = placeOf(solution, node.index);
    return sideIsKnown(solution, images, node, ellipse) ? { place, covariance } : null;
  });
}

function sideIsKnown(solution: Solution, images: Images, node: Node, ellipse: Ellipse): boolean {
  const { datum, byNode } = solution.model;
  if (node.index === datum.a || node.index === datum.b) return true;
  if (bendAcross(solution, byNode[node.index]!, node.index, ellipse) > 1 / (2 * CLEAR_OF_LINE)) return false;
  const image = images.of(node.index);
  if (!image || image.misfit >= SIDES_ALIKE) return true;
  const place = placeOf(solution, node.index);
  // So near its image, and yet not in line with what it was pulled from: then the two are as good as one place.
  if (distance(place, image.place) / 2 < CLEAR_OF_LINE * ellipse.semiMajor) return true;
  const planned = node.designed ?? usualPlace(solution, node);
  return planned !== null && clearlyNearer(place, image.place, planned);
}

/** Tapes that all make less than this with one line, as a sine, are in line with each other. */
const IN_LINE_BELOW = 0.2;

/**
 * How far the distance equations bend over one sigma across tapes that are all nearly in line: half of sigma over the
 * distance from that line. 0 where the tapes are not in line.
 */
function bendAcross(
  solution: Solution,
  rows: readonly number[],
  node: number,
  { semiMajor, bearing }: Ellipse,
): number {
  const { evaluation, weights } = solution;
  const { pulls } = solution.model.network;
  const u = { x: Math.cos(bearing), y: Math.sin(bearing) };
  let straight = 0;
  let bent = 0;
  for (const k of rows) {
    const pull = pulls[k];
    const across = pull
      ? Math.abs(evaluation.direction[2 * k]! * u.x + evaluation.direction[2 * k + 1]! * u.y)
      : Math.abs(changeAlong(solution, k, node, u));
    if (across > IN_LINE_BELOW) return 0;
    straight += weights[k]! * across * across;
    // What was measured off a string bends by nothing for the thing itself, and by little for its ends.
    if (pull) bent += (weights[k]! * across) / (2 * Math.max(evaluation.distance[k]!, pull.sigma));
  }
  return straight > 0 ? (semiMajor * bent) / straight : Number.POSITIVE_INFINITY;
}

/** How much reading k changes as a node moves along u. */
function changeAlong({ model, evaluation }: Solution, k: number, node: number, u: Vec): number {
  const { starts, columns } = model.symbolic.pattern;
  let change = 0;
  for (let p = starts[k]!; p < starts[k + 1]!; p++) {
    if (columns[p] === model.unknownOf[node * PER_NODE]) change += evaluation.jacobian[p]! * u.x;
    if (columns[p] === model.unknownOf[node * PER_NODE + 1]) change += evaluation.jacobian[p]! * u.y;
  }
  return change;
}

/** A and B after a move are looked for near where they were. */
function usualPlace(solution: Solution, { key }: Node): Vec | null {
  if (key === 'stake:A') return { x: 0, y: 0 };
  return key === 'stake:B' ? placeOf(solution, solution.model.datum.b) : null;
}

/** A reading at a node: the other things that it depends on, and what it tells of them. */
interface Bond {
  readonly others: readonly number[];
  readonly part: 'length' | OffsetReading['part'];
}

function reasonOf(own: readonly Bond[], known: readonly (Known | null)[]): Lack['reason'] {
  const lines = new Set(own.map(({ others, part }) => `${part} ${others.join(' ')}`));
  if (lines.size === 0) return 'no-pulls';
  if (lines.size === 1) return 'one-pull';
  const firm = own.flatMap(({ others }) => (others.every((node) => known[node]) ? others : []));
  return new Set(firm).size >= 2 ? 'in-line' : 'not-connected';
}

/** More things to pull from than these are not weighed: stakes and nails come first then. */
const MOST_WEIGHED = 64;
const MOST_ADVISED = 4;
/** A stake or nail is preferred to a hole stake or post that would give this many times as good a place. */
const STAKE_PREFERRED = 1.5;

type Adviser = (node: Node, never: boolean) => Thing[];

/** Ranks the things that could be pulled from by the place that one more pull would give. */
function adviser(solution: Solution, known: readonly (Known | null)[], instruments: Instruments): Adviser {
  const { nodes } = solution.model.network;
  const firm = nodes.filter((node) => node.current && known[node.index]);
  const weighed = firm.length <= MOST_WEIGHED ? firm : firm.filter(isMark);
  return (node, never) => {
    const place = placeOf(solution, node.index);
    const others = weighed.filter((other) => other.index !== node.index && !isSameHole(other, node));
    const before = placeCovariance(solution, node.index) ?? loose();
    const first = never ? others.find(isMark) : undefined;
    const prior = first ? afterPull(before, place, known[first.index]!, instruments) : before;
    const ranked = others
      .filter((other) => other !== first)
      .map((other) => ({
        other,
        cost: costOf(afterPull(prior, place, known[other.index]!, instruments), other),
      }))
      .sort((p, q) => p.cost - q.cost)
      .map(({ other }) => other.thing);
    return (first ? [first.thing, ...ranked] : ranked).slice(0, MOST_ADVISED);
  };
}

const isMark = ({ thing }: Node): boolean => thing.kind === 'stake' || thing.kind === 'nail';

function isSameHole({ thing: a }: Node, { thing: b }: Node): boolean {
  return 'hole' in a && 'hole' in b && a.hole === b.hole;
}

const loose = (): Covariance => ({ xx: LOOSE_M * LOOSE_M, xy: 0, yy: LOOSE_M * LOOSE_M });

function costOf(covariance: Covariance, other: Node): number {
  return ellipseOf(covariance).semiMajor * (isMark(other) ? 1 : STAKE_PREFERRED);
}

/** Covariance of a place after one more pull from a known thing (rank-one update). */
function afterPull(c: Covariance, at: Vec, from: Known, instruments: Instruments): Covariance {
  const bearing = bearingOf(subtract(at, from.place));
  const e = { x: Math.cos(bearing), y: Math.sin(bearing) };
  const { covariance: f } = from;
  const reading = tapeSigma(distance(at, from.place), instruments);
  const own = f.xx * e.x * e.x + 2 * f.xy * e.x * e.y + f.yy * e.y * e.y;
  const gx = c.xx * e.x + c.xy * e.y;
  const gy = c.xy * e.x + c.yy * e.y;
  const s = gx * e.x + gy * e.y + own + reading * reading;
  return { xx: c.xx - (gx * gx) / s, xy: c.xy - (gx * gy) / s, yy: c.yy - (gy * gy) / s };
}
