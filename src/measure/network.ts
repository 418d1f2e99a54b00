import { subtract, type Vec } from '../geometry/point.ts';
import type { Entry, EntryOf, Hold, PullEnd, Side, Thing } from '../job/entry-schema.ts';
import { SIDES } from '../job/entry-schema.ts';
import { isKind, thingKey } from '../job/log.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole, SitedReference } from '../plan/hole.ts';
import { type OffsetReading, offsetRows } from './offset-rows.ts';
import { PlumbReader } from './plumb-reading.ts';
import { BEYOND_ALL_TAPES_M, raisedBy, riseBetween } from './rise.ts';
import { GUESSED_LEAN, riseSigma, slopeDoubt, tapeSigma } from './sigma.ts';
import { type Stand, Stands } from './stands.ts';
import { PLAIN, type Taped, tapeDoubt, tapedBy, tapeOf, trueLength } from './taped.ts';
import { outward, reachOf } from './touch.ts';
import type { MeasuredHeight, Unused } from './types.ts';

/** A stand as the adjustment sees it. */
export interface Node extends Stand {
  readonly current: boolean;
  readonly designed: Vec | null;
  /** A post whose lean matters: plumb was read on it, or a pull touches it above the ground. */
  readonly leans: boolean;
}

/** One pull, reduced to what the distance equation needs; metres. */
export interface PullReading {
  readonly entry: string;
  /** Place among the entries that stand. */
  readonly order: number;
  readonly from: number;
  readonly to: number;
  /** Of the place touched on `to` from its centre, less the same of `from`. */
  readonly offset: Vec;
  readonly fromHeight: number;
  readonly toHeight: number;
  /** Radii of rounds touched on their near side. */
  readonly gap: number;
  readonly rise: number;
  /** As the tape read. */
  readonly read: number;
  readonly taped: Taped;
  /** What is there by that: the reading as its tape corrects it. */
  readonly reading: number;
  readonly sigma: number;
}

/** A plumb reading, or the guess that stands in for one. */
export interface LeanReading {
  /** Null for a guess. */
  readonly entry: string | null;
  readonly node: number;
  readonly normal: Vec;
  /** Length over which the offset was read, metres. */
  readonly over: number;
  /** Offset of the top past the face, out positive, metres. */
  readonly reading: number;
  readonly sigma: number;
}

/** What was read, in the order of the adjustment's rows: pulls, then what was measured off strings, then plumb. */
export interface Network {
  readonly nodes: readonly Node[];
  readonly pulls: readonly PullReading[];
  readonly offsets: readonly OffsetReading[];
  /** The readings that say where something is: all but plumb. */
  readonly placing: readonly (PullReading | OffsetReading)[];
  readonly leans: readonly LeanReading[];
  readonly unused: readonly Unused[];
  /** Place among the entries of the last `site` entry, -1 without one. */
  readonly lastSite: number;
}

/** Read from one way on a face that may have been read so before. */
interface OneWay extends LeanReading {
  readonly readings: { count: number };
  /** What of sigma they share, metres. */
  readonly common: number;
}

/** Of n readings that share an error that counts √n times in each, so that their mean has the whole of it. */
function shared(lean: LeanReading | OneWay): LeanReading {
  if (!('readings' in lean)) return lean;
  const { readings, common, ...rest } = lean;
  return { ...rest, sigma: Math.sqrt(rest.sigma ** 2 + (readings.count - 1) * common ** 2) };
}

/** No level is shorter. */
const LEAST_LEVEL_M = 0.01;

/**
 * Sorts the pulls and plumb readings to the stands that they belong to.
 *
 * @param entries that stand, in order
 * @param references where further stakes and nails are meant to stand: it tells which side of a line is meant
 * @param heights for pulls along a slope whose rise was not written down but whose ends have heights
 */
export function networkOf(
  entries: readonly Entry[],
  holes: readonly SitedHole[],
  heights: readonly MeasuredHeight[],
  instruments: Instruments,
  references: readonly SitedReference[] = [],
): Network {
  const levels = new PlumbReader(entries, instruments);
  const reader = new Reader(holes, heights, instruments, references, levels);
  let lastSite = -1;
  entries.forEach((entry, order) => {
    reader.read(entry, order);
    if (entry.body.kind === 'site') lastSite = order;
  });
  return { ...reader.finish(), lastSite };
}

