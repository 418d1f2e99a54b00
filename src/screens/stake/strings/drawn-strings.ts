import type { LaidString } from '../../../stakeout/string-types.ts';
import type { DrawnPull } from '../../../ui/index.ts';

/** A string as a line on the drawing. */
export const drawnString = (string: LaidString, kind: DrawnPull['kind']): DrawnPull => ({
  from: string.nails[0].site,
  to: string.nails[1].site,
  kind,
  words: `string ${string.label}`,
});
