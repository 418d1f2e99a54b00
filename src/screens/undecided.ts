import type { GateItem, HoleAssessment } from '../judge/types.ts';

/** What of a dug hole nobody has decided about yet: what was met in it, a depth of its own, a middle far off. */
export const undecidedIn = ({ dug, pourGate }: HoleAssessment): GateItem[] =>
  dug.at === null ? [] : pourGate.items.filter(({ decision }) => decision);

export const waitsForDecision = (hole: HoleAssessment): boolean => undecidedIn(hole).length > 0;
