import { formatSmall, isMetric, METRES_PER_FOOT, type Units } from '../units/index.ts';

/**
 * On either side of a mark only hands dig: 18 to 24 in by the rules of most states of the USA, and half a metre elsewhere
 * (common practice). The greater of them, in a round length of the job's units.
 */
const ZONE = { feet: 2 * METRES_PER_FOOT, metric: 0.6 };

/** Where nothing but hand tools may go, until local rules say otherwise. */
export function handDigWords(units: Units): string {
  const zone = isMetric(units) ? ZONE.metric : ZONE.feet;
  return `Within ${formatSmall(zone, units)} of a mark, on either side, dig by hand, without a bar’s full swing and without an auger; farther where local rules say so.`;
}
