import { coreOf, type Room, roomRound } from '../build/room.ts';
import type { Standing } from '../build/section-reach.ts';
import { dot, length, type SitePoint, subtract, type Vec } from '../geometry/point.ts';
import type { EntryOf } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import type { Covariance, Fix } from '../measure/types.ts';
import type { SitedHole } from '../plan/hole.ts';
import { ownLength } from '../plan/sections.ts';
import { isMetric } from '../units/index.ts';
import { chanceAtLeast, chanceWithinDisc, sigmaAlong } from './chance.ts';
import { DUG_AGREE, DUG_SIGMA, oneSided } from './dug.ts';
import { judged, unmeasured } from './judgement.ts';
import { HALF_WIDTH_95, ONE_SIDED_95 } from './normal.ts';
import { lackWords } from './position.ts';
import { decisionText, roomWords } from './room-words.ts';
import type { DugMiddle, Judgement } from './types.ts';
import { IN_FROM } from './verdict.ts';
import { type JobView, middleOf, pointOf, postOf } from './view.ts';

/** One sigma of either way by which the middle of a hole's foot is marked: halving what two walls of soil read (our choice). */
const MIDDLE_SIGMA = 0.006;

/** Least concrete beside a post where the plan says none: two inches, 50 mm (our choice; the drawing's own counts). */
const USUAL_COVER = { inch: '2″', metric: '50 mm' } as const;

export interface RoomJudgement {
  readonly room: Judgement;
  readonly middle: DugMiddle | null;
}

/**
 * The room that a dug hole leaves round what it holds: round the post as it stands, and before that on its mark. The hole
 * is taken as round, as wide as its least width at the foot, about its own middle as measured.
 *
 * @param widthChecked whether the width was read twice alike
 */
export function judgeRoom(view: JobView, sited: SitedHole | undefined, widthChecked: boolean): RoomJudgement {
  if (!sited) return none('Nothing can be placed yet: say where A and B stand first.');
  const { label } = sited;
  const width = view.book.dug(label).at(-1)?.entry.body.width.m;
  if (width === undefined) return none(`Hole ${label} is not dug yet, or not logged.`);
  const point = pointOf(view, middleOf(label));
  const readings = view.book.middles(label);
  if (readings.length === 0 || !point?.fix)
    return none(
      readings.length === 0
        ? `Nobody has measured yet where the middle of hole ${label} lies.`
        : lackWords(view, middleOf(label), point?.lack ?? null),
    );
  if (readings.some(({ index }) => index < widenedAt(view, label)))
    return none(`Hole ${label} was made wider since its middle was measured: measure it again.`);
  return judgeMeasured(view, sited, width, point.fix, widthChecked);
}

/** Whether a width is another than the one that was read last, and not the same read again. */
export function isOther(view: JobView, hole: string, width: number): boolean {
  const last = view.book.dug(hole).at(-1)?.entry.body.width.m;
  return last !== undefined && Math.abs(width - last) > DUG_AGREE;
}

const none = (why: string): RoomJudgement => ({ room: unmeasured('room', 0, why), middle: null });

/** Index of the first of the last readings that have the width which the hole has now. */
function widenedAt(view: JobView, hole: string): number {
  const readings: readonly { readonly entry: EntryOf<'dug'>; readonly index: number }[] = view.book.dug(hole);
  const last = readings.at(-1);
  const other = readings.findLastIndex(
    ({ entry }) => last !== undefined && Math.abs(entry.body.width.m - last.entry.body.width.m) > DUG_AGREE,
  );
  return readings[other + 1]?.index ?? -1;
}

function judgeMeasured(
  view: JobView,
  sited: SitedHole,
  width: number,
  fix: Fix,
  widthChecked: boolean,
): RoomJudgement {
  const { label } = sited;
  const stood = pointOf(view, postOf(label))?.fix ?? null;
  const place: SitePoint = stood?.place ?? sited.site;
  const standing = standingIn(view, sited);
  const least = leastCover(view, sited);
  const covariance = sum(fix.covariance, stood?.covariance ?? NO_DOUBT);
  const room = roomRound(standing, place, fix.place, width);
  const sigma = Math.hypot(DUG_SIGMA / 2, MIDDLE_SIGMA, sigmaAlong(covariance, room.tightest));
  const drift = subtract(fix.place, place);
  const at = { place: fix.place, covariance: fix.covariance, ellipse: fix.ellipse };
  const widen = least + ONE_SIDED_95 * sigma - room.atBest;
  const by = room.atBest < least ? widen : toShave(least + ONE_SIDED_95 * sigma - room.cover, drift, room);
  const say = {
    view,
    sited,
    room,
    drift,
    least,
    by,
    stands: stood !== null,
  };
  const words = roomWords(say);
  const verdict = roomJudgement(view, label, { room, sigma, least, fix, widthChecked, words });
  const off = offCore(view, sited, width, drift, withMiddle(covariance));
  const told = off ? 'decision' : verdict.verdict === 'in' ? 'fits' : 'shave';
  return {
    room: verdict,
    middle: {
      at,
      drift: length(drift),
      uncertainty: HALF_WIDTH_95 * Math.hypot(MIDDLE_SIGMA, sigmaAlong(covariance, along(drift))),
      cover: room.cover,
      least,
      told,
      words: [
        words.drift,
        verdict.verdict === 'in' ? words.fits : words.tight,
        ...(off ? [decisionText(view, label)] : []),
      ].join(' '),
      shave: verdict.verdict === 'in' ? null : { by, words: words.shave },
    },
  };
}

