import type { EntryOf } from '../job/entry-schema.ts';
import { CRITICAL } from '../plan/luck.ts';
import { formatLength } from '../units/index.ts';
import { chanceAtLeast } from './chance.ts';
import { judged, unmeasured } from './judgement.ts';
import { ONE_SIDED_95 } from './normal.ts';

import { after, tickOf } from './ticks.ts';
import type { Judgement } from './types.ts';
import type { JobView } from './view.ts';
import { small } from './words.ts';

/** Nothing is too deep or too wide, so a thing on its mark is no better than one beyond it. */
export const oneSided = () => 1;
/** One sigma of a tape stood on a cleaned bottom and read at a lip of soil: 5 mm, 3/16 in (common practice). */
export const DUG_SIGMA = 0.005;
/** Two readings of one hole lie this close, or one of them is wrong: as repeats of any other reading. */
export const DUG_AGREE = CRITICAL * Math.SQRT2 * DUG_SIGMA;
/** Footings cast against soil may be half an inch narrow (ACI 117-10, clause 3.5; from memory). */
const NARROW_ALLOWED = 0.0127;

export interface DugJudgement {
  readonly last: EntryOf<'dug'> | null;
  readonly depth: Judgement;
  readonly width: Judgement;
  /** Depth whose reading is `in`: what is required and the doubt of reading it, metres. */
  readonly aimDepth: number | null;
}

/**
 * As-dug depth and width held against what is required, one-sided: deeper and wider is never wrong. Checked when the
 * hole was read twice alike, or ticked as clean and measured once more since it was dug.
 *
 * @param required metres from the downhill lip; null until the frost depth is known
 */
export function judgeDug(
  view: JobView,
  hole: string,
  required: number | null,
  diameter: number,
): DugJudgement {
  const readings = view.book.dug(hole).map(({ entry }) => entry);
  const last = readings.at(-1) ?? null;
  const ticked = last !== null && tickOf(view, 'clean', hole, after(dugAt(view, hole))) === 'done';
  const guarded = (of: 'depth' | 'width', least: number) =>
    ticked ||
    readAlike(
      readings.map((entry) => entry.body[of].m),
      least,
    );
  const aimDepth = required === null ? null : required + ONE_SIDED_95 * DUG_SIGMA;
  return {
    last,
    depth: judgeDepth(view, hole, last?.body.depth.m ?? null, required, guarded('depth', aimDepth ?? 0)),
    width: judgeWidth(
      view,
      hole,
      last?.body.width.m ?? null,
      diameter,
      guarded('width', diameter - NARROW_ALLOWED),
    ),
    aimDepth,
  };
}

/** Index in the view's entries of the last reading of a dug hole, or −1. */
export const dugAt = (view: JobView, hole: string): number => view.book.dug(hole).at(-1)?.index ?? -1;

/**
 * Whether the last reading has an equal before it. One that fell short of `least` is the hole on its way down, and no
 * second look at what it is now.
 */
function readAlike(values: readonly number[], least: number): boolean {
  const last = values.at(-1);
  const before = values.at(-2);
  if (last === undefined || before === undefined) return false;
  return before >= least && Math.abs(last - before) <= DUG_AGREE;
}

const AGAIN = 'A misread tape would go unseen: read the hole again.';

function judgeDepth(
  view: JobView,
  hole: string,
  depth: number | null,
  required: number | null,
  checked: boolean,
): Judgement {
  const { units } = view.plan;
  if (depth === null)
    return unmeasured('depth', 0, `Hole ${hole} is not dug yet, or its depth is not logged.`);
  if (required === null)
    return unmeasured(
      'depth',
      0,
      'Ask the building office for the frost depth and type it into the plan: until then no depth is enough.',
    );
  const error = depth - required;
  const asked = formatLength(required, units);
  const short = `${small(error, units)} short of the ${asked} it must have`;
  const spare = required + ONE_SIDED_95 * DUG_SIGMA - depth;
  return judged(
    {
      quantity: 'depth',
      chance: chanceAtLeast(depth, DUG_SIGMA, required),
      best: oneSided,
      error,
      sigma: DUG_SIGMA,
      tolerance: 0,
      checked,
    },
    {
      cell: (verdict) => `${verdict}, ${formatLength(depth, units)} of ${asked}`,
      out: () => `Hole ${hole} is ${short}: dig ${small(spare, units)} deeper.`,
      unsure: () =>
        `Hole ${hole} reads ${formatLength(depth, units)} where ${asked} is the least: too close to tell. Dig ${small(spare, units)} deeper.`,
      unchecked: () => AGAIN,
    },
  );
}

function judgeWidth(
  view: JobView,
  hole: string,
  width: number | null,
  diameter: number,
  checked: boolean,
): Judgement {
  const { units } = view.plan;
  if (width === null)
    return unmeasured('width', NARROW_ALLOWED, `Hole ${hole} is not dug yet, or its width is not logged.`);
  const least = diameter - NARROW_ALLOWED;
  const error = width - diameter;
  const asked = formatLength(diameter, units);
  return judged(
    {
      quantity: 'width',
      chance: chanceAtLeast(width, DUG_SIGMA, least),
      best: oneSided,
      error,
      sigma: DUG_SIGMA,
      tolerance: NARROW_ALLOWED,
      checked,
    },
    {
      cell: (verdict) => `${verdict}, ${formatLength(width, units)} of ${asked}`,
      out: () => `Hole ${hole} is ${small(error, units)} narrower than the ${asked} planned: widen its foot.`,
      unsure: () =>
        `Hole ${hole} reads ${formatLength(width, units)} wide where ${asked} is planned: too close to tell. Widen its foot by ${small(least + ONE_SIDED_95 * DUG_SIGMA - width, units)}.`,
      unchecked: () => AGAIN,
    },
  );
}
