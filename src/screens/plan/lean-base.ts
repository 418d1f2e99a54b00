import { isMetric, METRES_PER_FOOT, type Units } from '../../units/index.ts';

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
