import type { BaseIssue } from 'valibot';

/** Where data breaks its schema, such as `body.reading.m`, and a clause that says how. */
export interface SchemaFault {
  readonly keys: readonly (string | number)[];
  readonly path: string;
  /** `must be at most 1000, but is 1000000000` */
  readonly text: string;
}

export function faultOf(issue: BaseIssue<unknown>): SchemaFault {
  const keys = (issue.path ?? []).map((item) => item.key as string | number);
  return { keys, path: keys.join('.'), text: faultText(issue) };
}

/** Longest piece of the user's own data that a sentence repeats. */
const LONGEST_QUOTE = 40;

function faultText(issue: BaseIssue<unknown>): string {
  const { type, received } = issue;
  // Checks and patterns of ours carry their own clause.
  if (type === 'check' || type === 'regex') return issue.message;
  if (received === 'undefined') return 'is missing';
  if (issue.expected === 'never') return 'is not known to this version';
  if (type === 'min_length' && received === '0') return 'must not be empty';
  if (type === 'max_length') return `is too long: ${received}, and the most is ${limitOf(issue)}`;
  return `must be ${expectedWords(issue)}, but is ${shorten(received)}`;
}

function expectedWords(issue: BaseIssue<unknown>): string {
  switch (issue.type) {
    case 'min_value':
      return `at least ${limitOf(issue)}`;
    case 'max_value':
      return `at most ${limitOf(issue)}`;
    case 'iso_timestamp':
      return 'a time such as 2026-05-02T14:03:07.000Z';
    case 'integer':
      return 'a whole number';
    case 'finite':
      return 'a finite number';
    default:
      return TYPE_WORDS[issue.expected ?? ''] ?? listOf(issue.expected ?? 'something else');
  }
}

const TYPE_WORDS: Record<string, string> = {
  Object: 'an object',
  Array: 'a list',
  string: 'a text',
  number: 'a number',
  boolean: 'true or false',
};

/** Valibot writes `("a" | "b")`, and a bound as `>=1`. */
const listOf = (expected: string): string => expected.replace(/^\((.*)\)$/, '$1').replaceAll(' | ', ' or ');
const limitOf = ({ expected }: BaseIssue<unknown>): string => (expected ?? '').replace(/^[<>=]+/, '');

const shorten = (text: string): string =>
  text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}…` : text;
