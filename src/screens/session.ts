import { distance } from '../geometry/point.ts';
import type { Entry, EntryOf, PullEnd, Thing } from '../job/entry-schema.ts';
import { isKind, ofKind, thingKey } from '../job/log.ts';
import { thingName } from '../job/words.ts';
import { baselineChange } from '../judge/findings.ts';
import { pullPlan } from '../judge/pull-ends.ts';
import { crossingSine } from '../judge/stake-holds.ts';
import type { HoleAssessment } from '../judge/types.ts';
import { type JobView, pointOf, pullsBetween } from '../judge/view.ts';
import { small } from '../judge/words.ts';
import type { PullToRead } from './pull-flow.tsx';

/** After this long without an entry somebody may have knocked a stake, milliseconds: half a working day. */
const NEW_SESSION_MS = 4 * 3600 * 1000;

/** Text of the note by which the log says that stakes were not looked at when a session began. */
const NOT_LOOKED_AT =
  'A–B was not pulled again when work began again: a stake knocked meanwhile would not show.';

/** The same for who pulled A–B and nothing else. */
const NO_WITNESS =
  'A–B was pulled when work began again, and no other line: a stake that went sideways would not show.';

/** What is to be done, or was found, about the stakes since work began again. */
export interface Session {
  /** The pull to make now; null when both are made. */
  readonly ask: (PullToRead & { readonly expected: number }) | null;
  /** Why, or what for. */
  readonly why: string;
  /** What A–B told: `A–B still fits: 3 mm from before, 9 mm would be trouble.`; null before it is pulled. */
  readonly found: string | null;
  /** Text of the note that is logged when the user goes on without the pull. */
  readonly without: string;
}

const A: Thing = { kind: 'stake', label: 'A' };
const B: Thing = { kind: 'stake', label: 'B' };

/**
 * Whether A and B still stand where they stood: asked when a job is taken up again half a day or more after its last
 * entry, until A–B is pulled, and one more line to something that stood still; or until the user says not now.
 *
 * @param now milliseconds since 1970
 * @returns null when nothing is to be asked or told
 */
export function sessionOf(view: JobView, holes: readonly HoleAssessment[], now: number): Session | null {
  const began = sessionBegan(view.entries, now);
  if (began === null || !view.measured.baseline || holes.every(({ poured }) => poured)) return null;
  const fresh = view.entries.slice(began);
  if (ofKind(fresh, 'note').some(({ body }) => body.text === NOT_LOOKED_AT || body.text === NO_WITNESS))
    return null;
  const pulls = ofKind(fresh, 'pull');
  if (!pulls.some((pull) => joins(pull, A, B)))
    return {
      ask: { from: nailIn(A), to: nailIn(B), expected: view.measured.baseline.length },
      why: `A to B was last pulled ${sincePulled(view.entries, now)} ago: a stake may have been knocked meanwhile.`,
      found: null,
      without: NOT_LOOKED_AT,
    };
  const change = baselineChange(view);
  if (!change) return null;
  const found = changeWords(view, change);
  const fits = Math.abs(change.change) <= change.allowed;
  const witness = fits && !pulls.some(isWitness) ? witnessPull(view) : null;
  if (!witness && !isLast(view.entries, pulls)) return null;
  const why = witness
    ? `A–B alone does not show a stake that went sideways: one more pull, from A to ${thingName(witness.to.thing, view.plan)}, does.`
    : '';
  return { ask: witness, why, found, without: NO_WITNESS };
}

/** Place of the first entry of the session that is under way; null in the first one. */
function sessionBegan(entries: readonly Entry[], now: number): number | null {
  const times = entries.map(({ at }) => Date.parse(at));
  const last = times.at(-1);
  if (last === undefined) return null;
  if (now - last >= NEW_SESSION_MS) return entries.length;
  const began = times.findLastIndex((time, i) => i > 0 && time - times[i - 1]! >= NEW_SESSION_MS);
  return began < 0 ? null : began;
}

/** How long ago A–B was last pulled. It is asked for only where it was. */
function sincePulled(entries: readonly Entry[], now: number): string {
  const last = ofKind(entries, 'pull').findLast((pull) => joins(pull, A, B));
  const hours = Math.floor((now - Date.parse(last?.at ?? '')) / 3600_000);
  if (hours < 48) return `${hours} hours`;
  return `${Math.floor(hours / 24)} days`;
}

function changeWords(view: JobView, { change, allowed }: { change: number; allowed: number }): string {
  const { units } = view.plan;
  const [off, trouble] = [small(change, units), small(allowed, units)];
  return Math.abs(change) <= allowed
    ? `A–B still fits: ${off} from before, ${trouble} would be trouble.`
    : `A–B does not fit any more: ${off} from before, and more than ${trouble} is no luck.`;
}

const joins = ({ body }: EntryOf<'pull'>, one: Thing, other: Thing): boolean => {
  const ends = [body.from, body.to].map(({ thing }) => thingKey(thing));
  return ends.includes(thingKey(one)) && ends.includes(thingKey(other));
};

/** From A or B to anything else. */
const isWitness = (pull: EntryOf<'pull'>): boolean => {
  const ends = [pull.body.from, pull.body.to].map(({ thing }) => thingKey(thing));
  return !joins(pull, A, B) && (ends.includes(thingKey(A)) || ends.includes(thingKey(B)));
};

/** What was found is told until something else is logged. */
const isLast = (entries: readonly Entry[], pulls: readonly EntryOf<'pull'>[]): boolean => {
  const last = entries.at(-1);
  return (
    last !== undefined &&
    isKind(last, 'pull') &&
    pulls.at(-1)?.id === last.id &&
    (joins(last, A, B) || isWitness(last))
  );
};

const nailIn = (thing: Thing): PullEnd => ({ thing, touch: { at: 'nail' } });

/** From A to what was pulled from it before and stands fixed, where that crosses A–B nearest to square. */
function witnessPull(view: JobView): Session['ask'] {
  const [a, b] = [pointOf(view, A)?.fix?.place, pointOf(view, B)?.fix?.place];
  if (!a || !b) return null;
  const still = [...view.points.values()].flatMap(({ thing, fix }) => {
    const gone = thing.kind === 'dug-hole' || (thing.kind === 'hole-stake' && view.dugHoles.has(thing.hole));
    const key = thingKey(thing);
    if (!fix || gone || key === thingKey(A) || key === thingKey(B)) return [];
    return pullsBetween(view, A, thing).length > 0 ? [{ thing, place: fix.place }] : [];
  });
  const best = still.sort(
    (p, q) =>
      crossingSine(a, q.place, b) - crossingSine(a, p.place, b) ||
      distance(a, p.place) - distance(a, q.place),
  )[0];
  return best ? pullPlan(view, A, a, best.thing, best.place) : null;
}

export const sessionTitle = (session: Session): string =>
  session.found === null ? 'have A and B stood still?' : 'the line A–B';
