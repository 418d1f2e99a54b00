import { requiredDepth } from '../build/index.ts';
import type { Check, Decision, Entry, EntryKind, EntryOf, Thing } from '../job/entry-schema.ts';
import { isKind, thingKey } from '../job/log.ts';
import type { Plan } from '../job/plan-schema.ts';

/** An entry and its place among the entries that stand, which says what came before what. */
export interface Placed<K extends EntryKind> {
  readonly entry: EntryOf<K>;
  readonly index: number;
}

export type PlaceReading = Placed<'pull'> | Placed<'offset'>;

/** The entries that stand, sorted by what they are of, so that judging a hole does not read the whole log. */
export interface Book {
  readonly dug: (hole: string) => readonly Placed<'dug'>[];
  readonly pours: (hole: string) => readonly Placed<'pour'>[];
  /** Readings of the middle of a dug hole, by tape or off a string, since it was last said to be another; in order. */
  readonly middles: (hole: string) => readonly PlaceReading[];
  /** Readings of a post's place, by tape or off a string, whatever its stand; in order. */
  readonly places: (hole: string) => readonly PlaceReading[];
  /** Plumb readings since the post's present stand began. */
  readonly plumbs: (hole: string) => readonly EntryOf<'plumb'>[];
  /** How a post is turned, as measured since its present stand began. */
  readonly twists: (hole: string) => readonly EntryOf<'twist'>[];
  /** Rod readings on the top since the post's present stand began. */
  readonly tops: (hole: string) => readonly EntryOf<'rod'>[];
  /** The same whatever the stand, and read in whatever way. */
  readonly allPlumbs: (hole: string) => readonly Placed<'plumb'>[];
  readonly allTops: (hole: string) => readonly Placed<'rod' | 'difference'>[];
  readonly benchmarks: (setup: string) => readonly EntryOf<'rod'>[];
  /** What was measured of a thing off strings. */
  readonly offsetsOf: (thing: Thing) => readonly Placed<'offset'>[];
  /**
   * The last tick of an item, before an index, for exactly this hole, or for the whole job where `hole` is undefined.
   *
   * @param asked which of the job's own items, where `item` is `asked`
   */
  readonly tick: (
    item: Check,
    hole: string | undefined,
    before?: number,
    asked?: string,
  ) => Placed<'check'> | null;
  /**
   * The last inspection of a hole that decides on something. One that does not say on what decides on what was met in the
   * ground; a decision on anything else is no inspection.
   */
  readonly decision: (on: Decision, hole: string) => Placed<'check'> | null;
  /** Index of the plan since which a hole has the depth of its own, and the rules ask for the depth, that they do now, or −1. */
  readonly ownDepthAt: (hole: string) => number;
  /** Index of the stand event that opened a thing's present stand, or −1. */
  readonly standAt: (thing: Thing) => number;
  /** Index of the last time that a post was put into its hole, or −1; nudges and moves are left out. */
  readonly setAt: (hole: string) => number;
  /** Time of the newest entry, milliseconds since 1970: the log's own idea of now. */
  readonly latest: number;
}

/** Sorts entries, which must be in order. */
export function bookOf(entries: readonly Entry[]): Book {
  const shelves = shelve(entries);
  const standAt = (thing: Thing) => shelves.stands.last(thingKey(thing))?.index ?? -1;
  const since = <K extends EntryKind>(shelf: Shelf<K>, hole: string): EntryOf<K>[] => {
    const from = standAt({ kind: 'post', hole });
    return shelf
      .all(hole)
      .filter(({ index }) => index > from)
      .map(({ entry }) => entry);
  };
  return {
    dug: (hole) => shelves.dug.all(hole),
    pours: (hole) => shelves.pours.all(hole),
    plumbs: (hole) => since(shelves.plumbs, hole),
    twists: (hole) => since(shelves.twists, hole),
    tops: (hole) => since(shelves.tops, hole),
    allPlumbs: (hole) => shelves.plumbs.all(hole),
    allTops: (hole) => shelves.heightsOfTop.all(hole),
    benchmarks: (setup) => shelves.benchmarks.all(setup).map(({ entry }) => entry),
    offsetsOf: (thing) => shelves.offsets.all(thingKey(thing)),
    middles: (hole) => {
      const from = standAt({ kind: 'dug-hole', hole });
      return inOrder(shelves.middlePulls.all(hole), shelves.middleOffsets.all(hole)).filter(
        ({ index }) => index > from,
      );
    },
    places: (hole) =>
      inOrder(shelves.postPulls.all(hole), shelves.offsets.all(thingKey({ kind: 'post', hole }))),
    tick: (item, hole, before = Number.POSITIVE_INFINITY, asked = undefined) =>
      shelves.ticks.all(tickKey(item, hole, asked)).findLast(({ index }) => index < before) ?? null,
    decision: (on, hole) => shelves.ticks.last(tickKey('inspection', hole, undefined, on)),
    ownDepthAt: (hole) => ownDepthAt(entries, hole),
    standAt,
    setAt: (hole) =>
      shelves.stands.all(thingKey({ kind: 'post', hole })).findLast(({ entry }) => entry.body.event === 'set')
        ?.index ?? -1,
    // The newest by order, not by time: a clock that was ahead once must not make all that follows look old.
    latest: Date.parse(entries.at(-1)?.at ?? ''),
  };
}