/**
 * What is shaved off one side makes the hole so much wider and moves its middle by half of that: towards the tightest place
 * both together gain (1 + cos)/2 of it, where the two ways differ by that angle.
 */
function toShave(missing: number, drift: Vec, { atBest, cover, tightest }: Room): number {
  if (length(drift) === 0 || atBest < cover) return missing;
  return (2 * missing) / (1 - dot(along(drift), tightest));
}

interface Measured {
  readonly room: Room;
  readonly sigma: number;
  readonly least: number;
  readonly fix: Fix;
  readonly widthChecked: boolean;
  readonly words: ReturnType<typeof roomWords>;
}

function roomJudgement(
  view: JobView,
  hole: string,
  { room, sigma, least, fix, widthChecked, words }: Measured,
): Judgement {
  const key = thingKey(middleOf(hole));
  const trusted = view.measured.settled && !view.suspectedThings.has(key) && !view.shaken.things.has(key);
  return judged(
    {
      quantity: 'room',
      chance: chanceAtLeast(room.cover, sigma, least),
      best: oneSided,
      error: room.cover - least,
      sigma,
      tolerance: 0,
      // A misreading that nobody would see may take no more than what there is to spare.
      checked: widthChecked && trusted && room.cover - fix.unseenShift >= least,
    },
    {
      cell: (verdict) => `${verdict}, ${words.cell}`,
      out: () => `${words.drift} ${words.tight}`,
      unsure: () => `${words.drift} ${words.tight}`,
      unchecked: () =>
        `A misread tape to the middle of hole ${hole} would go unseen: pull to it from one thing more, or measure the gap at the post.`,
    },
  );
}

/** What goes into the hole: the tube where the concrete stands in one, else the post or pier. */
function standingIn({ plan }: JobView, { section, facing }: SitedHole): Standing {
  const tube = section.kind === 'post' ? (plan.supplies?.tube?.m ?? 0) : 0;
  return tube > 0 ? { section: { kind: 'pier', diameter: tube }, facing } : { section, facing };
}

/** A tube or a pier need only go in: a tube has its concrete within, a pier is concrete itself. */
export function leastCover({ plan }: JobView, { section }: Pick<SitedHole, 'section'>): number {
  if (section.kind === 'pier' || (plan.supplies?.tube?.m ?? 0) > 0) return 0;
  const usual = ownLength(USUAL_COVER[isMetric(plan.units) ? 'metric' : 'inch'], plan.units);
  return Math.max(0, (plan.rules.cover ?? usual).m);
}

/** Whether it may stand off the core of its footing. In a tube the concrete goes where the post goes. */
function offCore(
  { plan }: JobView,
  { section }: SitedHole,
  width: number,
  drift: Vec,
  doubt: Covariance,
): boolean {
  if (section.kind === 'post' && (plan.supplies?.tube?.m ?? 0) > 0) return false;
  const base = Math.max(width, plan.supplies?.bell?.diameter.m ?? 0);
  return chanceWithinDisc(drift, doubt, coreOf(base)) < IN_FROM;
}

const NO_DOUBT: Covariance = { xx: 0, xy: 0, yy: 0 };
const sum = (p: Covariance, q: Covariance): Covariance => ({
  xx: p.xx + q.xx,
  xy: p.xy + q.xy,
  yy: p.yy + q.yy,
});
const withMiddle = (c: Covariance): Covariance =>
  sum(c, { xx: MIDDLE_SIGMA * MIDDLE_SIGMA, xy: 0, yy: MIDDLE_SIGMA * MIDDLE_SIGMA });

/** Unit vector along a drift; one that is nothing has no way of its own. */
function along(drift: Vec): Vec {
  const size = length(drift);
  return size > 0 ? { x: drift.x / size, y: drift.y / size } : { x: 1, y: 0 };
}
