import type { Entry, EntryOf } from '../job/entry-schema.ts';
import type { thingKey } from '../job/log.ts';
import { endName, sideName, thingName, turningOf } from '../job/words.ts';
import type { PullResult } from '../measure/types.ts';
import { isDecided } from './gate.ts';
import { pouredAt } from './poured.ts';
import type { Finding } from './types.ts';
import { type JobView, postOf } from './view.ts';
import { capital, leanWords, small } from './words.ts';

/** Two readings of one thing differ by more than luck from here up: 3.29 sigma of their difference, one in a thousand. */
const NO_LUCK = 3.29;

/** What was read of a post since its concrete went in. */
export interface SincePour {
  /** When the last pour was, milliseconds since 1970. */
  readonly pouredAt: number;
  /** When its place, its plumb and its top were last read since; null where they were not. */
  readonly place: number | null;
  readonly plumb: number | null;
  readonly top: number | null;
}

/** Null before the hole is poured. */
export function sincePour(view: JobView, hole: string): SincePour | null {
  const pour = view.book.pours(hole).at(-1);
  if (!pour) return null;
  const since = view.entries.filter((entry, index) => isSince(pour, entry, index));
  const last = (reads: (entry: Entry) => boolean): number | null => {
    const entry = since.findLast(reads);
    return entry ? Date.parse(entry.at) : null;
  };
  return {
    pouredAt: Date.parse(pouredAt(pour.entry)),
    place: last(({ body }) => readsPlace(body, hole)),
    plumb: last(({ body }) => body.kind === 'plumb' && body.hole === hole),
    top: last(({ body }) => body.kind === 'rod' && body.on.point === 'top' && body.on.hole === hole),
  };
}

interface Pour {
  readonly entry: EntryOf<'pour'>;
  readonly index: number;
}

/** A pour that was logged later than it was made has readings before it that were made after. */
const isSince = ({ entry, index }: Pour, other: Entry, at: number): boolean =>
  at > index || (entry.body.time !== undefined && Date.parse(other.at) > Date.parse(entry.body.time));

const readsPlace = (body: Entry['body'], hole: string): boolean => {
  const isPost = ({ thing }: { readonly thing: Parameters<typeof thingKey>[0] }) =>
    thing.kind === 'post' && thing.hole === hole;
  if (body.kind === 'pull') return isPost(body.from) || isPost(body.to);
  return body.kind === 'offset' && isPost(body.of);
};

/** One reading that is another since the pour, in a sentence, with its entry. */
export interface Shift {
  readonly entry: string;
  readonly text: string;
}

/**
 * How a post moved since its concrete went in: tapes along one line, and the level on one face, that read otherwise than
 * the last time before the pour by more than luck. Readings of another stand are no matter: a post that was pushed since is
 * another. A top is not looked at: the rod's own set-up may have changed.
 */
export function shiftsSincePour(view: JobView, hole: string): Shift[] {
  const pour = view.book.pours(hole).at(-1);
  if (!pour) return [];
  const places = placesIn(view);
  const late = (id: string) => {
    const at = places.get(id);
    const entry = at === undefined ? undefined : view.entries[at];
    return entry !== undefined && isSince(pour, entry, at!);
  };
  return [...movedTapes(view, hole, late), ...movedFaces(view, hole, late)];
}

/** Where each entry stands among those of the log, worked out once though every poured hole asks. */
const known = new WeakMap<JobView, ReadonlyMap<string, number>>();

function placesIn(view: JobView): ReadonlyMap<string, number> {
  const before = known.get(view);
  if (before) return before;
  const places = new Map(view.entries.map(({ id }, index) => [id, index]));
  known.set(view, places);
  return places;
}

function movedTapes(view: JobView, hole: string, late: (id: string) => boolean): Shift[] {
  const lines = new Map<string, PullResult>();
  const shifts = new Map<string, Shift>();
  for (const { result } of view.pullsOf(postOf(hole))) {
    const body = view.pullBodies.get(result.entry)?.body;
    if (!body) continue;
    const line = JSON.stringify([body.from, body.to]);
    if (!late(result.entry)) {
      lines.set(line, result);
      continue;
    }
    const before = lines.get(line);
    if (!before) continue;
    // Both are held against the same prediction, each as its own tape was held.
    const by = result.residual - before.residual;
    if (Math.abs(by) <= NO_LUCK * Math.hypot(result.sigma, before.sigma)) shifts.delete(line);
    else
      shifts.set(line, {
        entry: result.entry,
        text: `${endName(body.from, view.plan)} to ${endName(body.to, view.plan)} reads ${small(by, view.plan.units)} ${by > 0 ? 'more' : 'less'} than before the pour`,
      });
  }
  return [...shifts.values()];
}

/** Lean past a face, metres per metre, out positive. */
const leanOf = ({ offset, over, leans }: EntryOf<'plumb'>['body']): number =>
  leans === 'none' ? 0 : ((leans === 'out' ? 1 : -1) * offset.m) / over.m;

function movedFaces(view: JobView, hole: string, late: (id: string) => boolean): Shift[] {
  const before = new Map<string, number>();
  const shifts = new Map<string, Shift>();
  const sigma = Math.SQRT2 * view.plan.instruments.plumbError;
  for (const { id, body } of view.book.plumbs(hole)) {
    const lean = leanOf(body);
    const was = before.get(body.side);
    if (!late(id)) before.set(body.side, lean);
    else if (was !== undefined && Math.abs(lean - was) > NO_LUCK * sigma)
      shifts.set(body.side, {
        entry: id,
        text: `on the ${sideName(body.side, turningOf(view.plan, hole))} face its top leans ${leanWords(lean - was, view.plan.units)} further ${lean > was ? 'out' : 'in'} than before the pour`,
      });
    else shifts.delete(body.side);
  }
  return [...shifts.values()];
}

/** `Post 4 moved since its concrete went in: A to post 4 reads 12 mm less than before the pour.` Empty where it did not. */
export function shiftWords(view: JobView, hole: string, shifts: readonly Shift[]): string {
  if (shifts.length === 0) return '';
  const name = capital(thingName(postOf(hole), view.plan));
  return `${name} moved since its concrete went in: ${shifts.map(({ text }) => text).join('; ')}.`;
}

/** What moved in its concrete is told until it is pushed back, or decided on. */
export function shiftFindings(view: JobView): Finding[] {
  return view.holes.flatMap(({ label }): Finding[] => {
    const shifts = shiftsSincePour(view, label);
    if (shifts.length === 0) return [];
    const entries = shifts.map(({ entry }) => entry);
    const last = view.entries.findLastIndex(({ id }) => entries.includes(id));
    if (isDecided(view, label, 'moved', last)) return [];
    const text = `${shiftWords(view, label, shifts)} While the concrete is wet it can be pushed back, and is then measured again; once it is set, whoever is responsible for the structure decides.`;
    return [{ code: 'decision', text, entries }];
  });
}
