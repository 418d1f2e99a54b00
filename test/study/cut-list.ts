import type { Cuts } from '../../src/build/cuts.ts';
import type { Figure } from '../../src/build/figure.ts';
import { frameAsBuilt } from '../../src/build/frame.ts';
import { add, scale } from '../../src/geometry/point.ts';
import type { Entry } from '../../src/job/entry-schema.ts';
import { type AsBuilt, asBuilt, asBuiltRound, asBuiltSquare } from '../../src/judge/as-built.ts';
import { cutMarks } from '../../src/judge/cut-marks.ts';
import { ANGLE_STEP, told } from '../../src/judge/frame-words.ts';
import { HALF_WIDTH_95 } from '../../src/judge/normal.ts';
import { situate } from '../../src/judge/situation.ts';
import { type JobView, viewOf } from '../../src/judge/view.ts';
import type { PostsTogether } from '../../src/measure/index.ts';
import { smallStep } from '../../src/units/index.ts';
import type { StudyPlan } from './plans.ts';
import { Share } from './share.ts';
import type { Yard } from './yard.ts';

/** What is cut, or is read off the posts for cutting: each against the true posts. */
export const CUT_KINDS = [
  'side',
  'clear',
  'mitre',
  'diagonal',
  'reach',
  'square',
  'top to the plan',
  'top to the shortest',
] as const;
export type CutKind = (typeof CUT_KINDS)[number];

/** How often the truth lies within 1.96 sigmas, and within what is said on the screen. */
export interface Coverage {
  readonly within: Share;
  readonly asTold: Share;
}

/** A figure that was found, and what it really is. */
interface Found extends Pick<Figure, 'is' | 'sigma'> {
  readonly kind: CutKind;
  readonly truth: number;
  readonly step: number;
}

/** What came of one cut list, by kind: how many figures, and how many hold the truth. */
export interface CutCount {
  readonly kind: CutKind;
  readonly of: number;
  readonly within: number;
  readonly asTold: number;
}

/** Holds a job's cut list against the posts that it was worked out for. */
export function countCuts(
  log: readonly Entry[],
  job: StudyPlan,
  yard: Yard,
): { counts: CutCount[]; atTop: boolean } {
  const view = viewOf(situate(log));
  const built = view && asBuilt(view);
  if (!view || !built) throw new RangeError(`${job.plan.name} is not laid on its site`);
  const found = [...frameFound(view, built, job, yard), ...topsFound(view, job, yard)];
  const counts = CUT_KINDS.map((kind): CutCount => {
    const all = found.filter((each) => each.kind === kind);
    return { kind, of: all.length, within: all.filter(isWithin).length, asTold: all.filter(isAsTold).length };
  });
  return { counts, atTop: built.posts.some(({ height }) => height > 0) };
}

/** Many cut lists together. */
export class CutLists {
  readonly kinds: ReadonlyMap<CutKind, Coverage> = new Map(
    CUT_KINDS.map((kind) => [kind, { within: new Share(), asTold: new Share() }]),
  );

  add(counts: readonly CutCount[]): void {
    for (const { kind, of, within, asTold } of counts) {
      if (of === 0) continue;
      const coverage = this.kinds.get(kind)!;
      coverage.within.addJob(within, of);
      coverage.asTold.addJob(asTold, of);
    }
  }
}

const isWithin = ({ is, sigma, truth }: Found): boolean => Math.abs(is - truth) <= HALF_WIDTH_95 * sigma;

function isAsTold({ truth, step, ...found }: Found): boolean {
  const { is, half } = told(found, step);
  return Math.abs(is - truth) <= half;
}

/** The yard's own posts in place of the measured ones: known to a hair. */
function truly(yard: Yard, { posts }: AsBuilt): PostsTogether {
  const labels = new Set(posts.map(({ label }) => label));
  return {
    at: ({ hole, height }) => {
      if (!labels.has(hole)) return null;
      const { foot, lean } = yard.postOf(hole);
      return add(foot, scale(lean, height));
    },
    variance: () => 0,
  };
}

function frameFound(view: JobView, built: AsBuilt, job: StudyPlan, yard: Yard): Found[] {
  const truth: AsBuilt = { ...built, together: truly(yard, built) };
  const really = frameAsBuilt(job.plan.shape, built.posts, truth.together);
  const step = smallStep(job.plan.units);
  const found = (kind: CutKind, is: Figure | null, true_: Figure | null): Found[] =>
    is && true_
      ? [
          {
            kind,
            is: is.is,
            sigma: is.sigma,
            truth: true_.is,
            step: kind === 'mitre' ? ANGLE_STEP : step,
          },
        ]
      : [];
  const { sides, corners, diagonals } = built.frame;
  const round = [asBuiltRound(view, built, 'nearest'), asBuiltRound(view, truth, 'nearest')] as const;
  const square = [asBuiltSquare(view, built), asBuiltSquare(view, truth)] as const;
  return [
    ...sides.flatMap(({ centres }, i) => found('side', centres, really.sides[i]!.centres)),
    ...sides.flatMap(({ clear }, i) => found('clear', clear, really.sides[i]!.clear)),
    ...corners.flatMap(({ mitre }, i) => found('mitre', mitre, really.corners[i]!.mitre)),
    ...diagonals.flatMap(({ centres }, i) => found('diagonal', centres, really.diagonals[i]!.centres)),
    ...found('reach', round[0]?.reach ?? null, round[1]?.reach ?? null),
    ...found('square', square[0]?.difference ?? null, square[1]?.difference ?? null),
  ];
}

/** How much is cut off each top. The shortest post is taken for the one that measures so: that is the one to saw by. */
function topsFound(view: JobView, job: StudyPlan, yard: Yard): Found[] {
  const step = smallStep(job.plan.units);
  const [toPlan, toShortest] = [cutMarks(view, 'plan'), cutMarks(view, 'shortest')];
  const found = (kind: CutKind, { cuts }: Cuts, shift: number): Found[] =>
    cuts.map(({ hole, off, sigma }) => ({
      kind,
      is: off,
      sigma,
      truth: yard.offHeight(hole) - shift,
      step,
    }));
  const { governs } = toShortest;
  if (governs === null) return [];
  const others = { ...toShortest, cuts: toShortest.cuts.filter(({ hole }) => hole !== governs) };
  return [
    ...found('top to the plan', toPlan, 0),
    ...found('top to the shortest', others, yard.offHeight(governs)),
  ];
}
