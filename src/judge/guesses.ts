import type { EntryOf, PullEnd, Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import { thingName } from '../job/words.ts';
import { type JobView, pointOf } from './view.ts';
import { capital, listWords } from './words.ts';

/**
 * What a place rests on that nobody measured, and what to measure instead, in whole sentences; empty where nothing is
 * guessed. A guess is never hidden in a place: its doubt is part of the place's.
 *
 * - A tape held along a slope whose rise neither was written down nor follows from heights.
 * - A tape that touched a post above the ground while the level was not held on two faces of it.
 */
export function guessWords(view: JobView, thing: Thing): string {
  const pulls = view.pullsOf(thing).flatMap(({ result }) => view.pullBodies.get(result.entry) ?? []);
  return [riseWords(view, thing, pulls), leanWords(view, pulls)].filter((words) => words !== '').join(' ');
}

/** Whether a tape touched a post above the ground while its own lean is not read: its foot is then a guess. */
export const restsOnGuessedLean = (view: JobView, post: Thing): boolean =>
  view
    .pullsOf(post)
    .flatMap(({ result }) => view.pullBodies.get(result.entry) ?? [])
    .flatMap(({ body }) => [body.from, body.to])
    .some((end) => thingKey(end.thing) === thingKey(post) && leanIsGuessed(view, end));

function riseWords(view: JobView, thing: Thing, pulls: readonly EntryOf<'pull'>[]): string {
  const others = pulls
    .filter(({ body }) => riseIsGuessed(view, body))
    .map(({ body }) => (thingKey(body.from.thing) === thingKey(thing) ? body.to.thing : body.from.thing));
  if (others.length === 0) return '';
  const names = [...new Set(others.map((other) => thingName(other, view.plan)))];
  return `The rise of the tape from ${listWords(names)} was not measured, and is a guess: read the rod at both ends, or hold that tape level.`;
}

function riseIsGuessed(view: JobView, { from, to, hold }: EntryOf<'pull'>['body']): boolean {
  if (hold.how === 'level' || hold.rise) return false;
  return [from, to].some(({ thing }) => !view.heights.has(groundKey(thing)));
}

const groundKey = (thing: Thing): string =>
  thing.kind === 'stake' ? `stake:${thing.label}` : thing.kind === 'nail' ? '' : `ground:${thing.hole}`;

function leanWords(view: JobView, pulls: readonly EntryOf<'pull'>[]): string {
  const posts = pulls.flatMap(({ body }) => [body.from, body.to]).filter((end) => leanIsGuessed(view, end));
  if (posts.length === 0) return '';
  const names = [...new Set(posts.map(({ thing }) => thingName(thing, view.plan)))];
  const whose = names.length === 1 ? 'it' : 'each';
  return `${capital(listWords(names))} ${names.length === 1 ? 'was' : 'were'} touched above the ground and the lean was not read, so that is a guess: hold the level on two faces of ${whose}, side by side.`;
}

const leanIsGuessed = (view: JobView, { thing, height }: PullEnd): boolean =>
  thing.kind === 'post' && height !== undefined && height.m !== 0 && !pointOf(view, thing)?.lean;
