import type { Entry } from '../job/entry-schema.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { chiSquareChance } from './chi-square.ts';
import { guardedHeights } from './height-guards.ts';
import { type FoundHeight, HeightNetwork, tiedToBenchmark } from './height-network.ts';
import { heightRows } from './height-rows.ts';
import { type TopsCovariance, topsCovariance } from './height-tops.ts';
import { type LevelLoop, levelLoops } from './misclosure.ts';
import { suspicionsOf } from './snooping.ts';
import type { Collimation } from './two-peg.ts';
import type { GlobalTest, MeasuredHeight, Suspicion, Unused } from './types.ts';

/** What the levelling says beside the heights themselves. */
export interface Levelling {
  /** Heights of instrument above the benchmark, by set-up; only of those that the benchmark reaches. */
  readonly setups: readonly FoundHeight[];
  readonly loops: readonly LevelLoop[];
  /** The two-peg tests that tell something, in order. */
  readonly collimations: readonly Collimation[];
  /** Readings that no benchmark reaches: they say nothing of any height yet. */
  readonly adrift: readonly string[];
  readonly tops: TopsCovariance;
}

export interface Heights {
  /** Of everything that readings tie to the benchmark, and of the benchmark itself. */
  readonly heights: readonly MeasuredHeight[];
  readonly levelling: Levelling;
  readonly test: GlobalTest;
  /** Readings believed wrong: the misclosure of the levelling, traced as far as it can be. */
  readonly suspicions: readonly Suspicion[];
  readonly unused: readonly Unused[];
}

/**
 * Heights above the benchmark from all rod readings, water-level and laser differences and two-peg tests, in one weighted
 * least-squares solution: height = height of instrument − reading, each set-up of the level one unknown height of
 * instrument. Never throws and holds no NaN: what nothing ties to the benchmark is left out and named in `adrift`.
 *
 * @param entries that stand, in order
 */
export function heights(entries: readonly Entry[], instruments: Instruments): Heights {
  const { rows, collimations, unused } = heightRows(entries, instruments);
  const { tied, adrift } = tiedToBenchmark(rows);
  const network = new HeightNetwork(tied, collimations);
  const solved = network.solve();
  const { chiSquare, degreesOfFreedom } = solved;
  return {
    heights: guardedHeights(network, solved),
    levelling: {
      setups: network.setups(solved),
      loops: levelLoops(network, solved),
      collimations,
      adrift,
      tops: topsCovariance(network, solved),
    },
    test: { chiSquare, degreesOfFreedom, chance: chiSquareChance(chiSquare, degreesOfFreedom) },
    suspicions: suspicionsOf(network.tested(solved)),
    unused,
  };
}
