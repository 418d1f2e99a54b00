import type { Entry, EntryOf, HeightPoint } from '../job/entry-schema.ts';
import { isKind } from '../job/log.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { rodSigma } from './sigma.ts';
import { type Collimation, Collimations } from './two-peg.ts';
import type { Unused } from './types.ts';

/** One equation of the levelling: reading = Σ factor × unknown, but for its error. */
export interface HeightRow {
  readonly entry: string;
  /** The set-up of the level, or the comparison, that it was read from. */
  readonly station: string;
  readonly terms: readonly (readonly [unknown: string, factor: number])[];
  /** The points it speaks of, first to last. */
  readonly points: readonly string[];
  /** Metres; of a rod held upside down it counts negative. */
  readonly reading: number;
  readonly variance: number;
}

export interface HeightRows {
  readonly rows: readonly HeightRow[];
  readonly collimations: readonly Collimation[];
  readonly unused: readonly Unused[];
}

export const BENCHMARK = 'benchmark';
const SETUP = 'setup ';
const COLLIMATION = 'collimation ';

/** Name of the unknown height of instrument of a set-up. */
const setupKey = (setup: string): string => SETUP + setup;
export const collimationKey = (entry: string): string => COLLIMATION + entry;
/** The set-up whose height of instrument an unknown is; null for any other. */
export const setupOf = (unknown: string): string | null =>
  unknown.startsWith(SETUP) ? unknown.slice(SETUP.length) : null;
export const isPoint = (unknown: string): boolean =>
  !unknown.startsWith(SETUP) && !unknown.startsWith(COLLIMATION);

/** `top:3`, `ground:3`, `bottom:3`, `stake:A`, `turning-point:1`, `benchmark`. */
export function heightKey(on: HeightPoint): string {
  if (on.point === 'benchmark') return BENCHMARK;
  return `${on.point}:${on.point === 'turning-point' || on.point === 'stake' ? on.label : on.hole}`;
}

/** No rod and no hose is longer by far; keeps squares finite. */
const BEYOND_M = 1000;

/**
 * How far away the rod is, root mean square, where nobody measured it and the level is known to look up or down: about
 * the width of a yard. A guess; it only ever adds doubt.
 */
const GUESSED_SIGHT_M = 10;

type Levelled = EntryOf<'rod'> | EntryOf<'difference'>;

/**
 * The equations of everything that still tells of what stands there now. What changed since counts no more: readings on a
 * post's top or on a stake from before its last stand, and all but the last on the bottom of a hole, which goes down with
 * every shovel.
 *
 * @param entries that stand, in order
 */
export function heightRows(entries: readonly Entry[], instruments: Instruments): HeightRows {
  const collimations = new Collimations(entries, instruments);
  const rows: HeightRow[] = [];
  const unused: Unused[] = [];
  for (const { entry, order } of stillValid(entries)) {
    const reason = cannotBeUsed(entry);
    if (reason) unused.push({ entry: entry.id, reason });
    else if (isKind(entry, 'rod')) rows.push(rodRow(entry, collimations.at(order), instruments));
    else if (isKind(entry, 'difference')) rows.push(differenceRow(entry, instruments));
  }
  return { rows, collimations: collimations.all, unused };
}

function cannotBeUsed({ body }: Levelled): Unused['reason'] | null {
  const size = body.kind === 'rod' ? body.reading.m : body.height.m;
  if (!(Math.abs(size) < BEYOND_M)) return 'no-length';
  if (body.kind === 'rod') return null;
  if (heightKey(body.from) === heightKey(body.to)) return 'same-thing';
  return body.higher === 'none' && size !== 0 ? 'level-and-not' : null;
}

/** reading = height of instrument + slope of the line of sight × sight − height of the point. */
function rodRow(
  { id, body }: EntryOf<'rod'>,
  level: Collimation | null,
  instruments: Instruments,
): HeightRow {
  const { setup, on, reading, sight, inverted } = body;
  const key = heightKey(on);
  const bad = level?.says === 'off' ? level : null;
  const corrected = bad !== null && sight !== undefined;
  const doubt = bad && !corrected ? bad.slope * GUESSED_SIGHT_M : 0;
  return {
    entry: id,
    station: setupKey(setup),
    terms: [
      [setupKey(setup), 1],
      ...(key === BENCHMARK ? [] : [[key, -1] as const]),
      ...(corrected ? [[collimationKey(bad.entry), sight.m] as const] : []),
    ],
    points: [key],
    reading: inverted ? -reading.m : reading.m,
    variance: rodSigma(instruments) ** 2 + doubt ** 2,
  };
}

/**
 * height of `to` − height of `from` = ± what was read. Each of its two marks is taken to be as good as a rod reading: our
 * choice, for nothing is said of hoses and lasers in the plan.
 */
function differenceRow({ id, body }: EntryOf<'difference'>, instruments: Instruments): HeightRow {
  const points = [heightKey(body.from), heightKey(body.to)];
  const signs = [-1, 1];
  const rise = body.higher === 'none' ? 0 : body.higher === 'to' ? body.height.m : -body.height.m;
  return {
    entry: id,
    station: `difference ${id}`,
    terms: points.flatMap((key, i) => (key === BENCHMARK ? [] : [[key, signs[i]!] as const])),
    points,
    reading: rise,
    variance: 2 * rodSigma(instruments) ** 2,
  };
}

interface InOrder {
  readonly entry: Levelled;
  readonly order: number;
}

function stillValid(entries: readonly Entry[]): InOrder[] {
  const found: InOrder[] = [];
  const since = new Map<string, number>();
  entries.forEach((entry, order) => {
    const { body } = entry;
    if (isKind(entry, 'rod') || isKind(entry, 'difference')) {
      found.push({ entry, order });
      for (const key of keysOf(entry)) if (key.startsWith('bottom:')) since.set(key, order);
    } else if (body.kind === 'stand') {
      if (body.thing.kind === 'post') since.set(`top:${body.thing.hole}`, order);
      if (body.thing.kind === 'stake') since.set(`stake:${body.thing.label}`, order);
    }
  });
  return found.filter(({ entry, order }) =>
    keysOf(entry).every((key) => order >= (since.get(key) ?? Number.NEGATIVE_INFINITY)),
  );
}

const keysOf = ({ body }: Levelled): string[] =>
  body.kind === 'rod' ? [heightKey(body.on)] : [heightKey(body.from), heightKey(body.to)];
