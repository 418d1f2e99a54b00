import { ok, type Result, refuse } from '../units/index.ts';

/** Heights above the benchmark, and what is left on for cutting, metres. */
export interface PostEnds {
  readonly top: number;
  /** What the post stands on: the bottom of the hole and the gravel. */
  readonly bottom: number;
  readonly spare: number;
}

/**
 * Length of post to buy at least: from what it stands on to its top, and the spare that is cut off.
 *
 * @returns metres; a sentence when the top is not above the bottom
 */
export function postLength({ top, bottom, spare }: PostEnds): Result<number> {
  if (!(top > bottom))
    return refuse(
      'Height of the top',
      'Height of the top: it is not above the bottom of the hole; check both heights.',
    );
  return ok(top - bottom + spare);
}
