import { thingName } from '../job/words.ts';
import { variancesAgainstMean } from '../measure/height-tops.ts';
import { chanceWithin } from './chance.ts';
import { judged, unmeasured } from './judgement.ts';
import { isOfTop, topKey } from './level.ts';
import { HALF_WIDTH_95, normalCdf } from './normal.ts';
import { readingWords } from './reading-words.ts';
import type { Judgement, TopsAssessment } from './types.ts';
import { type JobView, postOf } from './view.ts';
import { capital, cellWords, listWords, small } from './words.ts';

/** A measured top, and how far it stands above its own target, metres. */
interface Top {
  readonly hole: string;
  readonly above: number;
}

/** What the tops agree on. */
interface CommonLevel {
  readonly tops: readonly Top[];
  /** Those that agree: the common level is their mean. */
  readonly members: readonly Top[];
  /** Metres above the targets. */
  readonly above: number;
  /** Of each top less the common level, square metres, by key. */
  readonly variances: ReadonlyMap<string, number>;
}

/** Two points always have a level between them; it takes two to be level with one another. */
const LEAST_TOPS = 2;
/** With fewer that agree, a misread top takes so much of the common level with it that it may go unseen. */
const LEAST_TO_GUARD = 3;

/** A mean of equal heights differs from them by rounding alone: a nanometre is no height. */
const ROUNDING_M = 1e-9;

const toleranceOf = ({ plan }: JobView): number => (plan.tolerances.tops ?? plan.tolerances.level).m;

/** Worked out once for each view, though every post asks. */
const known = new WeakMap<JobView, CommonLevel | null>();

function commonLevel(view: JobView): CommonLevel | null {
  const before = known.get(view);
  if (before !== undefined) return before;
  const found = findCommonLevel(view);
  known.set(view, found);
  return found;
}

/**
 * The level that most tops agree on: the mean of those within tolerance of the median. One post cut short then does not
 * drag down what the others are held against. Its covariances with every top come from the one solution of all heights.
 */
function findCommonLevel(view: JobView): CommonLevel | null {
  const tops = view.holes.flatMap(({ label, top }): Top[] => {
    const found = view.heights.get(topKey(label));
    return found ? [{ hole: label, above: found.height - top }] : [];
  });
  if (tops.length < LEAST_TOPS) return null;
  const middle = medianOf(tops.map(({ above }) => above));
  const near = tops.filter(({ above }) => Math.abs(above - middle) <= toleranceOf(view));
  const members = near.length > 0 ? near : tops;
  const above = members.reduce((sum, each) => sum + each.above, 0) / members.length;
  const variances = variancesAgainstMean(
    view.measured.levelling.tops,
    members.map(({ hole }) => topKey(hole)),
  );
  return { tops, members, above, variances };
}

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((p, q) => p - q);
  const half = sorted.length / 2;
  return (sorted[Math.ceil(half) - 1]! + sorted[Math.floor(half)]!) / 2;
}

/**
 * A top held against the other tops, two-sided: how far it stands from their common level, each taken from its own target.
 * Readings from one set-up share its height of instrument, which falls out, so this is known better than the height above
 * the benchmark. Checked when no misreading could move it against them unseen; one of the benchmark lifts all alike and counts
 * for nothing where all were read from one set-up.
 */
export function judgeTops(view: JobView, hole: string): Judgement {
  const tolerance = toleranceOf(view);
  const name = thingName(postOf(hole), view.plan);
  const common = commonLevel(view);
  const top = common?.tops.find((each) => each.hole === hole);
  if (!common || !top)
    return unmeasured('tops', tolerance, missingWords(name, view.heights.has(topKey(hole))));
  const apart = top.above - common.above;
  const error = Math.abs(apart) < ROUNDING_M ? 0 : apart;
  const sigma = Math.sqrt(common.variances.get(topKey(hole)) ?? Number.POSITIVE_INFINITY);
  const { units } = view.plan;
  const way = error > 0 ? 'high' : 'low';
  const unguarded = unguardedWords(view, hole, common);
  const off = `The top of ${name} is ${small(error, units)} ${error > 0 ? 'higher' : 'lower'} than the common level of the tops`;
  return judged(
    {
      quantity: 'tops',
      chance: chanceWithin(error, sigma, tolerance),
      best: () => chanceWithin(0, sigma, tolerance),
      error,
      sigma,
      tolerance,
      checked: unguarded === '',
    },
    {
      cell: (verdict, e, u) => cellWords(verdict, e, u, units) + (e === 0 ? '' : ` ${way}`),
      out: () => `${off}, and ${small(tolerance, units)} is allowed.`,
      unsure: () =>
        `${off}, known to ± ${small(HALF_WIDTH_95 * sigma, units)}, and ${small(tolerance, units)} is allowed: it may be in or out. Read the rod on it again, from the set-up that the others were read from.`,
      unchecked: () => unguarded,
    },
  );
}

