import type { Entry } from '../job/entry-schema.ts';
import { endName, sideName, thingName, turningOf } from '../job/words.ts';
import type { Placed } from './book.ts';
import { isDecided } from './gate.ts';
import { plumbReaderOf } from './level-error.ts';
import { REPEATS_AGREE } from './plumb-repeats.ts';
import { pouredAt } from './poured.ts';
import type { Finding } from './types.ts';
import { type JobView, postOf } from './view.ts';
import { capital, leanWords, small } from './words.ts';

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
  const last = (readings: readonly Read[]): number | null => {
    const read = readings.findLast(({ entry, index }) => isSince(pour, entry, index));
    return read ? Date.parse(read.entry.at) : null;
  };
  return {
    pouredAt: Date.parse(pouredAt(pour.entry)),
    place: last(view.book.places(hole)),
    plumb: last(view.book.allPlumbs(hole)),
    top: last(view.book.allTops(hole)),
  };
}

/** What is still to be read since the pour, in words: `the tapes`, `plumb`. Null before the hole is poured. */
export function wantedSincePour(view: JobView, hole: string): string[] | null {
  const since = sincePour(view, hole);
  if (!since) return null;
  const isPost = view.holes.find(({ label }) => label === hole)?.section.kind === 'post';
  return [
    ...(since.place === null ? ['the tapes'] : []),
    ...(isPost && since.plumb === null ? ['plumb'] : []),
  ];
}

/** A reading, as far as its time goes. */
interface Read {
  readonly entry: Pick<Entry, 'at'>;
  readonly index: number;
}
type Pour = Placed<'pour'>;

/** The first pour of the present stand: what is poured later does not take back what was found before. Null before any. */
function firstPour(view: JobView, hole: string): Pour | null {
  const pours = view.book.pours(hole);
  const from = view.book.standAt(postOf(hole));
  // A post that was pushed after its pour stands in that concrete all the same.
  return pours.find(({ index }) => index > from) ?? pours.at(-1) ?? null;
}

/** A pour that was logged later than it was made has readings before it that were made after. */
const isSince = ({ entry, index }: Pour, other: Read['entry'], at: number): boolean =>
  at > index || (entry.body.time !== undefined && Date.parse(other.at) > Date.parse(entry.body.time));

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
  const pour = firstPour(view, hole);
  if (!pour) return [];
  const places = placesIn(view);
  const late = (id: string) => {
    const at = places.get(id);
    const entry = at === undefined ? undefined : view.entries[at];
    return entry !== undefined && isSince(pour, entry, at!);
  };
  return [...shiftsIn(view, tapesOf(view, hole), late), ...shiftsIn(view, facesOf(view, hole), late)];
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

/** One reading of a line or a face, and how it is told that it reads `by` more than before. */
interface Reading {
  readonly entry: string;
  readonly of: string;
  readonly value: number;
  readonly sigma: number;
  readonly words: (by: number) => string;
}

/**
 * The last reading since the pour is held against the last before it. Before it, one that is believed misread counts only
 * where there is no other. Since, it counts all the same: a post that moved makes a true reading look misread.
 */
function shiftsIn(view: JobView, readings: readonly Reading[], late: (id: string) => boolean): Shift[] {
  const before = new Map<string, Reading>();
  const shifts = new Map<string, Shift>();
  for (const reading of readings) {
    const { entry, of, value, sigma, words } = reading;
    const was = before.get(of);
    if (!late(entry)) {
      if (!was || view.suspects.has(was.entry) || !view.suspects.has(entry)) before.set(of, reading);
    } else if (was && Math.abs(value - was.value) > REPEATS_AGREE * Math.hypot(sigma, was.sigma))
      shifts.set(of, { entry, text: words(value - was.value) });
    else shifts.delete(of);
  }
  return [...shifts.values()];
}

/** Both are held against the same prediction, each as its own tape was held. */
function tapesOf(view: JobView, hole: string): Reading[] {
  return view.pullsOf(postOf(hole)).flatMap(({ result: { entry, residual, sigma } }): Reading[] => {
    const body = view.pullBodies.get(entry)?.body;
    if (!body) return [];
    const words = (by: number) =>
      `${endName(body.from, view.plan)} to ${endName(body.to, view.plan)} reads ${small(by, view.plan.units)} ${by > 0 ? 'more' : 'less'} than before the pour`;
    return [{ entry, of: JSON.stringify([body.from, body.to]), value: residual, sigma, words }];
  });
}

/** Leans past a face, out positive, metres per metre; the level's own error is off where it is known. */
function facesOf(view: JobView, hole: string): Reading[] {
  const reader = plumbReaderOf(view);
  return view.book.plumbs(hole).map(({ id, body }) => {
    const { reading, sigma } = reader.value(body);
    const words = (by: number) =>
      `on the ${sideName(body.side, turningOf(view.plan, hole))} face its top leans ${leanWords(by, view.plan.units)} further ${by > 0 ? 'out' : 'in'} than before the pour`;
    const over = body.over.m;
    return { entry: id, of: body.side, value: reading / over, sigma: sigma / over, words };
  });
}

/** `Post 4 moved since its concrete went in: A to post 4 reads 12 mm less than before the pour.` Empty where it did not. */
export function shiftWords(view: JobView, hole: string, shifts: readonly Shift[]): string {
  if (shifts.length === 0) return '';
  const name = capital(thingName(postOf(hole), view.plan));
  return `${name} moved since its concrete went in: ${shifts.map(({ text }) => text).join('; ')}.`;
}

/** What moved in the concrete of a hole and nobody has decided on since; null where there is nothing. */
export function shiftToDecide(view: JobView, hole: string): Omit<Finding, 'code'> | null {
  const shifts = shiftsSincePour(view, hole);
  const entries = shifts.map(({ entry }) => entry);
  const last = Math.max(...entries.map((id) => placesIn(view).get(id) ?? -1));
  if (shifts.length === 0 || isDecided(view, hole, 'moved', last)) return null;
  const text = `${shiftWords(view, hole, shifts)} While the concrete is wet it can be pushed back, and is then measured again; once it is set, whoever is responsible for the structure decides.`;
  return { text, entries };
}

/** What moved in its concrete is told until it is pushed back, or decided on. */
export const shiftFindings = (view: JobView): Finding[] =>
  view.holes.flatMap(({ label }): Finding[] => {
    const shift = shiftToDecide(view, label);
    return shift ? [{ code: 'decision', ...shift }] : [];
  });
