import { CRITICAL } from '../plan/luck.ts';
import type { HeightNetwork, SolvedHeights } from './height-network.ts';
import { BENCHMARK, type HeightRow } from './height-rows.ts';

/** A round of levels that comes back to a point it has been at. */
export interface LevelLoop {
  /** Keys of the points on the way, first and last the same. */
  readonly points: readonly string[];
  /** Set-ups of the level, and comparisons by hose or laser, on the way. */
  readonly stations: number;
  /** What the rises and falls sum to, metres: 0 in truth. Way round as `points`. */
  readonly misclosure: number;
  /** What it may sum to by luck, metres. */
  readonly allowance: number;
  /** The readings it is made of. */
  readonly entries: readonly string[];
}

/** What was read of one point from one station. */
interface Edge {
  readonly station: string;
  readonly point: string;
  /** Height of the line of sight less the point, less what was found of it: mean of the residuals, metres. */
  readonly value: number;
  readonly variance: number;
  readonly entries: readonly string[];
  /** Where in the log it was first read. */
  readonly order: number;
}

/**
 * Every independent loop of the levels, each the shortest way round through what was read first, with its misclosure and
 * an allowance of the form C = m √n for n set-ups (FGCS, Standards and Specifications for Geodetic Control Networks, 1984,
 * from memory). m is not of a class of survey but of this rod: two readings to a set-up, each with the sigma that the plan
 * states, to the 0.1 % point that all tests here use; so C = 3.29 σ √(2n), and less where a point was read twice.
 */
export function levelLoops(network: HeightNetwork, solved: SolvedHeights): LevelLoop[] {
  const edges = edgesOf(network, solved);
  const { above, closing } = spanningTree(edges);
  return closing.map((edge) => loopOf(edge, above));
}

interface Place {
  readonly row: HeightRow;
  readonly point: string;
  readonly order: number;
  readonly values: number[];
  /** Of one reading. */
  readonly variance: number;
  readonly entries: string[];
}

function edgesOf({ rows, variances }: HeightNetwork, { residual }: SolvedHeights): Edge[] {
  const byPlace = new Map<string, Place>();
  rows.forEach((row, k) => {
    // A comparison has no line of sight of its own: all of it is put on the point that it starts from.
    const own = row.points.length === 1 ? [residual[k]!] : [residual[k]!, 0];
    row.points.forEach((point, i) => {
      const place = `${row.station}\n${point}`;
      const seen = byPlace.get(place);
      if (seen) {
        seen.values.push(own[i]!);
        seen.entries.push(row.entry);
        return;
      }
      const variance = i === 0 ? variances[k]! : 0;
      byPlace.set(place, { row, point, order: k, values: [own[i]!], variance, entries: [row.entry] });
    });
  });
  return [...byPlace.values()].map(({ row, point, order, values, variance, entries }) => ({
    station: row.station,
    point,
    order,
    value: values.reduce((sum, value) => sum + value, 0) / values.length,
    variance: variance / values.length,
    entries,
  }));
}

/** By station or point: the edge by which the benchmark reaches it. */
type Above = ReadonlyMap<string, { readonly edge: Edge; readonly up: string }>;

/** Breadth first from the benchmark, so that the ways back to it are short; edges that it does not need close loops. */
function spanningTree(edges: readonly Edge[]): { readonly above: Above; readonly closing: readonly Edge[] } {
  const at = new Map<string, { readonly edge: Edge; readonly other: string }[]>();
  const put = (node: string, edge: Edge, other: string) => {
    const list = at.get(node);
    if (list) list.push({ edge, other });
    else at.set(node, [{ edge, other }]);
  };
  for (const edge of edges) {
    put(edge.station, edge, edge.point);
    put(edge.point, edge, edge.station);
  }
  const above = new Map<string, { edge: Edge; up: string }>();
  const reached = new Set([BENCHMARK]);
  for (const node of reached) {
    for (const { edge, other } of at.get(node) ?? []) {
      if (reached.has(other)) continue;
      reached.add(other);
      above.set(other, { edge, up: node });
    }
  }
  const used = new Set([...above.values()].map(({ edge }) => edge));
  return { above, closing: edges.filter((edge) => !used.has(edge)) };
}

function loopOf(closing: Edge, above: Above): LevelLoop {
  const out = wayUp(closing.point, above);
  const back = wayUp(closing.station, above);
  while (out.length > 0 && back.length > 0 && out.at(-1) === back.at(-1)) {
    out.pop();
    back.pop();
  }
  // From where the two ways part, down to the point, over to the station, and up again.
  const round = [...out.reverse(), closing, ...back];
  const inOrder = asWalked(round);
  const points = inOrder.flatMap(({ point }, i) => (i % 2 === 0 ? [point] : []));
  // Edges come in pairs about a station: sight back, sight on. The rise of a pair is backsight less foresight.
  const misclosure = inOrder.reduce((sum, { value }, i) => sum + (i % 2 === 0 ? value : -value), 0);
  const variance = inOrder.reduce((sum, edge) => sum + edge.variance, 0);
  return {
    points: [...points, points[0]!],
    stations: inOrder.length / 2,
    misclosure,
    allowance: CRITICAL * Math.sqrt(variance),
    entries: [...new Set(inOrder.flatMap(({ entries }) => entries))],
  };
}

/** Edges from a node to the benchmark. */
function wayUp(node: string, above: Above): Edge[] {
  const out: Edge[] = [];
  for (let step = above.get(node); step; step = above.get(step.up)) out.push(step.edge);
  return out;
}

/**
 * The loop from the benchmark, where it passes that, in the order in which it was first read. Edges pair about a station: the
 * first of each pair leaves a point.
 */
function asWalked(round: readonly Edge[]): readonly Edge[] {
  const [one, other] = [fromStart(round), fromStart([...round].reverse())];
  return one[0]!.order <= other[0]!.order ? one : other;
}

function fromStart(round: readonly Edge[]): readonly Edge[] {
  const leaves = (i: number) => round[i]!.station === round[(i + 1) % round.length]!.station;
  const starts = round.map((_, i) => i).filter(leaves);
  const start = starts.find((i) => round[i]!.point === BENCHMARK) ?? starts[0]!;
  return [...round.slice(start), ...round.slice(0, start)];
}
