import * as v from 'valibot';
import type { Length } from '../job/length.ts';
import { typedLength } from '../job/length.ts';
import { LabelSchema, type Points } from '../job/plan-schema.ts';
import { ok, type Result, refuse, type Units } from '../units/index.ts';
import { type CsvLine, csvLines, separatorOf } from './csv-lines.ts';
import { FIELDS } from './fields.ts';

/** As many as the plan's schema holds. */
const MOST_POINTS = 1000;
/** Far more text than a thousand points need: what is longer is another file. */
const MOST_CHARACTERS = 200_000;
/** The longest length that is read, both ways. Points may lie left of the centre, and behind it. */
const FARTHEST_M = 300;

const COLUMNS = ['label', 'right', 'front'] as const;
type Column = (typeof COLUMNS)[number];
type ColumnAt = Record<Column, number>;
type Point = Points['points'][number];

const HEADER_HINT = `the first line must name the columns: ${COLUMNS.join(',')}`;
const no = (text: string) => refuse(FIELDS.points, text);

/**
 * Reads points from CSV (RFC 4180; also with semicolons or tabs between, as spreadsheets write). The first line names
 * the columns `label`, `right` and `front`, in any order; other columns are left alone, and a line with more values than
 * the first line has columns is refused: a decimal comma would have cut a length in two. Lengths are written as anywhere
 * else, measured from the plan's centre; bare numbers are in `units`.
 *
 * @returns the points, or one sentence that names the line and the column
 */
export function pointsFromCsv(text: string, units: Units): Result<Points> {
  if (text.length > MOST_CHARACTERS)
    return no(`Points: the text has ${text.length} characters; up to ${MOST_CHARACTERS} are read.`);
  const lines = csvLines(text);
  if (!lines.ok) return lines;
  const [header, ...rows] = lines.value;
  if (!header) return no(`Points: the text is empty; ${HEADER_HINT}.`);
  const columns = columnsOf(header);
  if (!columns.ok) return columns;
  if (rows.length === 0) return no('Points: there is no point below the header; give each hole a line.');
  if (rows.length > MOST_POINTS)
    return no(`Points: there are ${rows.length} points; up to ${MOST_POINTS} are read.`);
  const surplus = rows.flatMap((row) => surplusFault(row, header, separatorOf(text), units) ?? [])[0];
  return surplus === undefined ? pointsOf(rows, columns.value, units) : no(surplus);
}

function columnsOf({ cells }: CsvLine): Result<ColumnAt> {
  const names = cells.map((cell) => cell.trim().toLowerCase());
  for (const name of COLUMNS) {
    const count = names.filter((other) => other === name).length;
    if (count === 0) return no(`Points: there is no column “${name}”; ${HEADER_HINT}.`);
    if (count > 1) return no(`Points: there are ${count} columns “${name}”; name each column once.`);
  }
  return ok({ label: names.indexOf('label'), right: names.indexOf('right'), front: names.indexOf('front') });
}

/** Empty cells at the end of a line are what a spreadsheet writes, and no values. */
const valuesIn = ({ cells }: CsvLine): number => cells.findLastIndex((cell) => cell.trim() !== '') + 1;

/** What is wrong with a line that has more values than the first line has columns; null when it has no more. */
function surplusFault(row: CsvLine, header: CsvLine, separator: string, units: Units): string | null {
  const [count, asked] = [valuesIn(row), valuesIn(header)];
  if (count <= asked) return null;
  const cure = separator === ',' ? COMMA_CURES[units] : 'leave out what no column asks for';
  return `Points: line ${row.line} has ${count} values, ${asked} are asked for; ${cure}.`;
}

const DECIMAL_COMMA = 'write 2.4, not 2,4';
const BETWEEN_INCHES = 'write 12′ 6″, not 12′, 6″';
/** Where commas stand between values, the comma that people put inside a length. */
const COMMA_CURES: Record<Units, string> = {
  m: DECIMAL_COMMA,
  mm: DECIMAL_COMMA,
  ft: DECIMAL_COMMA,
  'ft-in-16': BETWEEN_INCHES,
  'ft-in-32': BETWEEN_INCHES,
};

function pointsOf(rows: readonly CsvLine[], columns: ColumnAt, units: Units): Result<Points> {
  const points: Point[] = [];
  const lineOf = new Map<string, number>();
  for (const row of rows) {
    const point = pointOf(row, columns, units);
    if (!point.ok) return point;
    const { label } = point.value;
    const before = lineOf.get(label);
    if (before !== undefined)
      return no(`Points: lines ${before} and ${row.line} both have the label “${label}”; give each its own.`);
    lineOf.set(label, row.line);
    points.push(point.value);
  }
  return ok({ kind: 'points', points });
}

function pointOf({ cells, line }: CsvLine, columns: ColumnAt, units: Units): Result<Point> {
  const cell = (column: Column) => (cells[columns[column]] ?? '').trim();
  const label = v.safeParse(LabelSchema, cell('label'));
  if (!label.success) return no(`Points: line ${line}, label: ${labelFault(cell('label'))}.`);
  const right = lengthIn(cell('right'), `line ${line}, right`, units);
  if (!right.ok) return right;
  const front = lengthIn(cell('front'), `line ${line}, front`, units);
  if (!front.ok) return front;
  return ok({ label: label.output, right: right.value, front: front.value });
}

const LONGEST_QUOTE = 24;

function labelFault(label: string): string {
  if (label === '') return 'is empty; type 1 to 12 letters or digits';
  const shown = label.length > LONGEST_QUOTE ? `${label.slice(0, LONGEST_QUOTE)}…` : label;
  return `“${shown}” cannot be painted on a stake; type 1 to 12 letters or digits`;
}

function lengthIn(cell: string, where: string, units: Units): Result<Length> {
  const length = typedLength(cell, units, `Points: ${where}`, { min: -FARTHEST_M, max: FARTHEST_M });
  return length.ok ? length : no(length.problem.text);
}
