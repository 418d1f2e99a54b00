/** What the bag says of its own concrete, minutes; null where nobody has typed it. It is never guessed. */
export interface BagTimes {
  readonly working: number | null;
  readonly set: number | null;
}

/** `workable`: it can be pushed. `stiff`: it is to be left alone. `set`: it is hard. `unknown`: nobody typed what the bag says. */
export type PourStage = 'workable' | 'stiff' | 'set' | 'unknown';

export interface PourClock {
  readonly stage: PourStage;
  /** To the end of the stage, milliseconds; null where that is not known or does not come. */
  readonly left: number | null;
  /** Since the pour, milliseconds; never negative, though a clock may have been set back. */
  readonly since: number;
  /** Long enough ago for the look of the next day. */
  readonly nextDay: boolean;
}

const MINUTE_MS = 60_000;
/** Overnight: readings from so long after the pour on are those of the next day, milliseconds (common practice). */
export const NEXT_DAY_MS = 12 * 3600 * 1000;

/**
 * How far the concrete of one hole has come. Pure: what time it is, is asked at the edge.
 *
 * @param pouredAt milliseconds since 1970, as `now`
 */
export function pourClock(pouredAt: number, { working, set }: BagTimes, now: number): PourClock {
  const since = Math.max(0, now - pouredAt);
  const nextDay = since >= NEXT_DAY_MS;
  const at = (stage: PourStage, end: number | null): PourClock => ({
    stage,
    left: end === null ? null : end * MINUTE_MS - since,
    since,
    nextDay,
  });
  if (set !== null && since >= set * MINUTE_MS) return at('set', null);
  if (working === null) return at('unknown', null);
  return since < working * MINUTE_MS ? at('workable', working) : at('stiff', set);
}

/** Whole minutes, rounded down: a minute that has begun is not there any more. `1 h 05 min` from an hour up. */
export function minutesWords(ms: number): string {
  const minutes = Math.max(0, Math.floor(ms / MINUTE_MS));
  if (minutes < 60) return `${minutes} min`;
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')} min`;
}
