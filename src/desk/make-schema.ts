import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { toJsonSchema } from '@valibot/to-json-schema';
import { BodySchema, EntrySchema, PullEndSchema, ThingSchema, TouchSchema } from '../job/entry-schema.ts';
import { LengthSchema } from '../job/length.ts';
import { HoldsSchema, HoleSpecSchema, LabelSchema, PlanSchema, ShapeSchema } from '../job/plan-schema.ts';
import { BACKUP_VERSION, BackupSchema } from '../store/backup-schema.ts';
import { canonicalJson } from '../store/canonical-json.ts';

/** Where the published schema lies; it is committed, and a test holds that it is what is generated. */
export const SCHEMA_FILE = new URL('../../public/job.schema.json', import.meta.url);

/** Parts that a reader looks for by name. */
const definitions = {
  length: LengthSchema,
  label: LabelSchema,
  thing: ThingSchema,
  touch: TouchSchema,
  pullEnd: PullEndSchema,
  holds: HoldsSchema,
  holeSpec: HoleSpecSchema,
  shape: ShapeSchema,
  plan: PlanSchema,
  body: BodySchema,
  entry: EntrySchema,
};

const DESCRIPTION = [
  'One job: its append-only log, with the plan and the site in it.',
  'SI units; a length also keeps the text that was typed and the units that it was typed in.',
  'What a schema cannot say, and the reader checks as well: ids are single; a strike names an older entry;',
  'the text and the metres of a length agree to 0.000001 m; the checksum fits; nothing is nested deeper than 16.',
].join(' ');

/** The JSON Schema (2020-12) of a backup file, as text, from the very schema that `readBackup` validates with. */
export function makeSchema(): string {
  // Checks are code, which JSON Schema cannot hold: DESCRIPTION says them in words. JSON has no infinite numbers.
  const {
    $schema,
    $defs = {},
    ...body
  } = toJsonSchema(BackupSchema, {
    target: 'draft-2020-12',
    definitions,
    ignoreActions: ['check', 'finite'],
  });
  const head = {
    $schema,
    $id: `urn:swingtape:job:${BACKUP_VERSION}`,
    title: 'Swingtape job, backup file',
    description: DESCRIPTION,
  };
  return `${JSON.stringify(withReferences({ ...head, ...body, $defs }), null, 2)}\n`;
}

/** The converter writes a described part out in full; here it becomes a reference with its description beside it. */
function withReferences({ $defs, ...schema }: { readonly $defs: Record<string, unknown> }): object {
  const names = new Map(Object.entries($defs).map(([name, part]) => [bare(part), name]));
  const visit = (node: unknown): unknown => {
    if (typeof node !== 'object' || node === null) return node;
    if (Array.isArray(node)) return node.map(visit);
    const name = names.get(bare(node));
    const description = 'description' in node ? { description: node.description } : {};
    return name ? { $ref: `#/$defs/${name}`, ...description } : eachMember(node, visit);
  };
  const kept = eachMember($defs, (part) => eachMember(part, visit));
  return { ...eachMember(schema, visit), $defs: kept };
}

const eachMember = (node: unknown, change: (member: unknown) => unknown): object =>
  Object.fromEntries(Object.entries(node as object).map(([key, member]) => [key, change(member)]));

/** What a part asks for, whatever it says of itself. */
const bare = (part: unknown): string => canonicalJson({ ...(part as object), description: undefined });

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(SCHEMA_FILE, makeSchema());
  console.log(`Wrote ${fileURLToPath(SCHEMA_FILE)}`);
}
