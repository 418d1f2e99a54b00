import type { Entry } from '../../job/entry-schema.ts';
import { ofKind } from '../../job/log.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { type MissingItem, missingItems } from '../pour/gate-mend.ts';
import { waitsForDecision } from '../undecided.ts';

/** What is seen best while the hole is open: gravel hides its bottom, and the post both. */
const SEEN_OPEN: ReadonlySet<MissingItem['item']> = new Set(['clean', 'gravel']);

/**
 * The ticks that a dug hole still wants before its post is set. They hold nothing up here: the pour's gate asks for them,
 * and once the post stands it is there that they are looked at again.
 */
export function openHoleTicks({ dug, set, pourGate }: HoleAssessment): MissingItem[] {
  if (dug.at === null || set.done) return [];
  return missingItems(pourGate).filter(({ item }) => SEEN_OPEN.has(item));
}

/** What a dug hole waits for, in a few words: `its middle, clean, gravel`, `a decision`; null when nothing. */
export function waitWords(hole: HoleAssessment): string | null {
  const words = [
    ...(waitsForDecision(hole) ? ['a decision'] : []),
    ...(hole.dug.room.verdict === 'unmeasured' && !hole.set.done ? ['its middle'] : []),
    ...openHoleTicks(hole).map(({ item }) => item),
  ];
  return words.length === 0 ? null : words.join(', ');
}

/** The hole that was dug last, but for the one that is shown, if it waits for something. */
export function lastDugWaiting(
  entries: readonly Entry[],
  holes: readonly HoleAssessment[],
  but: string | null,
): HoleAssessment | null {
  const last = ofKind(entries, 'dug').at(-1)?.body.hole;
  const hole = holes.find((each) => each.hole === last && each.hole !== but);
  return hole && waitWords(hole) !== null ? hole : null;
}
