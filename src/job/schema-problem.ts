import * as v from 'valibot';

/** Where in the data a schema was broken, such as `body.reading.m`, and a clause that says how. */
export interface SchemaFault {
  readonly path: string;
  readonly keys: readonly (string | number)[];
  readonly text: string;
}

/** Longest piece of the user's own data that a sentence repeats. */
const LONGEST_QUOTE = 40;

/** The first fault that a schema found, or null when the data is good. */
export function schemaFault(schema: v.GenericSchema<unknown>, data: unknown): SchemaFault | null {
  const result = v.safeParse(schema, data, { abortEarly: true });
  return result.success ? null : faultOf(result.issues[0]);
}

export function faultOf(issue: v.BaseIssue<unknown>): SchemaFault {
  const keys = (issue.path ?? []).map((item) => item.key as string | number);
  return { path: keys.join('.'), keys, text: faultText(issue) };
}

function faultText(issue: v.BaseIssue<unknown>): string {
  if (issue.type === 'check') return issue.message;
  if (issue.received === 'undefined') return 'is missing';
  if (issue.expected === 'never') return 'is not known to this version';
  const expected = issue.expected ? `must be ${shorten(issue.expected)}` : 'is not allowed';
  return `${expected}, but is ${shorten(issue.received)}`;
}

const shorten = (text: string): string =>
  text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}…` : text;
