import type { HeightPoint } from '../job/entry-schema.ts';
import { heightPointName, thingName } from '../job/words.ts';
import { rodSigma } from '../measure/sigma.ts';
import { chanceWithin } from './chance.ts';
import { topKey } from './level.ts';
import { MOST_TO_SETTLE } from './settling.ts';
import type { BeyondPulls, HoleAssessment, Judgement, NextHeight } from './types.ts';
import { verdictOf } from './verdict.ts';
import { type JobView, postOf } from './view.ts';
import { small } from './words.ts';

/** What to read with the rod, in order, and what no rod can settle. */
export interface HeightSequence {
  readonly heights: readonly NextHeight[];
  readonly beyond: readonly BeyondPulls[];
}

/**
 * The rod readings that would help the job most: for every post that stands in no concrete yet and whose top is not measured, is
 * unsure, or hangs on a reading that nothing guards. Not measured first, then unsure from the least chance up, then unguarded.
 * Each point once: what one top asks of the benchmark serves the next as well.
 */
export function nextHeights(view: JobView, holes: readonly HoleAssessment[]): HeightSequence {
  const open = holes
    .filter(({ set, poured }) => set.done && !poured && needOf(set.level) > 0)
    .sort((p, q) => needOf(q.set.level) - needOf(p.set.level));
  const heights = new Map<string, NextHeight>();
  const beyond: BeyondPulls[] = [];
  for (const { hole, set } of open) {
    const found = adviceFor(view, hole, set.level);
    if (found.length === 0) beyond.push({ thing: postOf(hole), text: beyondWords(view, hole, set.level) });
    for (const next of found) {
      const key = JSON.stringify([next.on, next.setup]);
      const before = heights.get(key);
      if (!before || next.times > before.times) heights.set(key, next);
    }
  }
  return { heights: [...heights.values()], beyond };
}

/** Out is to be cut or moved, not read again. */
function needOf({ verdict, chance, checked }: Judgement): number {
  if (verdict === 'unmeasured') return 3;
  if (verdict === 'unsure') return 2 + (1 - (chance ?? 0)) / 2;
  return verdict === 'in' && !checked ? 1 : 0;
}

function adviceFor(view: JobView, hole: string, level: Judgement): NextHeight[] {
  if (level.verdict === 'unmeasured') return [thatMeasures(view, hole)];
  if (!level.checked) return [thatGuards(view, hole)];
  return thatSettle(view, hole, level);
}

const topOf = (hole: string): HeightPoint => ({ point: 'top', hole });
const BENCHMARK: HeightPoint = { point: 'benchmark' };

/** The set-up from which a top was read last; else the last from which anything was; null before the level was set up. */
const setupOf = (view: JobView, hole: string): string | null =>
  view.book.tops(hole).at(-1)?.body.setup ?? lastSetup(view);

function lastSetup(view: JobView): string | null {
  const last = view.entries.findLast(({ body }) => body.kind === 'rod')?.body;
  return last?.kind === 'rod' ? last.setup : null;
}

/** The benchmark first, while the set-up does not hang on it. */
function thatMeasures(view: JobView, hole: string): NextHeight {
  const setup = setupOf(view, hole);
  const hangs = view.measured.levelling.setups.some(({ key }) => key === setup);
  return hangs
    ? inWords(view, topOf(hole), setup, 1, `then the height of ${nameOf(view, hole)} is known.`)
    : inWords(view, BENCHMARK, setup, 1, 'every height read from there hangs on it.');
}

/** The reading that is not guarded, once more; else the top itself, where two readings of it or of the benchmark disagree. */
function thatGuards(view: JobView, hole: string): NextHeight {
  const name = nameOf(view, hole);
  const unguarded = (view.heights.get(topKey(hole))?.unguarded ?? []).flatMap(
    (id) => view.levelled.get(id) ?? [],
  );
  const points = unguarded.flatMap(({ body }) => (body.kind === 'rod' ? [body] : []));
  const own = points.find(({ on }) => on.point === 'top' && on.hole === hole) ?? points[0];
  const gain =
    points.length === 0
      ? `it should tell which of the readings for ${name} is wrong.`
      : `it guards ${name} against a misread rod.`;
  return inWords(view, own?.on ?? topOf(hole), own?.setup ?? setupOf(view, hole), 1, gain);
}

/**
 * The rod on the top and on the benchmark, as often as settles the verdict if they read as predicted; none where that is too
 * often to be worth it. Of a height the top's own readings and the line of sight err apart: each gets the next reading while its
 * part of the variance is the greater (σ² / n becomes σ² / (n + 1)).
 */
function thatSettle(view: JobView, hole: string, { error, tolerance }: Judgement): NextHeight[] {
  const setup = setupOf(view, hole);
  const line = view.measured.levelling.setups.find(({ key }) => key === setup);
  const height = view.heights.get(topKey(hole));
  if (!height || !line || error === null) return [];
  const rod = rodSigma(view.plan.instruments) ** 2;
  let sight = line.sigma ** 2;
  let own = Math.max(height.sigma ** 2 - sight, 0);
  const times = { top: 0, benchmark: 0 };
  const verdict = () => {
    const sigma = Math.sqrt(sight + own);
    return verdictOf(chanceWithin(error, sigma, tolerance), chanceWithin(0, sigma, tolerance));
  };
  while (verdict() === 'unsure' && times.top + times.benchmark < MOST_TO_SETTLE) {
    if (own >= sight) {
      own = (own * rod) / (own + rod);
      times.top++;
    } else {
      sight = (sight * rod) / (sight + rod);
      times.benchmark++;
    }
  }
  const then = verdict();
  if (then === 'unsure') return [];
  const gain = `then ${nameOf(view, hole)} is expected to be ${then}.`;
  const nearer = times.top > 0 ? `it brings ${nameOf(view, hole)} nearer to a verdict.` : gain;
  return [
    ...(times.benchmark > 0 ? [inWords(view, BENCHMARK, setup, times.benchmark, nearer)] : []),
    ...(times.top > 0 ? [inWords(view, topOf(hole), setup, times.top, gain)] : []),
  ];
}

const TIMES = ['', 'once', 'twice', 'three times', 'four times'];

function inWords(
  view: JobView,
  on: HeightPoint,
  setup: string | null,
  times: number,
  gain: string,
): NextHeight {
  const where = setup === null ? '' : ` from set-up ${setup}`;
  const often = times > 1 ? `, ${TIMES[times] ?? `${times} times`}` : '';
  const text = `Read the rod on ${heightPointName(on, view.plan)}${where}${often}: ${gain}`;
  return { on, setup, times, text };
}

const nameOf = (view: JobView, hole: string): string => `the top of ${thingName(postOf(hole), view.plan)}`;

function beyondWords(view: JobView, hole: string, { error, tolerance }: Judgement): string {
  const { units } = view.plan;
  const off = `${small(error ?? 0, units)} too ${(error ?? 0) > 0 ? 'high' : 'low'}`;
  return `No rod reading can settle ${nameOf(view, hole)}: it measures ${off}, too near the ${small(tolerance, units)} that is allowed. Set it nearer to its height, or let whoever is responsible decide whether it may stay so.`;
}
