import { circlesMeet } from '../geometry/circles.ts';
import { add, cross, distance, length, scale, subtract, type Vec } from '../geometry/point.ts';
import type { Datum } from './datum.ts';
import { PER_NODE } from './model.ts';
import type { Network, PullReading } from './network.ts';
import type { OffsetReading } from './offset-rows.ts';

/** A–B when neither a pull nor the plan says how long it is; any length will do, as nothing then depends on it. */
const ANY_BASELINE_M = 5;

/**
 * Where the adjustment starts. Holes start at their planned places, which settles on which side of the stakes they are;
 * other stakes and nails, which have none, where their pulls meet.
 *
 * @param baseline planned A–B, metres, or null
 */
export function startState(network: Network, datum: Datum, baseline: number | null): Float64Array {
  const b = { x: startBaseline(network, datum, baseline), y: 0 };
  const places = network.nodes.map((node): Vec | null => {
    if (node.designed) return node.designed;
    if (node.key === 'stake:A') return { x: 0, y: 0 };
    return node.key === 'stake:B' ? b : null;
  });
  placeTheRest(network, places);
  const state = new Float64Array(places.length * PER_NODE);
  places.forEach((place, i) => {
    state[i * PER_NODE] = place!.x;
    state[i * PER_NODE + 1] = place!.y;
  });
  return state;
}

function startBaseline({ pulls }: Network, { a, b }: Datum, baseline: number | null): number {
  const readings = pulls.filter(({ from, to }) => (from === a && to === b) || (from === b && to === a));
  const lengths = readings.map(planLength).sort((p, q) => p - q);
  const middle = lengths[Math.floor(lengths.length / 2)];
  if (middle !== undefined && middle > 0) return middle;
  return baseline !== null && baseline > 0 ? baseline : ANY_BASELINE_M;
}

/** Centre to centre, as far as a reading tells before leans and faces are known. */
function planLength({ reading, rise, gap }: PullReading): number {
  return Math.sqrt(Math.max(reading * reading - rise * rise, 0)) + gap;
}

interface Known {
  readonly place: Vec;
  readonly reach: number;
}

/** Places what has no place yet, best-held first, until everything has one. */
function placeTheRest(network: Network, places: (Vec | null)[]): void {
  const waiting = new Set(network.nodes.filter((node) => !places[node.index]).map((node) => node.index));
  if (waiting.size === 0) return;
  const pullsOf = pullsByNode(network, waiting);
  const offsetsOf = (node: number) => network.offsets.filter(({ of }) => of === node);
  const middle = centroid(network.nodes.flatMap(({ designed }) => (designed ? [designed] : [])));
  while (waiting.size > 0) {
    const placed = [...waiting].filter((node) => {
      places[node] = offString(offsetsOf(node), places);
      return places[node] !== null;
    });
    for (const node of placed) waiting.delete(node);
    if (placed.length > 0) continue;
    let best: { node: number; known: Known[] } | null = null;
    for (const node of waiting) {
      const known = knownFrom(node, pullsOf.get(node)!, places);
      if (!best || known.length > best.known.length) best = { node, known };
    }
    if (!best) return;
    places[best.node] = placeFrom(best.known, middle, best.node);
    waiting.delete(best.node);
  }
}

/**
 * Where a station and an offset put a thing, once both ends of their string have places; a station alone, of which side
 * of the string is known, beside its string.
 */
function offString(rows: readonly OffsetReading[], places: readonly (Vec | null)[]): Vec | null {
  for (const { from, to, reading: station, part, side } of rows) {
    const [f, t] = [places[from], places[to]];
    if (part !== 'station' || !f || !t || distance(f, t) === 0) continue;
    const e = scale(subtract(t, f), 1 / distance(f, t));
    const offset = rows.find((row) => row.part === 'offset' && row.from === from && row.to === to);
    const off = offset ? offset.reading + offset.gap : side * BESIDE_STRING_M;
    return add(f, { x: station * e.x - off * e.y, y: station * e.y + off * e.x });
  }
  return null;
}

/** How far off its string a thing is taken to start, where nobody measured it, metres. */
const BESIDE_STRING_M = 1;

function pullsByNode({ pulls }: Network, wanted: ReadonlySet<number>): Map<number, PullReading[]> {
  const out = new Map([...wanted].map((node) => [node, [] as PullReading[]]));
  for (const pull of pulls) {
    out.get(pull.from)?.push(pull);
    out.get(pull.to)?.push(pull);
  }
  return out;
}

function knownFrom(node: number, pulls: readonly PullReading[], places: readonly (Vec | null)[]): Known[] {
  return pulls.flatMap((pull) => {
    const place = places[pull.from === node ? pull.to : pull.from];
    return place ? [{ place, reach: planLength(pull) }] : [];
  });
}

/** Pairs of tapes looked at for the best crossing: the first few partners are enough for a start. */
const PARTNERS_TRIED = 6;
/** Steps by which things that nothing ties down are kept off each other, metres. */
const APART_M = 0.37;

function placeFrom(known: readonly Known[], middle: Vec, index: number): Vec {
  const meeting = sharpestMeeting(known.slice(0, PARTNERS_TRIED));
  if (meeting) return betterOf(meeting, known, middle);
  const only = known[0];
  if (!only) return add(middle, { x: APART_M * (index + 1), y: APART_M });
  const toMiddle = subtract(middle, only.place);
  const way = length(toMiddle) > 0 ? scale(toMiddle, 1 / length(toMiddle)) : { x: 0, y: 1 };
  return add(only.place, scale(way, only.reach));
}

/** The two places where the best-crossing pair of tapes meets. */
function sharpestMeeting(known: readonly Known[]): readonly [Vec, Vec] | null {
  let best: readonly [Vec, Vec] | null = null;
  let sharpest = -1;
  known.forEach((first, i) => {
    for (const second of known.slice(0, i)) {
      const meeting = circlesMeet(first.place, first.reach, second.place, second.reach);
      if (!meeting) continue;
      const tapes = [subtract(meeting.left, first.place), subtract(meeting.left, second.place)] as const;
      const size = length(tapes[0]) * length(tapes[1]);
      const sharpness = size > 0 ? Math.abs(cross(tapes[0], tapes[1])) / size : 0;
      if (sharpness <= sharpest) continue;
      sharpest = sharpness;
      best = [meeting.left, meeting.right];
    }
  });
  return best;
}

/** The one that the other pulls fit better; where none tells, the one on the holes' side. */
function betterOf([p, q]: readonly [Vec, Vec], known: readonly Known[], middle: Vec): Vec {
  const misfit = (at: Vec) =>
    known.reduce((sum, { place, reach }) => sum + Math.abs(distance(at, place) - reach), 0);
  const difference = misfit(p) - misfit(q);
  if (Math.abs(difference) > SAME_FIT_M) return difference < 0 ? p : q;
  return distance(p, middle) <= distance(q, middle) ? p : q;
}

/** Two places whose misfits differ by less than this are not told apart by their pulls. */
const SAME_FIT_M = 0.02;

function centroid(points: readonly Vec[]): Vec {
  if (points.length === 0) return { x: 0, y: 1 };
  return scale(points.reduce(add, { x: 0, y: 0 }), 1 / points.length);
}
