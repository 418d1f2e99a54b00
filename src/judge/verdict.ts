import type { Verdict } from './types.ts';

/** The verdicts that only a measurement can earn. */
export type MeasuredVerdict = Exclude<Verdict, 'unmeasured'>;

/** In from this chance up: the guard-band rule of JCGM 106:2012, clause 8.3 (from memory), with 5 % consumer's risk. */
export const IN_FROM = 0.95;
/** Out from this chance down: 5 % producer's risk, by clause 8.3.3 (from memory). */
export const OUT_TO = 0.05;

/**
 * The verdict for a chance of being within tolerance.
 *
 * `best` is the chance that the same readings would have given to a thing exactly on its mark. Readings so weak that even
 * that is small say nothing against the thing, so "out" is judged against it: a post known to 100 mm is unsure, not out.
 *
 * @param chance 0 to 1
 * @param best above 0, up to 1; 1 for a one-sided limit
 */
export function verdictOf(chance: number, best = 1): MeasuredVerdict {
  if (chance >= IN_FROM) return 'in';
  return chance <= OUT_TO * best ? 'out' : 'unsure';
}

const ORDER: readonly Verdict[] = ['in', 'unsure', 'out', 'unmeasured'];

/** The verdict that a person must act on first: anything that is out, then what was never measured, then unsure. */
export function worstOf(verdicts: readonly Verdict[]): Verdict {
  if (verdicts.includes('out')) return 'out';
  return verdicts.reduce<Verdict>((worst, v) => (ORDER.indexOf(v) > ORDER.indexOf(worst) ? v : worst), 'in');
}
