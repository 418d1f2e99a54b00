import { useEffect, useMemo } from 'preact/hooks';
import type { Entry } from '../job/entry-schema.ts';
import { standing } from '../job/log.ts';
import { assessSituation } from '../judge/assess.ts';
import { type Situation, situate } from '../judge/situation.ts';
import type { Assessment } from '../judge/types.ts';
import type { Kept, KeptResults } from '../store/kept-results.ts';

/** All that follows from a log. */
export interface Derived {
  readonly situation: Situation;
  readonly assessment: Assessment;
}

export function derive(log: readonly Entry[]): Derived {
  const situation = situate(log);
  return { situation, assessment: assessSituation(situation) };
}

/** The address of this file in a build holds a hash of it and of all that it needs: another build has another. */
const BUILD = import.meta.url;

const isOf = ({ build, count, last }: Kept, log: readonly Entry[]): boolean =>
  build === BUILD && count === log.length && last === (log.at(-1)?.id ?? null);

function derivedOrKept(log: readonly Entry[] | null, kept: Kept | null) {
  if (!log) return { derived: null, isKept: false };
  if (!kept || !isOf(kept, log)) return { derived: derive(log), isKept: false };
  const situation: Situation = { ...kept.situation, entries: standing(log) };
  return { derived: { situation, assessment: kept.assessment }, isKept: true };
}

/** Long enough for the next tap to come first, milliseconds. */
const KEEP_AFTER_MS = 2000;

/**
 * What follows from a log: worked out after each change of it, or taken from what was kept where nothing changed since. It is
 * kept in turn, once the user has paused.
 *
 * @param kept what was kept of this job, of whatever log and build
 */
export function useDerived(
  jobId: string,
  log: readonly Entry[] | null,
  kept: Kept | null,
  results: KeptResults | null,
): Derived | null {
  const { derived, isKept } = useMemo(() => derivedOrKept(log, kept), [log, kept]);
  useEffect(() => {
    if (!log || !derived || !results || isKept) return;
    const { entries: _, ...situation } = derived.situation;
    const { assessment } = derived;
    const last = log.at(-1)?.id ?? null;
    const timer = setTimeout(() => {
      void results.write({ jobId, build: BUILD, count: log.length, last, situation, assessment });
    }, KEEP_AFTER_MS);
    return () => clearTimeout(timer);
  }, [jobId, log, derived, isKept, results]);
  return derived;
}
