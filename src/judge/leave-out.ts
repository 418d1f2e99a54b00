import type { Suspicion } from '../measure/types.ts';

/** More ways than this of leaving out suspects say nothing new, and would cost time after every tap. */
const MOST_WAYS = 6;

/** Readings that stand out by themselves, by entry. */
export const named = (suspicions: readonly Suspicion[]): string[] =>
  suspicions.filter(({ entries }) => entries.length === 1).flatMap(({ entries }) => entries);

/**
 * The ways to leave out what is believed misread, each a list of entries: first every reading that stands out by itself, which
 * is the best guess; then, where the geometry cannot tell several apart, each of those in turn as well. None when nothing
 * is suspected.
 */
export function waysToLeaveOut(suspicions: readonly Suspicion[]): string[][] {
  if (suspicions.length === 0) return [];
  const surely = named(suspicions);
  const ambiguous = suspicions.filter(({ entries }) => entries.length > 1).flatMap(({ entries }) => entries);
  return [surely, ...ambiguous.slice(0, MOST_WAYS).map((one) => [...surely, one])];
}
