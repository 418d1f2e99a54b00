import * as v from 'valibot';

/** What a person wrote beside an entry. */
export const NoteSchema = v.optional(v.pipe(v.string(), v.maxLength(500)));
