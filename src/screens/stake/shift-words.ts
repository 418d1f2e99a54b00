import { subtract } from '../../geometry/point.ts';
import type { Situation } from '../../judge/situation.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { viewOf } from '../../judge/view.ts';
import { moveWords } from '../../judge/words.ts';

/** How far and which way to shift a stake, and what the tapes then read. */
export function shiftWords(situation: Situation, { hole, designed, staked }: HoleAssessment): string {
  const ground = viewOf(situation)?.ground;
  const at = staked.at?.place;
  if (!ground || !at || !designed) return '';
  const move = moveWords(at, subtract(designed, at), ground);
  return `Stake ${hole}: shift it ${move}; it is right where both tapes read the lengths above. If it is a tape that was misread, strike that reading under More on stake ${hole}.`;
}
