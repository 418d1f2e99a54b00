/**
 * Bad input as data. `field` is the label that the user sees; `text` is one whole sentence that names the field, says
 * what was wrong and what would be right.
 */
export interface Problem {
  readonly field: string;
  readonly text: string;
}

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: Problem };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });
export const refuse = (field: string, text: string): { ok: false; problem: Problem } => ({
  ok: false,
  problem: { field, text },
});
