import { distance, type SitePoint } from '../geometry/point.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { APART, CheckNetwork } from './check-network.ts';

/** The misreading that must show wherever it is made: an inch, rounded down to 25 mm. */
export const NOTICED = 0.025;

export interface GuardAsked {
  /** Of the holes' stakes, site frame. */
  readonly places: readonly SitePoint[];
  /** A to B, metres. */
  readonly baseline: number;
  readonly instruments: Instruments;
  /** A misreading that does not show may move no stake by more than this, metres. */
  readonly shiftAllowed: number;
  /** No more pulls than this. */
  readonly most: number;
  /** Pairs that are pulled rather than others. */
  readonly liked: (pair: Pair) => boolean;
}

/** Two holes by their places in the list, the smaller first. */
export type Pair = readonly [number, number];

export interface Guarding {
  readonly pairs: readonly Pair[];
  /** Holes that these do not guard well enough, by their places in the list. */
  readonly unguarded: readonly number[];
}

/** A pull's redundancy counts up to this: three tenths guard it well, and more is better spent on another. */
const ENOUGH = 0.3;
/** Sides and diagonals are what people pull anyway: another pair must be a tenth better. */
const LIKED = 1.1;
/** A pull that brings less redundancy than this guards nothing. */
const WORTH_IT = 0.01;

/**
 * The fewest check pulls, as far as a search one by one finds them, by which every misreading of `NOTICED` shows and none that
 * does not show moves a stake by more than is allowed: the pull that helps most first, then those taken out again that turned
 * out not to be needed.
 */
export function guardingPairs(asked: GuardAsked): Guarding {
  const { places, baseline, instruments, shiftAllowed, most } = asked;
  const network = new CheckNetwork(places, baseline, instruments);
  const isGuarded = (hole: number): boolean =>
    network.caughtAt(hole) <= NOTICED && network.shiftOf(hole) <= shiftAllowed;
  const choice = new Choice(asked, network);
  const chosen: Pair[] = [];
  const open = () => [...places.keys()].filter((hole) => !isGuarded(hole));
  let unguarded = open();
  while (unguarded.length > 0 && chosen.length < most) {
    const best = choice.take(new Set(unguarded));
    if (!best) break;
    chosen.push(best);
    // Of all, for the new pull can be misread as well: what was guarded before may hang on it now.
    unguarded = open();
  }
  const guarded = [...places.keys()].filter((hole) => !unguarded.includes(hole));
  const needed = chosen.filter((pair) => {
    network.drop(pair);
    const spare = !pair.some((hole) => unguarded.includes(hole)) && guarded.every(isGuarded);
    if (!spare) network.put(pair);
    return !spare;
  });
  return { pairs: needed, unguarded: open() };
}

/** The pairs that can be pulled, and what each would bring; worked out anew only where a pull was chosen beside them. */
class Choice {
  readonly #network: CheckNetwork;
  readonly #open: { readonly pair: Pair; readonly liking: number; worth: number }[];

  constructor({ places, instruments, liked }: GuardAsked, network: CheckNetwork) {
    this.#network = network;
    this.#open = pairsInReach(places, instruments.tapeLength.m).map((pair) => ({
      pair,
      liking: liked(pair) ? LIKED : 1,
      worth: network.worthOf(pair, ENOUGH),
    }));
  }

  /** Chooses the pair that brings most to a hole that wants it; null when none brings anything. */
  take(wanting: ReadonlySet<number>): Pair | null {
    let best = -1;
    let most = WORTH_IT;
    for (const [k, { pair, liking, worth }] of this.#open.entries()) {
      if (worth * liking <= most || !pair.some((hole) => wanting.has(hole))) continue;
      [best, most] = [k, worth * liking];
    }
    const [taken] = best === -1 ? [] : this.#open.splice(best, 1);
    if (!taken) return null;
    this.#network.put(taken.pair);
    for (const each of this.#open)
      if (each.pair.some((hole) => taken.pair.includes(hole)))
        each.worth = this.#network.worthOf(each.pair, ENOUGH);
    return taken.pair;
  }
}

function pairsInReach(places: readonly SitePoint[], reach: number): Pair[] {
  return places.flatMap((place, i) =>
    places.slice(i + 1).flatMap((other, k): Pair[] => {
      const away = distance(place, other);
      return away >= APART && away <= reach ? [[i, i + 1 + k]] : [];
    }),
  );
}
