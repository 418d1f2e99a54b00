/**
 * What a tape reads and what is there. Corrections are *added to a reading* when measuring; `taped.ts` turns them round for
 * laying out. Formulas as in the US Navy's "Engineering Aid Basic", NAVEDTRA, ch. 12; metres, newtons, °C.
 */
export interface Tape {
  /** Length that is printed on it, and its true length at `temperature` and `tension`, fully supported; metres. */
  readonly nominal: number;
  readonly actual: number;
  readonly temperature: number;
  readonly tension: number;
  /** Per °C: 11.6e-6 for steel. */
  readonly expansion: number;
  /** Cross-section times modulus of elasticity, newtons. */
  readonly stiffness: number;
  /** Newtons per metre. */
  readonly weight: number;
  /** From the end that is held on the mark to the zero of the scale, metres: a bent hook, a blank end. */
  readonly zeroOffset: number;
}

/** How a pull was made. */
export interface Pulling {
  readonly temperature: number;
  readonly tension: number;
  /** Lengths that hung free, metres; none when the tape lay on something all along. */
  readonly spans: readonly number[];
}

export interface TapeCorrection {
  readonly calibration: number;
  readonly temperature: number;
  readonly tension: number;
  readonly sag: number;
  readonly zero: number;
  readonly total: number;
}

/** A tape that is really longer than it says reads short: C = (actual − nominal)/nominal · L. */
export const calibrationCorrection = (length: number, nominal: number, actual: number): number =>
  ((actual - nominal) / nominal) * length;

/** A warm tape is longer: C = k L (T − T₀). */
export const temperatureCorrection = (length: number, degreesAbove: number, expansion: number): number =>
  expansion * length * degreesAbove;

/** A pulled tape is longer: C = (P − P₀) L / (A E). */
export const tensionCorrection = (length: number, tensionAbove: number, stiffness: number): number =>
  (tensionAbove * length) / stiffness;

/** A free span hangs in a curve, so the straight length is shorter: C = −w² L³ / (24 P²), span by span. */
export const sagCorrection = (span: number, weight: number, tension: number): number =>
  -(weight * weight * span ** 3) / (24 * tension * tension);

/** Along a slope to plan: C = √(s² − h²) − s, always negative. @returns NaN when the rise is more than the slope length */
export const slopeCorrection = (slope: number, rise: number): number =>
  // −h²/(s + √(s² − h²)): the same without the difference of two near numbers.
  -(rise * rise) / (slope + Math.sqrt(slope * slope - rise * rise));

/** All corrections of one reading but that for slope, metres. True length = reading + total. */
export function tapeCorrection(reading: number, tape: Tape, pulling: Pulling): TapeCorrection {
  const calibration = calibrationCorrection(reading, tape.nominal, tape.actual);
  const temperature = temperatureCorrection(reading, pulling.temperature - tape.temperature, tape.expansion);
  const tension = tensionCorrection(reading, pulling.tension - tape.tension, tape.stiffness);
  const sag = pulling.spans.reduce((sum, span) => sum + sagCorrection(span, tape.weight, pulling.tension), 0);
  const zero = tape.zeroOffset;
  return {
    calibration,
    temperature,
    tension,
    sag,
    zero,
    total: calibration + temperature + tension + sag + zero,
  };
}
