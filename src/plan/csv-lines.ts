import { ok, type Result, refuse } from '../units/index.ts';
import { FIELDS } from './fields.ts';

/** One record of a CSV text, and the line of the text that it starts on (the first is 1). */
export interface CsvLine {
  readonly line: number;
  readonly cells: readonly string[];
}

const SEPARATORS = [',', ';', '\t'] as const;

/**
 * Cuts a CSV text into cells by RFC 4180, with three freedoms that spreadsheets and people take: a byte-order mark,
 * any line ending, and semicolons or tabs between cells where the first line has them. A quote inside a bare cell is an
 * inch mark. Empty lines are left out.
 *
 * @returns a sentence when a quoted cell is never closed, or when something follows its closing quote
 */
export function csvLines(text: string): Result<CsvLine[]> {
  const plain = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const separator = separatorOf(plain);
  const lines: CsvLine[] = [];
  let at = 0;
  let line = 1;
  while (at < plain.length) {
    const record = readRecord(plain, at, line, separator);
    if (!record.ok) return record;
    const { cells, next, newlines } = record.value;
    if (cells.some((cell) => cell.trim() !== '')) lines.push({ line, cells });
    at = next;
    line += newlines;
  }
  return ok(lines);
}

/** The separator that the first line has most of; a comma when it has none. */
export function separatorOf(text: string): string {
  const first = text.trimStart().split('\n', 1)[0] ?? '';
  const count = (separator: string) => first.split(separator).length;
  return SEPARATORS.reduce((best, other) => (count(other) > count(best) ? other : best));
}

interface ReadRecord {
  readonly cells: string[];
  readonly next: number;
  readonly newlines: number;
}

function readRecord(text: string, start: number, line: number, separator: string): Result<ReadRecord> {
  const cells: string[] = [];
  let at = start;
  let newlines = 0;
  for (;;) {
    const cell = text[at] === '"' ? readQuoted(text, at, separator) : readBare(text, at, separator);
    if ('fault' in cell)
      return refuse(FIELDS.points, `Points: line ${line}: ${cell.fault}; close it, or leave quotes out.`);
    cells.push(cell.value);
    newlines += cell.value.split('\n').length - 1;
    at = cell.next + 1;
    if (text[cell.next] !== separator) return ok({ cells, next: at, newlines: newlines + 1 });
  }
}

type ReadCell = { readonly value: string; readonly next: number } | { readonly fault: string };

/** A cell up to the separator, the end of its line, or the end of the text. */
function readBare(text: string, start: number, separator: string): ReadCell {
  let end = start;
  while (end < text.length && text[end] !== separator && text[end] !== '\n') end += 1;
  return { value: text.slice(start, end), next: end };
}

/** A cell in quotes, in which two quotes stand for one. */
function readQuoted(text: string, start: number, separator: string): ReadCell {
  let value = '';
  let from = start + 1;
  for (;;) {
    const quote = text.indexOf('"', from);
    if (quote < 0) return { fault: 'a quoted cell is never closed' };
    value += text.slice(from, quote);
    if (text[quote + 1] !== '"') {
      const end = readBare(text, quote + 1, separator);
      if ('fault' in end || end.value.trim() !== '')
        return { fault: 'something follows the closing quote of a cell' };
      return { value, next: end.next };
    }
    value += '"';
    from = quote + 2;
  }
}
