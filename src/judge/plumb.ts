import { length, scale, type Vec } from '../geometry/point.ts';
import type { EntryOf, Side } from '../job/entry-schema.ts';
import { sideName, thingName, turningOf } from '../job/words.ts';
import { chanceWithinDisc, principalAxes, sigmaAlong } from './chance.ts';
import { judged, unmeasured } from './judgement.ts';
import { HALF_WIDTH_95 } from './normal.ts';
import { AXIS, plumbRepeats, type Repeats } from './plumb-repeats.ts';
import type { Judgement } from './types.ts';
import { type JobView, pointOf, postOf } from './view.ts';
import { capital, leanCellWords, leanWords, listWords, wayWords } from './words.ts';

/**
 * A post's lean held against the plumb tolerance: the 2-D normal over the disc of leans that are allowed, not each face by
 * itself. Checked when both directions were read twice (the same face again, the one
 * opposite, or with the level turned) and the two agree.
 */
export function judgePlumb(view: JobView, hole: string): Judgement {
  const tolerance = view.plan.tolerances.plumb;
  const post = postOf(hole);
  const name = thingName(post, view.plan);
  const readings = view.book.plumbs(hole);
  const lean = pointOf(view, post)?.lean ?? null;
  if (!lean) return unmeasured('plumb', tolerance, missingWords(view, hole, readings));
  const { perMetre, covariance } = lean;
  const error = length(perMetre);
  const { units } = view.plan;
  const allowed = leanWords(tolerance, units);
  const sigma = leanSigma(perMetre, covariance);
  const again = plumbRepeats(view, readings);
  const doubted = readings.some(({ id }) => view.suspects.has(id));
  const at = pointOf(view, post)?.fix?.place ?? view.sited.get(hole)?.site;
  const way = at && error > 0 ? ` ${wayWords(at, perMetre, view.ground)}` : '';
  return judged(
    {
      quantity: 'plumb',
      chance: chanceWithinDisc(perMetre, covariance, tolerance),
      best: () => chanceWithinDisc({ x: 0, y: 0 }, covariance, tolerance),
      error,
      sigma,
      tolerance,
      checked: !doubted && again.unread.length === 0 && again.apart.length === 0,
    },
    {
      cell: (verdict, e, u) => leanCellWords(verdict, e, u, units),
      out: () => `${capital(name)} leans ${leanWords(error, units)}${way}, and ${allowed} is allowed.`,
      unsure: () =>
        `${capital(name)} leans ${leanWords(error, units)}${way}, known to ± ${leanWords(HALF_WIDTH_95 * sigma, units)}, and ${allowed} is allowed: it may be in or out. Bring it nearer plumb, or hold the level on it again.`,
      unchecked: () =>
        doubted
          ? `A plumb reading on ${name} looks misread: hold the level there again, and strike the wrong one.`
          : uncheckedWords(view, hole, again),
    },
  );
}

function leanSigma(lean: Vec, covariance: { xx: number; xy: number; yy: number }): number {
  const size = length(lean);
  return size > 0 ? sigmaAlong(covariance, scale(lean, 1 / size)) : principalAxes(covariance).major;
}

type Plumb = EntryOf<'plumb'>;

function missingWords(view: JobView, hole: string, readings: readonly Plumb[]): string {
  const name = thingName(postOf(hole), view.plan);
  const read = readings.at(-1)?.body.side;
  if (read === undefined)
    return `The lean of ${name} is not measured: hold the level on two faces side by side.`;
  const sides = (['front', 'left', 'back', 'right'] as const).filter((side) => AXIS[side] !== AXIS[read]);
  const names = sides.map((side) => sideName(side, turningOf(view.plan, hole)));
  return `The lean of ${name} is measured one way only: hold the level on the ${listWords(names, 'or')} face too.`;
}

function uncheckedWords(view: JobView, hole: string, { unread, apart }: Repeats): string {
  const turning = turningOf(view.plan, hole);
  const faces = (sides: readonly Side[]) =>
    `the ${listWords(sides.map((side) => sideName(side, turning)))} ${sides.length === 1 ? 'face' : 'faces'}`;
  if (apart.length > 0)
    return `Two plumb readings on ${faces(apart)} or opposite do not agree: hold the level there again and strike the wrong one.`;
  return `A misread level would go unseen: hold it on ${faces(unread)} too.`;
}
