import { formatSmall, isMetric, METRES_PER_FOOT, type Units } from '../../units/index.ts';

/** The length over which a small slope is told in these units. */
export interface Base {
  readonly metres: number;
  readonly words: string;
}

/** Leans are told in ten feet, as tolerances for framing are, or in a metre. */
export const leanBase = (units: Units): Base =>
  isMetric(units) ? { metres: 1, words: '1 m' } : { metres: 10 * METRES_PER_FOOT, words: '10′' };

/** What a tape's error adds is told for a length that tapes have. */
export const tapeBase = (units: Units): Base =>
  isMetric(units) ? { metres: 10, words: '10 m' } : { metres: 100 * METRES_PER_FOOT, words: '100′' };

const MM_PER_METRE = 1000;
/** Millimetres are shown to a tenth: a level is good to half a millimetre in a metre. */
const TENTHS = 10;

/** A small gap in millimetres, to the tenth. */
export const gapInMm = (m: number): number => Math.round(m * MM_PER_METRE * TENTHS) / TENTHS;

/** A small gap as its field shows it: `2.1 mm`, `1/4″`. */
export const gapWords = (m: number, units: Units): string =>
  isMetric(units) ? `${gapInMm(m)} mm` : formatSmall(m, units);
