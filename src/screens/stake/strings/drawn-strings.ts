import { distance, type Vec } from '../../../geometry/point.ts';
import type { LaidString } from '../../../stakeout/string-types.ts';
import type { DrawnPull } from '../../../ui/index.ts';

/** A string as a line on the drawing. */
export const drawnString = (string: LaidString, kind: DrawnPull['kind']): DrawnPull => ({
  from: string.nails[0].site,
  to: string.nails[1].site,
  kind,
  words: `string ${string.label}`,
});

/** As much of a string as lies within `reach` of a place on it, for a drawing of that place close up. */
export function drawnNear(string: LaidString, at: Vec, reach: number): DrawnPull {
  const toward = ({ site }: LaidString['nails'][number]): Vec => {
    const away = distance(site, at);
    const share = Math.min(1, reach / away);
    return { x: at.x + (site.x - at.x) * share, y: at.y + (site.y - at.y) * share };
  };
  return { ...drawnString(string, 'string'), from: toward(string.nails[0]), to: toward(string.nails[1]) };
}