/** Entries of one kind, listed by what they are of. */
class Shelf<K extends EntryKind> {
  readonly #lists = new Map<string, Placed<K>[]>();

  put(key: string, entry: EntryOf<K>, index: number): void {
    const list = this.#lists.get(key);
    if (list) list.push({ entry, index });
    else this.#lists.set(key, [{ entry, index }]);
  }

  all(key: string): readonly Placed<K>[] {
    return this.#lists.get(key) ?? [];
  }

  last(key: string): Placed<K> | null {
    return this.all(key).at(-1) ?? null;
  }
}

const tickKey = (
  item: Check,
  hole: string | undefined,
  asked: string | undefined,
  decides: Decision = 'obstruction',
): string => `${item} ${decides} ${hole ?? ''} ${asked ?? ''}`;

const tickKeyOf = ({ item, hole, asked, decides }: EntryOf<'check'>['body']): string =>
  tickKey(item, hole, asked, decides);

/** Plans are few, and holes with a depth of their own fewer: nothing is gained by shelving them. */
function ownDepthAt(entries: readonly Entry[], hole: string): number {
  const ownIn = (plan: Plan) =>
    Object.hasOwn(plan.overrides, hole) ? plan.overrides[hole]?.depth?.m : undefined;
  const plans = entries.flatMap((entry, index) =>
    isKind(entry, 'plan') ? [{ plan: entry.body.plan, index }] : [],
  );
  const last = plans.at(-1)?.plan;
  if (!last || ownIn(last) === undefined) return -1;
  const rules = requiredDepth(last.rules).depth;
  // Whoever agreed to it agreed to so much less than was asked: both count.
  const other = plans.findLastIndex(
    ({ plan }) => ownIn(plan) !== ownIn(last) || requiredDepth(plan.rules).depth !== rules,
  );
  return plans[other + 1]?.index ?? -1;
}

/** Two shelves as one, as they were read. */
const inOrder = (pulls: readonly Placed<'pull'>[], offsets: readonly Placed<'offset'>[]): PlaceReading[] =>
  [...pulls, ...offsets].sort((p, q) => p.index - q.index);

/** Holes whose middle, or whose post, a pull touches. */
function touchedBy({ from, to }: EntryOf<'pull'>['body'], kind: 'dug-hole' | 'post'): string[] {
  return [from.thing, to.thing].flatMap((thing) => (thing.kind === kind ? [thing.hole] : []));
}

function shelve(entries: readonly Entry[]) {
  const shelves = {
    stands: new Shelf<'stand'>(),
    dug: new Shelf<'dug'>(),
    pours: new Shelf<'pour'>(),
    plumbs: new Shelf<'plumb'>(),
    twists: new Shelf<'twist'>(),
    tops: new Shelf<'rod'>(),
    heightsOfTop: new Shelf<'rod' | 'difference'>(),
    benchmarks: new Shelf<'rod'>(),
    offsets: new Shelf<'offset'>(),
    ticks: new Shelf<'check'>(),
    middlePulls: new Shelf<'pull'>(),
    middleOffsets: new Shelf<'offset'>(),
    postPulls: new Shelf<'pull'>(),
  };
  entries.forEach((entry, index) => {
    if (isKind(entry, 'stand')) shelves.stands.put(thingKey(entry.body.thing), entry, index);
    else if (isKind(entry, 'dug')) shelves.dug.put(entry.body.hole, entry, index);
    else if (isKind(entry, 'pour')) shelves.pours.put(entry.body.hole, entry, index);
    else if (isKind(entry, 'offset')) {
      const { thing } = entry.body.of;
      shelves.offsets.put(thingKey(thing), entry, index);
      if (thing.kind === 'dug-hole') shelves.middleOffsets.put(thing.hole, entry, index);
    } else if (isKind(entry, 'pull')) {
      for (const hole of touchedBy(entry.body, 'dug-hole')) shelves.middlePulls.put(hole, entry, index);
      for (const hole of touchedBy(entry.body, 'post')) shelves.postPulls.put(hole, entry, index);
    } else if (isKind(entry, 'difference')) {
      const holes = [entry.body.from, entry.body.to].flatMap((on) => (on.point === 'top' ? [on.hole] : []));
      for (const hole of holes) shelves.heightsOfTop.put(hole, entry, index);
    } else if (isKind(entry, 'plumb')) shelves.plumbs.put(entry.body.hole, entry, index);
    else if (isKind(entry, 'twist')) shelves.twists.put(entry.body.hole, entry, index);
    else if (isKind(entry, 'check')) shelves.ticks.put(tickKeyOf(entry.body), entry, index);
    else if (isKind(entry, 'rod')) {
      const { on, setup } = entry.body;
      if (on.point === 'top') {
        shelves.tops.put(on.hole, entry, index);
        shelves.heightsOfTop.put(on.hole, entry, index);
      }
      if (on.point === 'benchmark') shelves.benchmarks.put(setup, entry, index);
    }
  });
  return shelves;
}
