import { formatLength } from '../units/index.ts';
import { isBeyondBelief, type Reading, slips } from './slips.ts';

export interface RodReading extends Reading {
  /** What the rod would read on the benchmark from the same set-up, metres: the line of sight above it. */
  readonly sightLine: number;
  /** From the rod's foot to its head, metres, where it is known. */
  readonly rodLength?: number;
  /** Held upside down on purpose, against a point above the level. */
  readonly inverted: boolean;
}

/** A slip of whoever holds or reads the rod that would explain a reading. */
export interface RodSlip {
  /** One sentence for the person who holds the rod. */
  readonly text: string;
  /** What the reading would be without the slip, metres. */
  readonly instead: number;
}

/**
 * The slips that would bring a rod reading back to what was expected, closest first: the rod stood on its head (it then
 * reads its length less the reading), a height told the wrong way (a larger reading is a lower point), or a slip that is
 * made with any scale. Empty when the reading is believable, or when no known slip fits.
 */
export function rodSlips(about: RodReading): RodSlip[] {
  if (!isBeyondBelief(about)) return [];
  const fits = ({ instead }: RodSlip) => instead > 0 && !isBeyondBelief({ ...about, reading: instead });
  const off = ({ instead }: RodSlip) => Math.abs(instead - about.expected);
  return [...onItsHead(about), ...wrongWay(about), ...slips(about)]
    .filter(fits)
    .sort((p, q) => off(p) - off(q));
}

function onItsHead({ reading, rodLength, inverted, units }: RodReading): RodSlip[] {
  if (rodLength === undefined || inverted) return [];
  const instead = rodLength - reading;
  return [{ instead, text: `The rod stood on its head: is it ${formatLength(instead, units)}?` }];
}

/** As far below the benchmark as it should be above, or the other way round: twice the line of sight less the reading. */
function wrongWay({ reading, sightLine, inverted, units }: RodReading): RodSlip[] {
  if (inverted) return [];
  const instead = 2 * sightLine - reading;
  const way = reading > sightLine ? 'lower' : 'higher';
  const text = `That puts it ${way} than the benchmark, and a larger reading is a lower point: is it ${formatLength(instead, units)}?`;
  return [{ instead, text }];
}
