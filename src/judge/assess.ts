import { requiredDepthOf } from '../build/index.ts';
import type { Entry } from '../job/entry-schema.ts';
import type { PullResult, Suspicion } from '../measure/types.ts';
import { shiftFindings } from './after-pour.ts';
import { findingsOf, repulledBaseline } from './findings.ts';
import { heightFindings } from './height-findings.ts';
import { assessHole, postPositions } from './hole.ts';
import { movedAssessment } from './moved.ts';
import { nextHeights } from './next-heights.ts';
import { pullThatTells } from './next-pull.ts';
import { pullSequence } from './pull-sequence.ts';
import { assessLines, lineFindings } from './setback.ts';
import { shapeFinding } from './shape.ts';
import { groundLinesOf, type Situation, situate } from './situation.ts';
import { topsOf } from './tops.ts';
import type { Assessment, Finding, HoleAssessment, PullAssessment } from './types.ts';
import { type JobView, postOf, readingsOfTheBook, stands, viewOf } from './view.ts';

/**
 * All that the tool says of a job, from nothing but its log. Pure, and defined for every log: an empty one, one without a
 * plan, one whose plan does not lie on the site yet.
 */
export const assess = (log: readonly Entry[]): Assessment => assessSituation(situate(log));

/** As `assess`, for a caller that has worked out the situation already. */
export function assessSituation(situation: Situation): Assessment {
  const view = viewOf(situation);
  const problems = situation.problems.map(({ text }): Finding => ({ code: 'input', text, entries: [] }));
  if (!view) return { ...EMPTY, findings: problems };
  const views = readingsOfTheBook(view);
  const [best] = views;
  const moved = movedAssessment(view);
  const trouble = moved?.text ?? repulledBaseline(view)?.text ?? null;
  const posts = postPositions(views);
  const holes = view.holes.map((hole) =>
    assessHole(views, hole, requiredDepthOf(view.plan, hole.label), posts, trouble),
  );
  const sequence = pullSequence(best, view.measured.suspicions, holes);
  const levels = nextHeights(best, holes);
  const nextPulls = [...(moved?.tells ?? []), ...sequence.pulls];
  const shape = shapeFinding(best, wrongPosts(best, holes));
  const ground = groundLinesOf(situation);
  const lines = assessLines(best, ground, holes);
  return {
    ...EMPTY,
    job: view.plan.name,
    baseline: {
      designed: view.laid?.baseline ?? null,
      measured: best.measured.baseline?.length ?? null,
      sigma: best.measured.baseline?.sigma ?? null,
    },
    holes,
    tops: topsOf(best),
    lines,
    pulls: view.measured.pulls.map((pull) => tellOf(view, pull)),
    offsets: view.measured.offsets.map((off) => ({ ...tellOf(view, off), part: off.part })),
    globalTest: view.measured.globalTest,
    findings: [
      ...problems,
      ...findingsOf(view, best, moved, (suspicion) => tellerWords(best, suspicion)),
      ...(shape ? [shape] : []),
      ...lineFindings(ground, lines),
      ...heightFindings(view, best, holes),
      ...decisionsMissing(holes),
      ...shiftFindings(view),
    ],
    moved,
    next: nextPulls[0] ?? null,
    nextPulls,
    nextHeights: levels.heights,
    beyondPulls: [...sequence.beyond, ...levels.beyond],
  };
}

const EMPTY: Assessment = {
  format: 'swingtape-assessment',
  version: 1,
  job: '',
  baseline: { designed: null, measured: null, sigma: null },
  holes: [],
  tops: { common: null, highest: null, lowest: null, text: 'No top is measured.' },
  lines: [],
  pulls: [],
  offsets: [],
  globalTest: { chiSquare: 0, degreesOfFreedom: 0, chance: 1 },
  findings: [],
  moved: null,
  next: null,
  nextPulls: [],
  nextHeights: [],
  beyondPulls: [],
};

function wrongPosts(view: JobView, holes: readonly HoleAssessment[]): ReadonlySet<string> {
  const wrong = holes.filter(
    ({ hole, set }) =>
      stands(view, postOf(hole)) && (set.position.verdict === 'out' || set.position.verdict === 'unsure'),
  );
  return new Set(wrong.map(({ hole }) => hole));
}

function tellOf(
  view: JobView,
  { entry, predicted, residual, redundancy, standardised, smallestCaught }: PullResult,
): PullAssessment {
  return {
    entry,
    predicted,
    residual,
    redundancy,
    standardised,
    smallestCaught: Number.isFinite(smallestCaught) ? smallestCaught : null,
    suspect: view.suspects.has(entry),
  };
}

const tellerWords = (view: JobView, suspicion: Suspicion): string =>
  pullThatTells(view, suspicion)?.text ?? '';

/** What was met in a hole waits for whoever is responsible, whatever is done there meanwhile. */
const decisionsMissing = (holes: readonly HoleAssessment[]): Finding[] =>
  holes.flatMap(({ dug, poured, pourGate }) => {
    if (dug.at === null || poured !== null) return [];
    const waiting = pourGate.items.filter(({ decision }) => decision);
    return waiting.map(({ text }) => ({ code: 'decision' as const, text, entries: [] }));
  });
