import { SIDES, type Side } from '../job/entry-schema.ts';
import { sideName, thingName, turningOf } from '../job/words.ts';
import { GUESSED_LEAN, plumbSigma } from '../measure/sigma.ts';
import { AXIS, REPEATS_AGREE, signedLean } from './plumb-repeats.ts';
import { type JobView, postOf } from './view.ts';
import { leanWords } from './words.ts';

/** A plumb reading that has not been logged yet. */
export interface PlumbAsked {
  readonly hole: string;
  readonly side: Side;
  /** As the level shows it, past the face, out positive, metres per metre. */
  readonly shown: number;
  /** What of that is the level's own error, where that is known. */
  readonly own?: number;
}

/** A lean past a face as it follows from what was read before, with one sigma of what a new reading may be off it. */
interface Expected {
  readonly lean: number;
  readonly sigma: number;
}

/**
 * Asks back when a plumb reading does not fit what was read of the post before, and names the slip that would explain it: out
 * taken for in, or the level held on another face.
 *
 * @returns one question; null when the reading is believable
 */
export function plumbDoubt(view: JobView, { hole, side, shown, own = 0 }: PlumbAsked): string | null {
  const { units } = view.plan;
  const lean = shown - own;
  const known = expected(view, hole, side);
  if (fits(lean, known ?? { lean: 0, sigma: GUESSED_LEAN })) return null;
  if (!known)
    return `A top ${leanWords(lean, units)} off plumb is more than a post that stands by eye. Read it again, or keep it as read.`;
  const ought = `By what was read before, this face ought to show ${wayWords(known.lean + own, units)}.`;
  const slip = slipWords(view, { hole, side, lean }, known);
  return [ought, ...(slip ? [slip] : []), 'Read it again, or keep it as read.'].join(' ');
}

const fits = (lean: number, { lean: ought, sigma }: Expected): boolean =>
  Math.abs(lean - ought) <= REPEATS_AGREE * sigma;

function wayWords(lean: number, units: JobView['plan']['units']): string {
  const words = leanWords(lean, units);
  return words === leanWords(0, units) ? 'plumb' : `the top ${words} ${lean > 0 ? 'out' : 'in'}`;
}

function slipWords(
  view: JobView,
  { hole, side, lean }: Pick<PlumbAsked, 'hole' | 'side'> & { readonly lean: number },
  known: Expected,
): string | null {
  if (fits(-lean, known)) return 'Out and in swapped would explain it.';
  const other = SIDES.find((each) => {
    const there = each === side ? null : expected(view, hole, each);
    return there !== null && fits(lean, there);
  });
  if (other === undefined) return null;
  const name = sideName(other, turningOf(view.plan, hole));
  return `It fits the ${name} face of ${thingName(postOf(hole), view.plan)}: is the level on that one?`;
}

/** Null while nothing was read that way since the post's present stand began. */
function expected(view: JobView, hole: string, side: Side): Expected | null {
  const along = view.book.plumbs(hole).filter(({ body }) => AXIS[body.side] === AXIS[side]);
  if (along.length === 0) return null;
  const toward = side === 'front' || side === 'left' ? 1 : -1;
  const mean = along.reduce((sum, entry) => sum + signedLean(view, entry), 0) / along.length;
  const sigma = plumbSigma(view.plan.instruments) * Math.sqrt(1 + 1 / along.length);
  return { lean: toward * mean, sigma };
}
