import { cross, dot, length, subtract, type Vec } from '../geometry/point.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { tapeSigma } from '../plan/index.ts';
import type { Crossing } from './types.ts';

const DEGREE = Math.PI / 180;
/**
 * Tapes that cross between 60° and 120° fix a place well, between 30° and 150° well enough to use (common practice in
 * surveying): the worst axis is then no more than 1.41 and 2.73 times the error of one tape.
 */
const GOOD_FROM = 60 * DEGREE;
const FAIR_FROM = 30 * DEGREE;
/** Whole degrees belong to the better grade, whatever the last bits say: a millionth of a degree. */
const ANGLE_SLACK = 1e-6 * DEGREE;

/**
 * How sharply two tapes from `a` and `b` fix a place at `hole`. Any frame, metres.
 *
 * With tape errors σa, σb and the angle γ between the tapes the two circles cross with
 *
 *     DRMS² = (σa² + σb²) / sin²γ
 *     worst² = 2 / (t − √(t² − 4d)),  t = 1/σa² + 1/σb²,  d = sin²γ / (σa²σb²)
 *
 * from the inverse of the normal matrix of two distances; for equal tapes σ√2/sin γ and σ/√(1 − |cos γ|).
 *
 * @returns Infinity for both when the tapes lie in one line, or when a stake stands in the hole
 */
export function crossingAt(hole: Vec, a: Vec, b: Vec, instruments: Instruments): Crossing {
  const toA = subtract(a, hole);
  const toB = subtract(b, hole);
  const angle = Math.abs(Math.atan2(cross(toA, toB), dot(toA, toB)));
  const varA = tapeSigma(length(toA), instruments) ** 2;
  const varB = tapeSigma(length(toB), instruments) ** 2;
  const sine = length(toA) > 0 && length(toB) > 0 ? Math.sin(angle) : 0;
  const flat = sine <= FLAT;
  return {
    angle,
    drms: flat ? Number.POSITIVE_INFINITY : Math.sqrt(varA + varB) / sine,
    worstAxis: flat ? Number.POSITIVE_INFINITY : worstAxis(varA, varB, sine),
    grade: gradeOf(angle),
  };
}

/** Tapes that make less of an angle lie in one line: 10 nanoradians are rounding, not geometry. */
const FLAT = 1e-8;

function worstAxis(varA: number, varB: number, sine: number): number {
  const trace = 1 / varA + 1 / varB;
  const determinant = sine ** 2 / (varA * varB);
  // The least eigenvalue as product over the greatest: no difference of nearly equal numbers.
  const greatest = (trace + Math.sqrt(Math.max(0, trace ** 2 - 4 * determinant))) / 2;
  return Math.sqrt(greatest / determinant);
}

export function gradeOf(angle: number): Crossing['grade'] {
  const sharp = Math.min(angle, Math.PI - angle) + ANGLE_SLACK;
  if (sharp >= GOOD_FROM) return 'good';
  return sharp >= FAIR_FROM ? 'fair' : 'poor';
}
