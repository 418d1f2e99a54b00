import type { EntryOf, Pulling } from '../job/entry-schema.ts';
import type { Instruments, TapeSpec } from '../job/plan-schema.ts';
import { isTape } from '../plan/tape.ts';
import { type Pulling as Held, sagCorrection, type Tape, tapeCorrection } from './tape.ts';

/** One of the job's tapes, and how it is pulled: what was not noted is as the tape's own standard says. */
export interface TapeInHand {
  readonly tape: TapeSpec;
  readonly pulling: Pulling;
}

/** True length = reading · (1 + rate) + shift: all of a tape's corrections but the one for slope are of this form. */
export interface Taped {
  readonly rate: number;
  /** Metres. */
  readonly shift: number;
}

/** A tape without corrections of its own. */
export const PLAIN: Taped = { rate: 0, shift: 0 };

/** Steel tapes are made to be right at 20 °C (68 °F; ISO 1). */
export const STANDARD_TEMPERATURE_C = 20;

/**
 * One sigma of what was not noted: a tape that lay in sun or shade is within 10 °C of its standard temperature, and a pull
 * by hand within three parts in ten of what it should be. Both are guesses, and count only for a tape whose own data say
 * that they matter; what an unknown tape may be off by, the plan's error by length already covers.
 */
const UNNOTED_WARMTH_C = 10;
const UNNOTED_PULL = 0.3;

/** A firm pull by hand, newtons: only for the doubt of a tape that hung free when nothing says how hard it was pulled. */
const HAND_PULL_N = 50;

/** Takes a tape's corrections together. */
export function tapedBy({ tape, pulling }: TapeInHand): Taped {
  const known = pulling.tension ?? tape.tension;
  const tension = known ?? HAND_PULL_N;
  const full: Tape = {
    nominal: tape.nominal.m,
    actual: tape.actual.m,
    temperature: tape.temperature ?? STANDARD_TEMPERATURE_C,
    tension: tape.tension ?? tension,
    expansion: tape.expansion ?? 0,
    stiffness: tape.stiffness ?? Number.POSITIVE_INFINITY,
    // How far it sagged is not known when nothing says how hard it was pulled: a doubt then, and no correction.
    weight: known === undefined ? 0 : (tape.weight ?? 0),
    zeroOffset: tape.zero.m,
  };
  return tapedOf(full, {
    temperature: pulling.temperature ?? full.temperature,
    tension,
    spans: (pulling.spans ?? []).map(({ m }) => m),
  });
}

/** The corrections of `tapeCorrection`, which are all in proportion to the reading or the same for every reading. */
export function tapedOf(tape: Tape, pulling: Held): Taped {
  const { calibration, temperature, tension } = tapeCorrection(1, tape, pulling);
  return { rate: calibration + temperature + tension, shift: tapeCorrection(0, tape, pulling).total };
}

type PullBody = EntryOf<'pull'>['body'];
/** What says with which tape it was read. */
type ByTape = Pick<EntryOf<'pull' | 'offset'>['body'], 'tape' | 'pulling'>;

/**
 * The tape of a reading that was logged. Null for a tape without corrections; undefined for one that the plan does not list, or
 * of which it says what cannot be.
 */
export function tapeOf(
  { tape: label, pulling = {} }: ByTape,
  { tapes }: Instruments,
): TapeInHand | null | undefined {
  if (label === undefined) return null;
  const tape = tapes?.find((one) => one.label === label);
  return tape && isTape(tape) ? { tape, pulling } : undefined;
}

/** What is there by a pull, as its tape corrects it; as read where its tape is not known. Metres. */
export const lengthRead = (body: PullBody, instruments: Instruments): number =>
  lengthBy(tapeOf(body, instruments) ?? null, body.reading.m);

/**
 * What is there where a tape in hand reads this; the reading itself without a tape of its own data. Below zero it was taped the
 * other way, and is as long. Metres.
 */
export const lengthBy = (hand: TapeInHand | null, reading: number): number =>
  hand ? Math.sign(reading) * trueLength(tapedBy(hand), Math.abs(reading)) : reading;

/** What is there when the tape reads this. Metres. */
export const trueLength = ({ rate, shift }: Taped, reading: number): number => reading * (1 + rate) + shift;

/** What the tape reads when this is there: what to hold on it in laying out. Metres. */
export const readingFor = ({ rate, shift }: Taped, length: number): number => (length - shift) / (1 + rate);

/**
 * What a tape in hand must read for a length that is there; without a tape of its own data, the length itself. Metres.
 */
export const readingOn = (hand: TapeInHand | null, length: number): number =>
  hand ? readingFor(tapedBy(hand), length) : length;

/** One sigma of what was not noted of a pull, where the tape's own data make it matter; metres. */
export function tapeDoubt({ tape, pulling }: TapeInHand, length: number): number {
  const warmth = pulling.temperature === undefined ? (tape.expansion ?? 0) * UNNOTED_WARMTH_C * length : 0;
  const unnoted = pulling.tension === undefined;
  const stretch =
    unnoted && tape.tension !== undefined && tape.stiffness !== undefined
      ? (UNNOTED_PULL * tape.tension * length) / tape.stiffness
      : 0;
  return Math.hypot(warmth, stretch, unnoted ? sagDoubt({ tape, pulling }) : 0);
}

/** Sag goes by the inverse square of the tension: off by a share, it is off by twice that share of itself. */
function sagDoubt({ tape, pulling }: TapeInHand): number {
  const tension = tape.tension ?? HAND_PULL_N;
  const sag = (pulling.spans ?? []).reduce(
    (sum, { m }) => sum - sagCorrection(m, tape.weight ?? 0, tension),
    0,
  );
  return tape.tension === undefined ? sag : 2 * UNNOTED_PULL * sag;
}
