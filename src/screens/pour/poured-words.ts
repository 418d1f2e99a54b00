import { shiftsSincePour, shiftWords, sincePour, wantedSincePour } from '../../judge/after-pour.ts';
import { minutesWords, NEXT_DAY_MS, type PourClock, pourClock } from '../../judge/pour-clock.ts';
import type { JobView } from '../../judge/view.ts';

/** Where a poured hole stands: its clock, and what is still to be read of its post. */
export interface Poured {
  readonly clock: PourClock;
  /** Still to be read since the pour: `the tapes`, `plumb`. */
  readonly wants: readonly string[];
  /** The look of the next day is due, and was not had. */
  readonly dueNextDay: boolean;
  /** What moved since the pour, in words; empty where nothing did. */
  readonly shifted: string;
}

/** @returns null before the hole is poured */
export function pouredState(view: JobView, hole: string, now: number): Poured | null {
  const since = sincePour(view, hole);
  if (!since) return null;
  const { supplies } = view.plan;
  const times = { working: supplies?.workingTime ?? null, set: supplies?.setTime ?? null };
  const clock = pourClock(since.pouredAt, times, now);
  const newest = Math.max(since.place ?? 0, since.plumb ?? 0, since.top ?? 0);
  return {
    clock,
    wants: wantedSincePour(view, hole) ?? [],
    dueNextDay: clock.nextDay && newest < since.pouredAt + NEXT_DAY_MS,
    shifted: shiftWords(view, hole, shiftsSincePour(view, hole)),
  };
}

/** How far the concrete has come, and what that means for the post. */
export function clockWords({ stage, left }: PourClock): string {
  switch (stage) {
    case 'workable':
      return `It can be pushed for ${minutesWords(left ?? 0)} more, by the working time that you typed.`;
    case 'stiff':
      return `Its working time is over: leave it alone${left === null ? '' : ` until it is set, in ${minutesWords(left)}`}.`;
    case 'set':
      return 'It is set, by the time that you typed: it cannot be pushed any more.';
    case 'unknown':
      return 'How long it can be pushed stands on the bag, and nobody has typed it.';
  }
}

/** What is to be done about a post that measures wrong in its concrete. */
export function outInConcrete({ stage }: PourClock): string {
  switch (stage) {
    case 'workable':
      return 'Push it now, while it can be pushed, and measure it again.';
    case 'unknown':
      return 'While the concrete is wet it can still be pushed; after that whoever is responsible decides.';
    default:
      return 'It is too late to push it: what is to be done is a decision by whoever is responsible for the structure.';
  }
}