class Reader {
  readonly #stands = new Stands();
  readonly #pulls: PullReading[] = [];
  readonly #offsets: OffsetReading[] = [];
  readonly #leans: (LeanReading | OneWay)[] = [];
  readonly #oneWays = new Map<string, OneWay['readings']>();
  readonly #levels: PlumbReader;
  /** Nodes and pairs of faces on which plumb was read. */
  readonly #plumbed = new Set<string>();
  readonly #unused: Unused[] = [];
  readonly #holes: ReadonlyMap<string, SitedHole>;
  readonly #heights: ReadonlyMap<string, MeasuredHeight>;
  readonly #instruments: Instruments;
  readonly #references: ReadonlyMap<string, Vec>;

  constructor(
    holes: readonly SitedHole[],
    heights: readonly MeasuredHeight[],
    instruments: Instruments,
    references: readonly SitedReference[],
    levels: PlumbReader,
  ) {
    this.#levels = levels;
    this.#references = new Map(references.map(({ thing, site }) => [thingKey(thing), site]));
    this.#holes = new Map(holes.map((hole) => [hole.label, hole]));
    this.#heights = new Map(heights.map((height) => [height.key, height]));
    this.#instruments = instruments;
  }

  read(entry: Entry, order: number): void {
    if (entry.body.kind === 'stand') this.#stands.open(entry.body.thing);
    const reason = isKind(entry, 'pull')
      ? this.#pull(entry, order)
      : isKind(entry, 'offset')
        ? this.#offset(entry, order)
        : isKind(entry, 'plumb')
          ? this.#plumb(entry)
          : null;
    if (reason) this.#unused.push({ entry: entry.id, reason });
  }

