import type { Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import { thingName } from '../job/words.ts';
import { GUARDED_FROM } from '../measure/reliability.ts';
import { quotedReadings } from './reading-words.ts';
import type { JobView } from './view.ts';
import { listWords } from './words.ts';

/** More names than these are no help to somebody who holds a tape. */
const MOST_NAMED = 2;

/**
 * What else may be wrong when a new reading between two things is beyond belief: it is held against earlier ones, and one
 * of those may be the misread one. A stake has too many pulls to blame one of them; so the posts and holes' stakes at the
 * ends are looked at, and stakes only when there is nothing else.
 *
 * @returns a sentence that names earlier pulls which look misread, or says that nothing guards them; empty where neither
 */
export function otherSuspectWords(view: JobView, from: Thing, to: Thing): string {
  const ends = [from, to].filter((end) => 'hole' in end);
  const about = ends.length > 0 ? ends : [from, to];
  const touching = about.flatMap((end) => view.pullsOf(end).map(({ result }) => result.entry));
  const between = (ids: readonly string[]) =>
    ends.length > 0 ? ids : ids.filter((id) => joins(view, id, from, to));
  const suspected = new Set(between(touching).filter((id) => view.suspects.has(id)));
  if (suspected.size > 0) return suspectWords(quotedReadings(view, suspected));
  const open = ends.find((end) => isUnguarded(view, end));
  return open ? `Or an earlier tape to ${thingName(open, view.plan)} is wrong: nothing guards them yet.` : '';
}

function suspectWords(quoted: readonly string[]): string {
  if (quoted.length > MOST_NAMED)
    return 'Earlier tapes to it looked misread before this one: it may be one of those.';
  const which = quoted.length === 1 ? 'that one' : 'one of those';
  return `${listWords(quoted, 'or')} looked misread before this one: it may be ${which} that is wrong.`;
}

function joins(view: JobView, id: string, one: Thing, other: Thing): boolean {
  const body = view.pullBodies.get(id)?.body;
  const keys = [thingKey(one), thingKey(other)];
  return body !== undefined && [body.from, body.to].every(({ thing }) => keys.includes(thingKey(thing)));
}

/** Pulled to before, and by nothing that would show a misread one. */
function isUnguarded(view: JobView, end: Thing): boolean {
  const pulls = view.pullsOf(end);
  return pulls.length > 0 && pulls.every(({ result }) => result.redundancy < GUARDED_FROM);
}
