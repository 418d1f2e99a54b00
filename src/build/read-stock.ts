import { type Length, typedLength } from '../job/length.ts';
import { isMetric, ok, type Result, refuse, type Units } from '../units/index.ts';

/** As many as the plan's schema keeps. */
const MOST = 20;
const BARE = /^[-−]?\d+(?:[.,]\d+)?$/;

/**
 * Reads the lengths that posts are sold in: `8, 10, 12`. Bare numbers are feet or metres, whatever tapes read in this job:
 * nobody asks a yard for a post of 2400.
 *
 * @param field label of the field, as the user sees it
 * @returns shortest first
 */
export function readStock(text: string, units: Units, field: string): Result<Length[]> {
  const metric = isMetric(units);
  const sample = metric ? '2.4; 3; 3.6' : '8; 10; 12';
  const parts = text
    .split(metric ? /[;\n]|,\s+|\s{2,}/ : /[;,\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length === 0)
    return refuse(field, `${field} is empty: type one length or more, such as ${sample}.`);
  if (parts.length > MOST)
    return refuse(field, `${field}: more than ${MOST} lengths; type those that you can buy.`);
  const lengths: Length[] = [];
  for (const part of parts) {
    const marked = BARE.test(part) ? `${part}${metric ? ' m' : '′'}` : part;
    const length = typedLength(marked, units, field);
    if (!length.ok) return length;
    lengths.push(length.value);
  }
  return ok(lengths.sort((p, q) => p.m - q.m));
}
