import { distance, type Vec } from '../../geometry/point.ts';
import type { Thing } from '../../job/entry-schema.ts';
import { thingKey } from '../../job/log.ts';
import type { Drawn } from '../../ui/index.ts';

/** What is drawn of the job while one post is worked on. */
export type Near = Pick<Drawn, 'holes' | 'references' | 'focus'>;

/** A further stake or nail, and where it stands. */
interface PlacedThing {
  readonly thing: Thing;
  readonly label: string;
  readonly place: Vec;
}

/** A mark and its label need so much more room than the places themselves. */
const ROOM = 1.15;

/** So many posts nearest to the one at hand tell where in the job it is. */
const NEAREST = 3;

/**
 * Zooms to the post at hand and what it is pulled from: further stakes and nails that no tape comes from now are left out. Where a
 * tape comes from A or B, the posts that lie about the tapes are kept; where none does, those next to the post.
 *
 * @param references all further stakes and nails
 * @param from what the tapes of the card start from
 */
export function zoomed(
  { holes, stakes }: Drawn,
  references: readonly PlacedThing[],
  from: readonly Thing[],
): Near {
  const at = holes.find(({ live }) => live)?.place;
  if (!at) return { holes, references };
  const wanted = new Set(from.map(thingKey));
  const near = references.filter(({ thing }) => wanted.has(thingKey(thing)));
  const ends = [
    ...holes.filter(({ label }) => wanted.has(`post:${label}`)).map(({ place }) => place),
    ...near.map(({ place }) => place),
  ];
  const fromLine = wanted.has('stake:A') || wanted.has('stake:B');
  if (!fromLine || !stakes)
    return { holes, references: near, focus: { at, reach: ROOM * reachOf(holes, at, ends) } };
  const box = boxOf([at, stakes.a, stakes.b, ...ends], ROOM * reachOf(holes, at, []));
  return { holes: holes.filter(({ place, live }) => live || isIn(box, place)), references: near };
}

/** As far as what is pulled from, or else as the nearest posts. */
function reachOf(holes: Drawn['holes'], at: Vec, ends: readonly Vec[]): number {
  if (ends.length > 0) return Math.max(...ends.map((end) => distance(at, end)));
  const others = holes
    .filter(({ live }) => !live)
    .map(({ place }) => distance(at, place))
    .sort((p, q) => p - q);
  return others[Math.min(NEAREST, others.length) - 1] ?? 1;
}

interface Box {
  readonly least: Vec;
  readonly most: Vec;
}

function boxOf(places: readonly Vec[], room: number): Box {
  const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
  return {
    least: { x: Math.min(...xs) - room, y: Math.min(...ys) - room },
    most: { x: Math.max(...xs) + room, y: Math.max(...ys) + room },
  };
}

const isIn = ({ least, most }: Box, { x, y }: Vec): boolean =>
  x >= least.x && x <= most.x && y >= least.y && y <= most.y;
