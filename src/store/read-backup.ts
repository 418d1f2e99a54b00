import * as v from 'valibot';
import { BODIES, type Entry } from '../job/entry-schema.ts';
import { faultOf, type SchemaFault } from '../job/schema-problem.ts';
import { ok, type Result, refuse } from '../units/index.ts';
import { checksumOf } from './backup.ts';
import { BACKUP_FORMAT, BACKUP_VERSION, type Backup, BackupSchema, MOST_ENTRIES } from './backup-schema.ts';
import { scanText, unsafeKey } from './hostile.ts';

/** Three times a log of the most entries (6.5 MB), so that a wrong file is refused before it fills the memory. */
export const MOST_BACKUP_BYTES = 20 * 1024 * 1024;

/**
 * Reads the text of a backup file, whole or not at all. Pure: the desk command uses it too.
 *
 * @returns the backup, or one sentence that says what is wrong with the file and what to do
 */
export function readBackup(text: string): Result<Backup> {
  const refusal = refuseText(text);
  if (refusal) return no(refusal);
  const parsed = parseJson(text);
  if (parsed === undefined)
    return no('it is not a Swingtape backup; choose a file named like “… .swingtape.txt”.');
  const foreign = refuseForeign(parsed);
  if (foreign) return no(foreign);
  const shape = v.safeParse(BackupSchema, parsed, { abortEarly: true });
  if (!shape.success) return no(faultSentence(faultOf(shape.issues[0]), parsed as Unread));
  const backup = shape.output;
  const list = listForObject(parsed, backup);
  if (list) {
    const fault = { keys: list, path: list.join('.'), text: 'must be an object, but is a list' };
    return no(faultSentence(fault, parsed as Unread));
  }
  const problem = refuseCount(backup.log) ?? refuseLog(backup.log) ?? refuseChecksum(backup);
  return problem ? no(problem) : ok(backup);
}

const no = (text: string) => refuse('Backup', `Backup: ${text}`);
const KINDS = Object.keys(BODIES);
const ANOTHER = 'use another copy of the backup';

function refuseText(text: string): string | null {
  if (text.length > MOST_BACKUP_BYTES)
    return `the file is larger than ${MOST_BACKUP_BYTES / 1024 / 1024} MB, and no job is; choose the right file.`;
  if (text.trim() === '') return `the file is empty; ${ANOTHER}.`;
  const scan = scanText(text);
  if (scan === 'deep') return `it is nested deeper than any job; choose the right file.`;
  if (scan === 'many') return `it has more parts than any job; choose the right file.`;
  if (scan === 'cut-off') return `the file is cut off before its end; ${ANOTHER}, or save it again.`;
  return null;
}

/** `undefined` when it is no JSON: JSON itself has no such value. */
function parseJson(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

/** A parsed file before anything is known of it. */
interface Unread {
  readonly format?: unknown;
  readonly version?: unknown;
  readonly log?: unknown;
}

function refuseForeign(data: unknown): string | null {
  const file = data as Unread | null;
  if (typeof file !== 'object' || file?.format !== BACKUP_FORMAT)
    return 'it is some other kind of file; choose a file named like “… .swingtape.txt”.';
  const { version, log } = file;
  if (typeof version === 'number' && version > BACKUP_VERSION)
    return 'it was made by a newer version of Swingtape; update the app first, then restore it.';
  if (Array.isArray(log) && log.length > MOST_ENTRIES)
    return `it has ${log.length} entries, and the most that is read is ${MOST_ENTRIES}; choose the right file.`;
  const key = unsafeKey(file);
  if (key) return `it has a member named “${key}”, which no Swingtape writes; ${ANOTHER}.`;
  return null;
}

function faultSentence(fault: SchemaFault, file: Unread): string {
  const [top, index, ...rest] = fault.keys;
  if (top !== 'log' || typeof index !== 'number') return `“${fault.path}” ${fault.text}; ${ANOTHER}.`;
  const where = rest.length > 0 ? `: “${rest.join('.')}”` : '';
  return `entry ${index + 1}${kindOf(file, index)}${where} ${fault.text}; ${ANOTHER}.`;
}

function kindOf(file: Unread, index: number): string {
  const entry = (file.log as readonly ({ body?: { kind?: unknown } | null } | null)[])[index];
  const kind = KINDS.find((known) => known === entry?.body?.kind);
  return kind ? ` (${kind})` : '';
}

type Keys = SchemaFault['keys'];

/** Valibot takes a list for an object whose members are all optional. The place of the first such list; null when all fits. */
function listForObject(read: unknown, taken: unknown, keys: Keys = []): Keys | null {
  if (typeof read !== 'object' || read === null) return null;
  const isList = Array.isArray(read);
  if (isList !== Array.isArray(taken)) return keys;
  for (const [key, member] of Object.entries(read)) {
    const place = [...keys, isList ? Number(key) : key];
    const below = listForObject(member, (taken as Record<string, unknown>)[key], place);
    if (below) return below;
  }
  return null;
}

/**
 * A file is read only where as many entries as a job may have can still be numbered after it. Each entry more uses up one
 * number and one place, so a job that was once read is read ever after.
 */
function refuseCount(log: readonly Entry[]): string | null {
  const last = Number.MAX_SAFE_INTEGER - (MOST_ENTRIES - log.length);
  const i = log.findIndex(({ seq }) => seq > last);
  if (i < 0) return null;
  return `entry ${i + 1}: “seq” is ${log[i]!.seq}, so large that no further entry could be numbered after it; ${ANOTHER}.`;
}

/** What a schema cannot say: ids are single, and a strike names an older entry. */
function refuseLog(log: readonly Entry[]): string | null {
  const byId = new Map<string, Entry>();
  for (const [i, entry] of log.entries()) {
    if (byId.has(entry.id)) return `entry ${i + 1} has the same “id” as an earlier one; ${ANOTHER}.`;
    byId.set(entry.id, entry);
  }
  for (const [i, entry] of log.entries()) {
    if (entry.body.kind !== 'strike') continue;
    const target = byId.get(entry.body.entry);
    if (!target) return `entry ${i + 1} (strike): “body.entry” names no entry of this file; ${ANOTHER}.`;
    if (target.seq >= entry.seq)
      return `entry ${i + 1} (strike): “body.entry” names an entry that is not older than the strike; ${ANOTHER}.`;
  }
  return null;
}

function refuseChecksum(backup: Backup): string | null {
  if (backup.checksum === undefined || backup.checksum === checksumOf(backup)) return null;
  return `its contents do not fit its “checksum”, so it was damaged or edited; ${ANOTHER}, or take the checksum line out if you edited it yourself.`;
}
