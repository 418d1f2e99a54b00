import { type Length, typedLength } from '../../job/length.ts';
import { isLabel } from '../../job/plan-schema.ts';
import { formatLength, ok, type Result, refuse, type Units } from '../../units/index.ts';
import { ANY_PLACE } from './limits.ts';
import type { Point } from './plan-edits.ts';

/** A point as it stands in its fields: text, right or wrong. */
export interface PointTexts {
  readonly label: string;
  readonly right: string;
  readonly front: string;
}

export const POINT_FIELDS = { label: 'Label', right: 'To the right', front: 'To the front' } as const;

/** Why each field cannot be read; null where it can. */
export type PointFaults = { readonly [K in keyof PointTexts]: string | null };

/** The texts of a point that is there already, each with its marks. */
export function textsOf({ label, right, front }: Point, units: Units): PointTexts {
  return { label, right: lengthText(right, units), front: lengthText(front, units) };
}

export function lengthText({ m, typed, units: typedIn }: Length, units: Units): string {
  const bare = /^[\d.,\s-]+$/.test(typed);
  return typedIn === units && !bare ? typed : formatLength(m, units);
}

/**
 * Reads a point out of its fields, all of them or nothing. A length whose text was left alone stays as it was typed.
 *
 * @param taken labels of the other points
 * @param before the point that is changed; null for a new one
 */
export function readPoint(
  texts: PointTexts,
  units: Units,
  taken: readonly string[],
  before: Point | null,
): { readonly point: Point } | { readonly faults: PointFaults } {
  const label = readLabel(texts.label, taken);
  const length = (field: 'right' | 'front') => {
    const same = before !== null && textsOf(before, units)[field] === texts[field];
    return same ? ok(before[field]) : typedLength(texts[field], units, POINT_FIELDS[field], ANY_PLACE);
  };
  const right = length('right');
  const front = length('front');
  if (label.ok && right.ok && front.ok)
    return { point: { label: label.value, right: right.value, front: front.value } };
  return { faults: { label: faultOf(label), right: faultOf(right), front: faultOf(front) } };
}

const faultOf = (result: Result<unknown>): string | null => (result.ok ? null : result.problem.text);

function readLabel(text: string, taken: readonly string[]): Result<string> {
  const label = text.trim();
  const field = POINT_FIELDS.label;
  if (!isLabel(label))
    return refuse(
      field,
      `${field}: “${label.slice(0, LONGEST_QUOTE)}” cannot be painted on a stake; type 1 to 12 letters or digits.`,
    );
  if (taken.includes(label))
    return refuse(field, `${field}: there is a hole “${label}” already; give this one another.`);
  return ok(label);
}

const LONGEST_QUOTE = 24;
