import { type PlumbRead, SIDES, type Side } from '../job/entry-schema.ts';
import { sideName, thingName, turningOf } from '../job/words.ts';
import { readSigma } from '../measure/plumb-reading.ts';
import { GUESSED_LEAN } from '../measure/sigma.ts';
import { AXIS, type Lean, REPEATS_AGREE, signedLean } from './plumb-repeats.ts';
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
  /** How the level told it; a gap when absent. */
  readonly read?: PlumbRead | undefined;
}

/**
 * Asks back when a plumb reading does not fit what was read of the post before, and names the slip that would explain it: out
 * taken for in, or the level held on another face.
 *
 * @returns one question; null when the reading is believable
 */
export function plumbDoubt(view: JobView, { hole, side, shown, own = 0, read }: PlumbAsked): string | null {
  const { units } = view.plan;
  const lean = shown - own;
  const known = expected(view, { hole, side, read });
  if (fits(lean, known ?? { lean: 0, sigma: GUESSED_LEAN })) return null;
  if (!known)
    return `A top ${leanWords(lean, units)} off plumb is more than a post that stands by eye. Read it again, or keep it as read.`;
  const ought = `By what was read before, this face ought to show ${wayWords(known.lean + own, units)}.`;
  const slip = slipWords(view, { hole, side, read, lean }, known);
  return [ought, ...(slip ? [slip] : []), 'Read it again, or keep it as read.'].join(' ');
}

const fits = (lean: number, { lean: ought, sigma }: Lean): boolean =>
  Math.abs(lean - ought) <= REPEATS_AGREE * sigma;

function wayWords(lean: number, units: JobView['plan']['units']): string {
  const words = leanWords(lean, units);
  return words === leanWords(0, units) ? 'plumb' : `the top ${words} ${lean > 0 ? 'out' : 'in'}`;
}

type Asked = Pick<PlumbAsked, 'hole' | 'side' | 'read'>;

function slipWords(
  view: JobView,
  { hole, side, read, lean }: Asked & { readonly lean: number },
  known: Lean,
): string | null {
  if (fits(-lean, known)) return 'Out and in swapped would explain it.';
  const other = SIDES.find((each) => {
    const there = each === side ? null : expected(view, { hole, side: each, read });
    return there !== null && fits(lean, there);
  });
  if (other === undefined) return null;
  const name = sideName(other, turningOf(view.plan, hole));
  return `It fits the ${name} face of ${thingName(postOf(hole), view.plan)}: is the level on that one?`;
}

/**
 * A lean past a face as it follows from what was read before, with one sigma of what a new reading may be off it. Null while
 * nothing was read that way since the post's present stand began.
 */
function expected(view: JobView, { hole, side, read }: Asked): Lean | null {
  const along = view.book
    .plumbs(hole)
    .filter(({ body }) => AXIS[body.side] === AXIS[side])
    .map((entry) => signedLean(view, entry));
  if (along.length === 0) return null;
  const toward = side === 'front' || side === 'left' ? 1 : -1;
  const mean = along.reduce((sum, { lean }) => sum + lean, 0) / along.length;
  const known = Math.hypot(...along.map(({ sigma }) => sigma)) / along.length;
  return { lean: toward * mean, sigma: Math.hypot(known, readSigma(read, 1, view.plan.instruments)) };
}
