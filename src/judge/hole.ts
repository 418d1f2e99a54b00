import type { SitePoint } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { ofKind, thingKey } from '../job/log.ts';
import { thingName } from '../job/words.ts';
import type { Hole } from '../plan/hole.ts';
import { adviceFor } from './advice.ts';
import { digGate } from './dig-gate.ts';
import { type DugJudgement, judgeDug } from './dug.ts';
import { judgeLevel } from './level.ts';
import { nudgeFor } from './nudge.ts';
import { judgePlumb } from './plumb.ts';
import { judgePosition } from './position.ts';
import { pourGate } from './pour-gate.ts';
import { endWords } from './pull-ends.ts';
import { judgeSpacing } from './spacing.ts';
import type { AssessedPlace, HoleAssessment, Judgement } from './types.ts';
import { worstOf } from './verdict.ts';
import { type JobView, pointOf, postOf, stakeOf, stands } from './view.ts';
import { capital } from './words.ts';

/**
 * All that is said of one hole.
 *
 * @param required depth that the rules ask for, metres; null until the frost depth is known
 * @param baselineTrouble what is wrong with A–B, in words; null when nothing is
 */
export function assessHole(
  view: JobView,
  hole: Hole,
  required: number | null,
  baselineTrouble: string | null,
): HoleAssessment {
  const { label } = hole;
  const designed = view.sited.get(label)?.site ?? null;
  const stakePosition = positionOf(view, stakeOf(label), designed);
  const dug = judgeDug(view, label, required, hole.holeDiameter);
  const pour = ofKind(view.entries, 'pour')
    .filter(({ body }) => body.hole === label)
    .at(-1);
  const set = assessSet(view, hole, designed, pour !== undefined);
  return {
    hole: label,
    designed,
    staked: {
      driven: view.standAt.has(thingKey(stakeOf(label))),
      at: placeOf(view, stakeOf(label)),
      position: stakePosition,
    },
    dug: dugOf(dug, required),
    set,
    digGate: digGate(view, label, stakePosition, required, baselineTrouble),
    pourGate: pourGate(view, label, dug, set),
    poured: pour ? { at: pour.at, bags: pour.body.bags } : null,
  };
}

/** A position with the pull that would help it most named in its words. */
function positionOf(view: JobView, thing: Thing, designed: SitePoint | null): Judgement {
  const plain = judgePosition(view, thing, designed, '');
  const settled = plain.verdict !== 'unsure' && plain.checked;
  if (!designed || plain.verdict === 'unmeasured' || settled) return plain;
  const advice = adviceFor(view, thing, designed, plain.checked);
  return advice ? judgePosition(view, thing, designed, `from ${endWords(view, advice.pull.from)}`) : plain;
}

function placeOf(view: JobView, thing: Thing): AssessedPlace | null {
  const fix = pointOf(view, thing)?.fix;
  return fix ? { place: fix.place, covariance: fix.covariance, ellipse: fix.ellipse } : null;
}

function dugOf(
  { last, depth, width, aimDepth }: DugJudgement,
  requiredDepth: number | null,
): HoleAssessment['dug'] {
  const obstruction = last && last.body.obstruction !== 'none' ? last.body.obstruction : null;
  return { at: last?.at ?? null, requiredDepth, aimDepth, depth, width, obstruction };
}

function assessSet(
  view: JobView,
  hole: Hole,
  designed: SitePoint | null,
  poured: boolean,
): HoleAssessment['set'] {
  const post = postOf(hole.label);
  const position = positionOf(view, post, designed);
  const plumb = judgePlumb(view, hole.label);
  const level = judgeLevel(view, hole.label, hole.top);
  const spacing = spacingOf(view, hole);
  // A spacing that is not known yet is a lack of the neighbour's, not of this post.
  const known = spacing.filter(({ verdict }) => verdict !== 'unmeasured');
  const judgements = [position, plumb, level, ...known];
  const sited = view.sited.get(hole.label);
  return {
    done: stands(view, post),
    at: placeOf(view, post),
    position,
    plumb,
    level,
    spacing,
    verdict: worstOf(judgements.map(({ verdict }) => verdict)),
    headline: headline(view, hole.label, judgements),
    nudge: sited ? nudgeFor(view, sited, position, poured) : null,
  };
}

function spacingOf(view: JobView, hole: Hole): HoleAssessment['set']['spacing'] {
  const here = view.sited.get(hole.label);
  return hole.neighbours.flatMap((to) => {
    const there = view.sited.get(to);
    return here && there ? [{ ...judgeSpacing(view, here, there), to }] : [];
  });
}

/** One sentence on a set post: the first thing that is not in, or not guarded, or that all is well. */
function headline(view: JobView, hole: string, judgements: readonly Judgement[]): string {
  const post = postOf(hole);
  const name = capital(thingName(post, view.plan));
  if (!stands(view, post)) return `${name} is not set yet.`;
  const worst = worstOf(judgements.map(({ verdict }) => verdict));
  const named = judgements.find(({ verdict }) => verdict === worst);
  if (worst !== 'in' && named) return named.why;
  const unguarded = judgements.find(({ checked }) => !checked);
  return unguarded
    ? `${name} is in as far as measured. ${unguarded.why}`
    : `${name} is in: place, plumb, height and spacing.`;
}
