import { distance, type SitePoint } from '../geometry/point.ts';
import { SIDES, type Side, type Thing } from '../job/entry-schema.ts';
import { ofKind, thingKey } from '../job/log.ts';
import { reachOf } from '../measure/index.ts';
import { offsetEquation } from '../measure/offset-equation.ts';
import type { SitedHole } from '../plan/hole.ts';
import { levelsWhenRight } from './plumb-nudge.ts';
import { possiblePulls } from './possible-pulls.ts';
import { type PullPlan, pullPlan } from './pull-ends.ts';
import type { LevelReading } from './types.ts';
import { type JobView, pointOf, postOf } from './view.ts';

/** What is read off a string to the middle of a face, once the post stands on its mark. */
export interface StringAim {
  readonly from: Thing;
  readonly to: Thing;
  /** Along the string from its beginning, and square off it: metres. */
  readonly station: number;
  readonly offset: number;
  /** On which side of the string the face lies, of a person who walks along it. */
  readonly side: 'left' | 'right';
}

/** All that is to be held at one face of a post that stands on its mark, plumb, by its actual section. */
export interface FaceAim {
  readonly side: Side;
  readonly tapes: readonly PullPlan[];
  readonly strings: readonly StringAim[];
  readonly level: LevelReading | null;
}

/** A string further off than an arm is long is not measured from, metres. */
const ARM_M = 1;

/**
 * Readings to hold at each face of a post, from A, B and what else stands, from the strings that pass by, and on the level. Of
 * things that are measured the tapes start where they stand, not where they were planned.
 */
export function faceAims(view: JobView, hole: SitedHole): FaceAim[] {
  if (hole.section.kind !== 'post') return [];
  const post = postOf(hole.label);
  const tapes = possiblePulls(view, post, hole.site).map(({ from, fromAt }) =>
    pullPlan(view, from, fromAt, post, hole.site),
  );
  const strings = stringsBy(view, hole);
  const levels = levelsWhenRight(view, hole);
  return SIDES.map((side) => ({
    side,
    tapes: tapes.filter(({ to: { touch } }) => touch.at === 'face' && touch.side === side),
    strings: strings.map((string) => aimOf(string, hole, side)),
    level: levels.find((level) => level.side === side) ?? null,
  }));
}

interface Stretched {
  readonly from: Thing;
  readonly to: Thing;
  readonly ends: readonly [SitePoint, SitePoint];
}

/** Strings within reach: those that something was measured off, those between two nails of a pair, and the line A–B. */
function stringsBy(view: JobView, hole: SitedHole): Stretched[] {
  const tied = [
    { from: { kind: 'stake', label: 'A' } as Thing, to: { kind: 'stake', label: 'B' } as Thing },
    ...nailPairs(view),
    ...ofKind(view.entries, 'offset').map(({ body: { from, to } }) => ({ from, to })),
  ];
  const single = new Map(tied.map((string) => [`${thingKey(string.from)} ${thingKey(string.to)}`, string]));
  return [...single.values()].flatMap(({ from, to }) => {
    const [a, b] = [from, to].map((thing) => pointOf(view, thing)?.fix?.place);
    if (!a || !b || distance(a, b) === 0) return [];
    const off = offsetEquation({ part: 'offset', gap: 0 }, hole.site, a, b).predicted;
    return Math.abs(off) <= ARM_M ? [{ from, to, ends: [a, b] as const }] : [];
  });
}

/** A string's nails are called by its name with an a and a b: `S3a`, `S3b`; with an f behind where it stands for faces. */
const BEGINNING = /^(.+)a(f?)$/;

function nailPairs(view: JobView): { from: Thing; to: Thing }[] {
  return [...view.points.values()].flatMap(({ thing }) => {
    const name = thing.kind === 'nail' ? BEGINNING.exec(thing.label) : null;
    return name ? [{ from: thing, to: { kind: 'nail', label: `${name[1]}b${name[2]}` } as const }] : [];
  });
}

function aimOf({ from, to, ends: [a, b] }: Stretched, hole: SitedHole, side: Side): StringAim {
  const reach = reachOf({ at: 'face', side }, hole)?.offset ?? { x: 0, y: 0 };
  const face = { x: hole.site.x + reach.x, y: hole.site.y + reach.y };
  const read = (part: 'station' | 'offset') => offsetEquation({ part, gap: 0 }, face, a, b).predicted;
  const off = read('offset');
  return { from, to, station: read('station'), offset: Math.abs(off), side: off < 0 ? 'right' : 'left' };
}
