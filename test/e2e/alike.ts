import type { Entry } from '../../src/job/entry-schema.ts';
import { currentPlan, standing } from '../../src/job/log.ts';
import { describeEntry } from '../../src/job/words.ts';
import type { Assessment } from '../../src/judge/types.ts';

/**
 * An assessment in which every entry id is the entry's own words and every time is left out, so that two logs that say
 * the same come to the same. The second of two equal lines gets a 2, and so on.
 */
export function withoutIdsAndTimes(assessment: Assessment, log: readonly Entry[]): unknown {
  const words = wordsById(log);
  const text = JSON.stringify(assessment, (key, value: unknown) => {
    if (key === 'at' && typeof value === 'string') return 'then';
    return typeof value === 'string' ? (words.get(value) ?? value) : value;
  });
  return JSON.parse(text);
}

function wordsById(log: readonly Entry[]): Map<string, string> {
  const plan = currentPlan(standing(log));
  const times = new Map<string, number>();
  return new Map(
    log.map((entry) => {
      const words = describeEntry(entry, plan);
      const time = (times.get(words) ?? 0) + 1;
      times.set(words, time);
      return [entry.id, `${words} (${time})`];
    }),
  );
}
