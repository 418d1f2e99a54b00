import { add, distance, scale, type Vec } from '../geometry/point.ts';
import type { PullEnd, Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import type { Situation } from '../judge/situation.ts';
import { reachOf } from '../measure/index.ts';
import type { PullToRead } from './pull-flow.tsx';

export type PullEnds = Pick<PullToRead, 'from' | 'to'>;
type Known = Pick<Situation, 'laid' | 'measured'>;
type Placing = (thing: Thing, known: Known) => Vec | null;

/**
 * The same pull with its ends touching other places. What it ought to read changes by what lies between the old places
 * and the new, each post standing where the pull takes it to stand: as planned, or as measured. At a height its measured
 * lean counts.
 *
 * @returns without `expected` where it had none, or where a place is not known
 */
export function retouched(pull: PullToRead, ends: PullEnds, known: Known): PullToRead {
  const { expected } = pull;
  if (expected === undefined) return { ...ends };
  const changes = PLACINGS.flatMap((from) =>
    PLACINGS.flatMap((to) => {
      const [was, is] = [pull, ends].map((each) => lineBetween(each, { from, to }, known));
      return was == null || is == null ? [] : [{ off: Math.abs(was - expected), by: is - was }];
    }),
  );
  // Whichever places bear the pull's own figure out are those that it was worked out from.
  const [best] = changes.sort((one, other) => one.off - other.off);
  return best ? { ...ends, expected: expected + best.by } : { ...ends };
}

/** Level, between what both ends touch, metres. */
function lineBetween(
  { from, to }: PullEnds,
  placed: { readonly from: Placing; readonly to: Placing },
  known: Known,
): number | null {
  const near = touchedAt(from, placed.from, known);
  const far = touchedAt(to, placed.to, known);
  return near && far ? distance(near.at, far.at) - near.gap - far.gap : null;
}

function touchedAt({ thing, touch, height }: PullEnd, placing: Placing, known: Known) {
  const hole = thing.kind === 'post' ? holeOf(thing.hole, known) : null;
  const [ground, reach] = [placing(thing, known), reachOf(touch, hole)];
  if (!ground || !reach) return null;
  const lean = pointOf(thing, known)?.lean?.perMetre ?? UPRIGHT;
  return { at: add(add(ground, reach.offset), scale(lean, height?.m ?? 0)), gap: reach.gap };
}

const UPRIGHT: Vec = { x: 0, y: 0 };

const measuredPlace: Placing = (thing, known) => pointOf(thing, known)?.fix?.place ?? null;

const plannedPlace: Placing = (thing, known) => {
  if ('hole' in thing) return holeOf(thing.hole, known)?.site ?? null;
  // The site frame begins at A and looks to B.
  if (thing.kind === 'stake' && thing.label === 'A') return { x: 0, y: 0 };
  return thing.kind === 'stake' && thing.label === 'B' && known.laid
    ? { x: known.laid.baseline, y: 0 }
    : null;
};

const PLACINGS: readonly Placing[] = [measuredPlace, plannedPlace];

const holeOf = (label: string, { laid }: Known) => laid?.holes.find((hole) => hole.label === label) ?? null;

const pointOf = (thing: Thing, { measured }: Known) =>
  measured?.points.find((point) => point.current && thingKey(point.thing) === thingKey(thing));
