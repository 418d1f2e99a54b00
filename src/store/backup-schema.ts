import * as v from 'valibot';
import { EntrySchema, IdSchema } from '../job/entry-schema.ts';

export const BACKUP_FORMAT = 'swingtape-job';
/** Raised when an older Swingtape could misread a file; such a file is then refused by it. */
export const BACKUP_VERSION = 2;
/** Versions that this app reads: each added entry kinds or optional fields to the one before, and changed none. */
const READ_VERSIONS = [1, BACKUP_VERSION] as const;
/** Far above the largest job (some 2,000 entries), and still read in a second on a phone. */
export const MOST_ENTRIES = 20_000;

const Time = v.pipe(v.string(), v.isoTimestamp(), v.description('UTC'));

/** A job's backup file. The published JSON Schema is generated from this: see `desk/make-schema.ts`. */
export const BackupSchema = v.strictObject({
  format: v.literal(BACKUP_FORMAT),
  version: v.picklist(READ_VERSIONS),
  savedAt: Time,
  job: v.strictObject({
    id: v.pipe(IdSchema, v.description('the same on every phone')),
    createdAt: Time,
  }),
  log: v.pipe(
    v.array(EntrySchema),
    v.maxLength(MOST_ENTRIES),
    v.description('every entry, struck ones too, in order of seq, then id'),
  ),
  checksum: v.optional(
    v.pipe(
      v.string(),
      v.regex(/^[0-9a-f]{64}$/, 'must be 64 hexadecimal digits'),
      v.description(
        'SHA-256 of the rest of the file as canonical JSON (RFC 8785); a file without one is read unchecked',
      ),
    ),
  ),
});
export type Backup = v.InferOutput<typeof BackupSchema>;
