import type { EntryOf } from '../job/entry-schema.ts';

/** When the concrete went in: as it was said, else when it was logged. */
export const pouredAt = ({ at, body }: EntryOf<'pour'>): string => body.time ?? at;
