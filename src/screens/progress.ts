import type { Assessment } from '../judge/types.ts';
import { isProved } from './looks.ts';
import type { Phase } from './route.ts';
import { waitsForDecision } from './undecided.ts';

/** How far each phase is, as the tabs show it: `3 of 11`; nothing where there is nothing to count yet. */
export function progressOf({ holes }: Pick<Assessment, 'holes'>): Partial<Record<Phase, string>> {
  if (holes.length === 0) return {};
  const count = (done: (hole: Assessment['holes'][number]) => boolean) =>
    `${holes.filter(done).length} of ${holes.length}`;
  return {
    stake: count(({ staked }) => staked.driven),
    // What waits for a decision is not done with, though nothing is left to dig.
    dig: count((hole) => hole.dug.at !== null && !waitsForDecision(hole)),
    set: count(isProved),
    pour: count(({ poured }) => poured !== null),
  };
}
