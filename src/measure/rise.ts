import type { PullEnd, Thing } from '../job/entry-schema.ts';
import type { MeasuredHeight } from './types.ts';

/** How much higher one end of a tape is than the other, never negative, and one sigma of that; metres. */
export interface Rise {
  readonly rise: number;
  readonly sigma: number;
}

/**
 * The rise of a tape whose ends a level has read; null where it read only one of them, or neither.
 *
 * @param heightOf by key, as in `MeasuredHeight`
 */
export function riseBetween(
  heightOf: (key: string) => MeasuredHeight | undefined,
  from: PullEnd,
  to: PullEnd,
): Rise | null {
  const [low, high] = [from, to].map(({ thing }) => {
    const key = footKey(thing);
    return key === null ? undefined : heightOf(key);
  });
  if (!low || !high) return null;
  const rise = Math.abs(high.height + raisedBy(to) - low.height - raisedBy(from));
  return { rise, sigma: Math.hypot(low.sigma, high.sigma) };
}

/** What a tape's end stands on: a dug hole is touched at its foot, as far below the ground as it is deep. Of a nail nobody says. */
function footKey(thing: Thing): string | null {
  if (thing.kind === 'nail') return null;
  if (thing.kind === 'stake') return `stake:${thing.label}`;
  return `${thing.kind === 'dug-hole' ? 'bottom' : 'ground'}:${thing.hole}`;
}

/** Beyond any tape by far; keeps squares finite. */
export const BEYOND_ALL_TAPES_M = 1e5;

/** How far above the ground an end touched its post, metres; 0 of anything else. */
export const raisedBy = ({ thing, height }: PullEnd): number =>
  thing.kind === 'post' && height && Math.abs(height.m) < BEYOND_ALL_TAPES_M ? height.m : 0;
