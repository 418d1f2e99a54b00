import type { Instruments } from '../job/plan-schema.ts';

/**
 * One sigma of a pull, metres: σ² = a² + (b·L)², a part that every pull has (reading, holding, touching) and one that
 * grows with its length.
 */
export function tapeSigma(pull: number, { tapeError, tapeErrorPerMetre }: Instruments): number {
  return Math.hypot(tapeError.m, tapeErrorPerMetre * pull);
}
