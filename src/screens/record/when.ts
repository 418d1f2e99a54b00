/** A time of the log as the user's own phone writes it: `2 May 2026, 14:03`. */
export const whenWords = (at: string): string =>
  new Date(at).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** Without the time of day. */
export const dayWords = (at: string): string =>
  new Date(at).toLocaleDateString(undefined, { dateStyle: 'medium' });