function missingWords(name: string, read: boolean): string {
  return read
    ? `Whether ${name} is level with the others is not known until another top is measured.`
    : `The top of ${name} is not measured.`;
}

/**
 * Why a misreading might go unseen; empty when none could. What nothing guards counts by how differently it moves the top and
 * the common level: a misread benchmark lifts all alike, unless it lifts but the tops of its own set-up; one top among three
 * that agree takes a third of the common level with it, and of that so much.
 */
function unguardedWords(view: JobView, hole: string, { members }: CommonLevel): string {
  const moving = (each: string) => view.heights.get(topKey(each))?.unguarded ?? [];
  const own = new Set(moving(hole));
  const ofMembers = members.map((each) => new Set(moving(each.hole)));
  const open = [...new Set([...own, ...ofMembers.flatMap((ids) => [...ids])])].filter((id) => {
    const share = ofMembers.filter((ids) => ids.has(id)).length / members.length;
    return Math.abs((own.has(id) ? 1 : 0) - share) > 1 / LEAST_TO_GUARD;
  });
  const readings = open.flatMap((id) => view.levelled.get(id) ?? []);
  const holes = [hole, ...members.map((each) => each.hole)];
  const tops = [...new Set(holes)].filter((each) => readings.some((entry) => isOfTop(entry, each)));
  if (tops.length > 0) {
    const names = tops.map((each) => thingName(postOf(each), view.plan));
    return `A misread rod would go unseen: read it on the top of ${listWords(names)} once more.`;
  }
  const [between] = readings;
  if (between)
    return `Not all tops were read from one set-up, and “${readingWords(view, between)}” would go unseen if it were misread: take it once more.`;
  const suspected = [...view.suspects].some((id) => {
    const entry = view.levelled.get(id);
    return entry !== undefined && isOfTop(entry, hole);
  });
  return suspected ? 'A rod reading on it looks misread: read it again, and strike the wrong one.' : '';
}

/** Which top governs, and how far the tops are from level with one another. */
export function topsOf(view: JobView): TopsAssessment {
  const common = commonLevel(view);
  if (!common) return { common: null, highest: null, lowest: null, text: tooFewWords(view) };
  const sorted = [...common.tops].sort((p, q) => p.above - q.above);
  const from = ({ hole, above }: Top) => ({ hole, above: above - common.above });
  const [lowest, highest] = [from(sorted[0]!), from(sorted.at(-1)!)];
  return { common: common.above, highest, lowest, text: governsWords(view, common, highest, lowest) };
}

function tooFewWords(view: JobView): string {
  const read = view.holes.some(({ label }) => view.heights.has(topKey(label)));
  return read ? 'One top is measured: it takes two to be level with one another.' : 'No top is measured.';
}

function governsWords(view: JobView, { tops, variances }: CommonLevel, highest: Top, lowest: Top): string {
  const { units } = view.plan;
  const spread = highest.above - lowest.above;
  const among = variancesAgainstMean(view.measured.levelling.tops, [topKey(lowest.hole)]).get(
    topKey(highest.hole),
  );
  const sigma = Math.sqrt(among ?? Math.max(0, ...variances.values()));
  const count = `${tops.length} of ${view.holes.length} tops are measured`;
  if (!isMoreThanLuck(spread, sigma, tops.length)) return `${count}, and no two of them are known to differ.`;
  const name = (hole: string) => thingName(postOf(hole), view.plan);
  const above = `${capital(name(highest.hole))} stands highest, ${small(highest.above, units)} above their common level`;
  const below = `${name(lowest.hole)} lowest, ${small(lowest.above, units)} below it`;
  return `${count}. ${above}; ${below}: ${small(spread, units)} ± ${small(HALF_WIDTH_95 * sigma, units)} between them, each from its own height in the plan. Where all are cut to one line, ${name(lowest.hole)} governs.`;
}

/** The chance that is left to luck when two tops are said to differ: what a half-width of 95 % leaves. */
const BY_LUCK = 0.05;

/**
 * Whether the highest of some tops stands above the lowest by more than luck. The two are the farthest apart of all pairs, so
 * each pair has its share of the chance (Bonferroni). Of ten it asks 4.61 sigmas of one top; Tukey's studentised range, which
 * is exact for tops that are known alike and apart, asks 4.47 (from memory).
 */
function isMoreThanLuck(spread: number, sigma: number, tops: number): boolean {
  if (sigma === 0) return spread > 0;
  const pairs = (tops * (tops - 1)) / 2;
  return 2 * normalCdf(-spread / sigma) * pairs < BY_LUCK;
}

/** What the tops agree on, for whoever asks whether the benchmark is to blame: null before three agree. */
export function agreedTops(
  view: JobView,
): { readonly above: number; readonly holes: readonly string[] } | null {
  const common = commonLevel(view);
  if (!common || common.members.length < LEAST_TO_GUARD) return null;
  return { above: common.above, holes: common.members.map(({ hole }) => hole) };
}
