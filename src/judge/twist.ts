import type { EntryOf } from '../job/entry-schema.ts';
import { thingName } from '../job/words.ts';
import { type MeasuredTwist, twistOf } from '../measure/twist.ts';
import { TWIST } from '../plan/twist.ts';
import { chanceWithin } from './chance.ts';
import { angleWords } from './frame-words.ts';
import { judged, unmeasured } from './judgement.ts';
import { HALF_WIDTH_95 } from './normal.ts';
import { REPEATS_AGREE } from './plumb-repeats.ts';
import type { Judgement } from './types.ts';
import { type JobView, postOf } from './view.ts';
import { capital } from './words.ts';

/**
 * How far a square post is turned about itself, held against the plan's tolerance, two-sided. Nobody has to measure it; checked
 * when two readings agree.
 *
 * @returns null where the design does not care: of a round
 */
export function judgeTwist(view: JobView, hole: string): Judgement | null {
  const sited = view.sited.get(hole);
  if (sited?.section.kind !== 'post') return null;
  const tolerance = view.plan.tolerances.twist ?? TWIST.usual;
  const name = thingName(postOf(hole), view.plan);
  const readings = view.book.twists(hole);
  const found = readings.flatMap((entry) => twistIn(view, entry) ?? []);
  if (found.length === 0) return unmeasured('twist', tolerance, missingWords(name, readings.length > 0));
  const { turn, sigma } = meanOf(found);
  const way = turn > 0 ? 'anticlockwise' : 'clockwise';
  const back = turn > 0 ? 'clockwise' : 'anticlockwise';
  const off = `${capital(name)} is turned ${angleWords(turn)} ${way} seen from above`;
  const allowed = angleWords(tolerance);
  const guarded = found.length > 1;
  const apart = Math.max(...found.map((each) => Math.abs(each.turn - turn) / each.sigma)) > REPEATS_AGREE;
  return judged(
    {
      quantity: 'twist',
      chance: chanceWithin(turn, sigma, tolerance),
      best: () => chanceWithin(0, sigma, tolerance),
      error: turn,
      sigma,
      tolerance,
      checked: guarded && !apart,
    },
    {
      cell: (verdict, error, doubt) =>
        `${verdict}, ${angleWords(error)} ± ${angleWords(doubt)}${error === 0 ? '' : ` ${way}`}`,
      out: () => `${off}, and ${allowed} is allowed: turn it ${back} by as much.`,
      unsure: () =>
        `${off}, known to ± ${angleWords(HALF_WIDTH_95 * sigma)}, and ${allowed} is allowed: it may be in or out. Turn it a little ${back}, or measure it again.`,
      unchecked: () =>
        apart
          ? `The readings of how ${name} is turned do not agree: measure it again, and strike the wrong one.`
          : 'One misread edge would go unseen: measure how it is turned once more.',
    },
  );
}

/** One reading, and from where it was read: off which string, or from which place. */
interface TwistRead extends MeasuredTwist {
  readonly from: string;
}

function twistIn(view: JobView, { body }: EntryOf<'twist'>): TwistRead | null {
  const sited = view.sited.get(body.hole);
  if (!sited) return null;
  const found = twistOf(body, sited, view.measured, [...view.sited.values()], view.plan.instruments);
  const { from } = body;
  const ends = from.by === 'tape' ? [from.at] : [from.from, from.to];
  // A string is the same one from its other end.
  return (
    found && {
      ...found,
      from: ends
        .map((end) => JSON.stringify(end))
        .sort()
        .join(),
    }
  );
}

/** Weighted by how well each is known; where a string or a place lies makes no smaller doubt for being read from twice. */
function meanOf(found: readonly TwistRead[]): { readonly turn: number; readonly sigma: number } {
  const places = [...new Set(found.map(({ from }) => from))];
  const from = places.map((place) => {
    const alike = found.filter((each) => each.from === place);
    const own = weighted(
      alike.map(({ turn, sigma, common }) => ({ turn, variance: sigma ** 2 - common ** 2 })),
    );
    return { ...own, variance: own.variance + Math.max(...alike.map(({ common }) => common)) ** 2 };
  });
  const { turn, variance } = weighted(from);
  return { turn, sigma: Math.sqrt(variance) };
}

interface Weighted {
  readonly turn: number;
  readonly variance: number;
}

function weighted(each: readonly Weighted[]): Weighted {
  const weight = each.reduce((sum, { variance }) => sum + 1 / variance, 0);
  return {
    turn: each.reduce((sum, { turn, variance }) => sum + turn / variance, 0) / weight,
    variance: 1 / weight,
  };
}

const missingWords = (name: string, read: boolean): string =>
  read
    ? `What was measured of how ${name} is turned does not fit that face: was it another one, or another string?`
    : `How ${name} is turned is not measured.`;
