import type { Vec } from '../geometry/point.ts';
import type { EntryOf } from '../job/entry-schema.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { tapeSigma } from './sigma.ts';
import { lengthBy, type TapeInHand, tapeDoubt } from './taped.ts';

/** What was measured off a string, one row for its station and one for its offset; metres. */
export interface OffsetReading {
  readonly entry: string;
  /** Place among the entries that stand. */
  readonly order: number;
  readonly part: 'station' | 'offset';
  /** Nodes of the string's beginning and end, and of the thing that was measured. */
  readonly from: number;
  readonly to: number;
  readonly of: number;
  /** Of the place touched from the thing's centre. */
  readonly reach: Vec;
  readonly height: number;
  /** The side of the string that it was on, left positive. */
  readonly side: -1 | 0 | 1;
  /** Radius of a round touched on its near side, towards the string from where it stands; left positive. */
  readonly gap: number;
  /** A station from the string's beginning, or an offset, left positive. */
  readonly reading: number;
  readonly sigma: number;
}

/** What `networkOf` knows of an entry before its lengths are looked at. */
export interface MeasuredOff extends Pick<OffsetReading, 'order' | 'from' | 'to' | 'of' | 'height'> {
  readonly offset: Vec;
  readonly gap: number;
}

/**
 * One sigma of a right angle taken by eye or with a small square against a string, radians: a centimetre in a metre. A
 * guess at common practice; it makes the station of what lies far off the string uncertain.
 */
const SQUARE_WITHIN = 0.01;

/** One sigma of a taut string against the straight line between its ends, metres: wind, a touch, the knot on its nail. */
const STRAIGHT_WITHIN_M = 0.001;

/** Beyond any string by far; keeps squares finite. */
const BEYOND_ALL_STRINGS_M = 1e5;

const SIDE = { left: 1, right: -1, on: 0 } as const;

/**
 * The rows of one `offset` entry: of its station and of its offset, as far as each was read. What is on the string has an
 * offset of nothing, which is a reading too.
 *
 * @param hand the tape that it was measured with; null for one without corrections
 * @returns none when a length is no such length: an offset below zero, or one of something on the string
 */
export function offsetRows(
  { id, body }: EntryOf<'offset'>,
  { offset: reach, gap, ...at }: MeasuredOff,
  instruments: Instruments,
  hand: TapeInHand | null,
): OffsetReading[] {
  const side = SIDE[body.side];
  const read = side === 0 ? (body.offset?.m ?? 0) : body.offset?.m;
  // What lies on the string was not taped.
  const off = read === undefined || side === 0 ? read : lengthBy(hand, read);
  const lengths = [body.station?.m ?? 0, off ?? 0];
  if (lengths.some((m) => Math.abs(m) > BEYOND_ALL_STRINGS_M) || (off ?? 0) < 0 || (side === 0 && off !== 0))
    return [];
  const common = { ...at, entry: id, reach, side };
  const rows: OffsetReading[] = [];
  if (body.station) {
    const reading = lengthBy(hand, body.station.m);
    const sigma = Math.hypot(stationSigma(reading, off ?? 0, instruments), doubtBy(hand, reading));
    rows.push({ ...common, part: 'station', gap: 0, reading, sigma });
  }
  if (off !== undefined) {
    const sigma = Math.hypot(offsetSigma(off, instruments), doubtBy(hand, off));
    rows.push({ ...common, part: 'offset', gap: side * gap, reading: side * off, sigma });
  }
  return rows;
}

const doubtBy = (hand: TapeInHand | null, length: number): number =>
  hand ? tapeDoubt(hand, Math.abs(length)) : 0;

/** One sigma of a station, of what stands `off` from the string; metres. */
export const stationSigma = (station: number, off: number, instruments: Instruments): number =>
  Math.hypot(tapeSigma(Math.abs(station), instruments), SQUARE_WITHIN * off);

/** One sigma of an offset, metres. */
export const offsetSigma = (off: number, instruments: Instruments): number =>
  Math.hypot(tapeSigma(off, instruments), STRAIGHT_WITHIN_M);