  #pull({ id, body }: EntryOf<'pull'>, order: number): Unused['reason'] | null {
    const from = this.#stands.of(body.from.thing);
    const to = this.#stands.of(body.to.thing);
    if (from === to) return 'same-thing';
    if (!this.#inPlan(body.from.thing) || !this.#inPlan(body.to.thing)) return 'not-in-plan';
    const reaches = [this.#reach(body.from), this.#reach(body.to)] as const;
    if (!reaches[0] || !reaches[1]) return 'no-size';
    const hand = tapeOf(body, this.#instruments);
    if (hand === undefined) return 'no-tape';
    const taped = hand ? tapedBy(hand) : PLAIN;
    const read = body.reading.m;
    const reading = trueLength(taped, read);
    if (!(Math.min(read, reading) > 0 && read < BEYOND_ALL_TAPES_M)) return 'no-length';
    const { rise, doubt } = this.#rise(body.from, body.to, body.hold, reading);
    this.#pulls.push({
      entry: id,
      order,
      from: from.index,
      to: to.index,
      offset: subtract(reaches[1].offset, reaches[0].offset),
      fromHeight: raisedBy(body.from),
      toHeight: raisedBy(body.to),
      gap: reaches[0].gap + reaches[1].gap,
      rise,
      read,
      taped,
      reading,
      sigma: Math.hypot(tapeSigma(reading, this.#instruments), doubt, hand ? tapeDoubt(hand, reading) : 0),
    });
    return null;
  }

  #offset(entry: EntryOf<'offset'>, order: number): Unused['reason'] | null {
    const { from, to, of } = entry.body;
    const stands = [from, to, of.thing].map((thing) => this.#stands.of(thing).index);
    if (new Set(stands).size < stands.length) return 'same-thing';
    if (![from, to, of.thing].every((thing) => this.#inPlan(thing))) return 'not-in-plan';
    const reach = this.#reach(of);
    // Which side of a round is near depends on the side of the string that it is on.
    if (!reach || (reach.gap > 0 && entry.body.side === 'on')) return 'no-size';
    const at = { order, from: stands[0]!, to: stands[1]!, of: stands[2]!, height: raisedBy(of), ...reach };
    const hand = tapeOf(entry.body, this.#instruments);
    if (hand === undefined) return 'no-tape';
    const rows = offsetRows(entry, at, this.#instruments, hand);
    if (rows.length === 0) return 'no-length';
    this.#offsets.push(...rows);
    return null;
  }

  #plumb({ id, body }: EntryOf<'plumb'>): Unused['reason'] | null {
    const node = this.#stands.of({ kind: 'post', hole: body.hole });
    const hole = this.#holes.get(body.hole);
    if (!hole) return 'not-in-plan';
    const over = body.over.m;
    const offset = Math.abs(body.offset.m);
    const isLength = over >= LEAST_LEVEL_M && over < BEYOND_ALL_TAPES_M && offset < BEYOND_ALL_TAPES_M;
    if (!isLength) return 'no-length';
    if (offset > over || Math.abs(body.turned?.offset.m ?? 0) > over) return 'no-lean';
    this.#plumbed.add(faces(node.index, body.side));
    const { reading, sigma, common } = this.#levels.value(body);
    const normal = outward(body.side, hole.facing);
    const lean: LeanReading = { entry: id, node: node.index, normal, over, reading, sigma };
    const way = common === sigma ? 'one way' : `corrected ${over}`;
    this.#leans.push(common === 0 ? lean : this.#oneWay(lean, common, `${node.index} ${body.side} ${way}`));
    return null;
  }

  /** What the level itself is wrong by is the same in every reading from one way: more of them make it no smaller. */
  #oneWay(lean: LeanReading, common: number, face: string): OneWay {
    const readings = this.#oneWays.get(face) ?? { count: 0 };
    readings.count++;
    this.#oneWays.set(face, readings);
    return { ...lean, readings, common };
  }

  #inPlan(thing: Thing): boolean {
    return thing.kind === 'stake' || thing.kind === 'nail' || this.#holes.has(thing.hole);
  }

  #reach({ thing, touch }: PullEnd) {
    return reachOf(touch, thing.kind === 'post' ? (this.#holes.get(thing.hole) ?? null) : null);
  }

  /** The rise of a pull, and what not knowing it well adds to sigma. */
  #rise(from: PullEnd, to: PullEnd, hold: Hold, reading: number): { rise: number; doubt: number } {
    if (hold.how === 'level') return { rise: 0, doubt: 0 };
    if (hold.rise) {
      const rise = Math.min(Math.abs(hold.rise.m), BEYOND_ALL_TAPES_M);
      return { rise, doubt: Math.min(rise / reading, 1) * riseSigma(this.#instruments) };
    }
    const known = riseBetween((key) => this.#heights.get(key), from, to);
    if (!known) return { rise: 0, doubt: slopeDoubt(reading) };
    return { rise: known.rise, doubt: Math.min(known.rise / reading, 1) * known.sigma };
  }

  finish(): Omit<Network, 'lastSite'> {
    this.#stands.of({ kind: 'stake', label: 'A' });
    this.#stands.of({ kind: 'stake', label: 'B' });
    const raised = new Set(this.#leans.map(({ node }) => node));
    for (const pull of this.#pulls) {
      if (pull.fromHeight !== 0) raised.add(pull.from);
      if (pull.toHeight !== 0) raised.add(pull.to);
    }
    for (const { of, height } of this.#offsets) if (height !== 0) raised.add(of);
    const nodes = this.#stands.all.map((stand) => this.#node(stand, raised.has(stand.index)));
    const leans = [...this.#leans.map(shared), ...[...raised].flatMap((node) => this.#guesses(nodes[node]!))];
    const [pulls, offsets] = [this.#pulls, this.#offsets];
    return { nodes, pulls, offsets, placing: [...pulls, ...offsets], leans, unused: this.#unused };
  }

  #node(stand: Stand, leans: boolean): Node {
    const { thing, key, index } = stand;
    const current = this.#stands.isCurrent(stand);
    return { thing, key, stand: stand.stand, index, current, designed: this.#designed(thing, key), leans };
  }

  #designed(thing: Thing, key: string): Vec | null {
    return ('hole' in thing ? this.#holes.get(thing.hole)?.site : this.#references.get(key)) ?? null;
  }

  /** A leaning post needs something said of its lean across both pairs of faces. */
  #guesses({ thing, index }: Node): LeanReading[] {
    const hole = thing.kind === 'post' ? this.#holes.get(thing.hole) : undefined;
    if (!hole) return [];
    return (['front', 'left'] as const)
      .filter((side) => !this.#plumbed.has(faces(index, side)))
      .map((side) => {
        const normal = outward(side, hole.facing);
        return { entry: null, node: index, normal, over: 1, reading: 0, sigma: GUESSED_LEAN };
      });
  }
}

/** Opposite sides tell of the same component of a lean. */
const faces = (node: number, side: Side): string => `${node} ${SIDES.indexOf(side) % 2}`;

/** Nodes whose places a reading depends on. */
export const nodesOf = (reading: PullReading | OffsetReading): readonly number[] =>
  'of' in reading ? [reading.from, reading.to, reading.of] : [reading.from, reading.to];
