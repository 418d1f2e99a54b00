import { type Length, typedLength } from '../job/length.ts';
import { isMetric, type Units } from '../units/index.ts';

/** A post as the yard sells it: what it is called, and what it measures. */
export interface NamedSection {
  readonly nominal: string;
  readonly width: Length;
  readonly depth: Length;
  /** Where the actual size comes from. */
  readonly from: string;
}

interface SectionRow {
  readonly nominal: string;
  readonly width: string;
  readonly depth: string;
}

/**
 * Actual (dressed) sizes of posts sold by nominal inches: PS 20, American Softwood Lumber Standard, tables 3 and 4
 * (from memory). Wide timbers are dressed by half an inch or by three quarters, from mill to mill.
 */
const INCH_SECTIONS: readonly SectionRow[] = [
  { nominal: '4×4', width: '3 1/2″', depth: '3 1/2″' },
  { nominal: '4×6', width: '3 1/2″', depth: '5 1/2″' },
  { nominal: '6×6', width: '5 1/2″', depth: '5 1/2″' },
  { nominal: '6×8', width: '5 1/2″', depth: '7 1/2″' },
  { nominal: '8×8', width: '7 1/2″', depth: '7 1/2″' },
  { nominal: '10×10', width: '9 1/2″', depth: '9 1/2″' },
];

/** Metric posts are sold by what they measure (common practice). */
const METRIC_SECTIONS: readonly SectionRow[] = [
  { nominal: '90×90', width: '90 mm', depth: '90 mm' },
  { nominal: '100×100', width: '100 mm', depth: '100 mm' },
  { nominal: '115×115', width: '115 mm', depth: '115 mm' },
  { nominal: '140×140', width: '140 mm', depth: '140 mm' },
  { nominal: '150×150', width: '150 mm', depth: '150 mm' },
  { nominal: '200×200', width: '200 mm', depth: '200 mm' },
];

const FROM_PS20 = 'Dressed size, PS 20 American Softwood Lumber Standard. Mills differ: measure a post.';
const FROM_TRADE = 'Sold by its actual size (common practice). Measure a post.';

/** The posts that a yard sells, actual sizes, for a job in these units. */
export function sectionsFor(units: Units): NamedSection[] {
  const [rows, from] = isMetric(units) ? [METRIC_SECTIONS, FROM_TRADE] : [INCH_SECTIONS, FROM_PS20];
  return rows.map(({ nominal, width, depth }) => ({
    nominal,
    width: ownLength(width, units),
    depth: ownLength(depth, units),
    from,
  }));
}

/** What the tables hold is read once: every hole is judged by it after every tap. */
const read = new Map<string, Length>();

/** A length out of the tool's own tables. They carry their marks, so they mean the same in any units. */
export function ownLength(typed: string, units: Units): Length {
  const before = read.get(typed);
  if (before) return before;
  const length = typedLength(typed, units, 'Table', { min: 0 });
  if (!length.ok) throw new RangeError(length.problem.text);
  read.set(typed, length.value);
  return length.value;
}
