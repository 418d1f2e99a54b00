import type { Side } from '../../job/entry-schema.ts';
import { sideName, turningOf } from '../../job/words.ts';
import type { PullPlan } from '../../judge/pull-ends.ts';
import type { Situation } from '../../judge/situation.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { sideBearing } from '../../plan/index.ts';
import { type DrawnFace, type DrawnHole, PlanDrawing } from '../../ui/index.ts';
import { drawnPull, drawnSite, referencePlaces } from '../drawn-site.ts';
import { useJobBook } from '../job-book.ts';
import { setLook } from '../looks.ts';
import { zoomed } from './set-zoom.ts';
import type { SetStep } from './step.ts';

export interface SetDrawingProps {
  /** The hole that is worked on, and what is to be done about it. */
  readonly hole: HoleAssessment | null;
  readonly step: SetStep | null;
}

/** Leaves room for a card and its main button on a phone of 844 px; readings to hold need more of it. */
const DRAWING_HEIGHT = 190;
const MOVE_HEIGHT = 150;

/** Where things stand: the post at hand and those about it by their verdicts, the tapes to pull now, the way to push. */
export function SetDrawing({ hole, step }: SetDrawingProps) {
  const { situation, assessment } = useJobBook();
  const { plan } = situation;
  if (!plan) return null;
  const live = hole?.hole ?? null;
  const pulls = (step ? pullsOf(step) : []).flatMap((pull) => drawnPull(situation, pull, 'live') ?? []);
  // Faces that are named by the centre need no front to be found by.
  const front = live === null || turningOf(plan, live) === 'grid';
  const { lines: _, ...site } = drawnSite(situation, assessment.holes, {
    live,
    lookOf: setLook,
    pulls,
    front,
  });
  // The way to push is what a drawing of a move is for: the post and those next to it.
  const tapes = step && step.do !== 'move' ? pullsOf(step) : [];
  const from = tapes.flatMap((pull) => [pull.from.thing, pull.to.thing]);
  const near = zoomed(site, referencePlaces(situation), from);
  const faces = step && live !== null ? touchedFaces(situation, step, live) : [];
  const assessed = new Map(assessment.holes.map((each) => [each.hole, each]));
  return (
    <PlanDrawing
      title={live === null ? plan.name : `${plan.name}, hole ${live}`}
      units={plan.units}
      {...site}
      {...near}
      faces={faces}
      holes={near.holes.map((drawn) => withResult(drawn, assessed.get(drawn.label), step))}
      maxHeight={step?.do === 'move' ? MOVE_HEIGHT : DRAWING_HEIGHT}
    />
  );
}

type Ends = Pick<PullPlan, 'from' | 'to'>;

function pullsOf(step: SetStep): readonly Ends[] {
  if (step.do === 'stand') return step.hold;
  if (step.do === 'pull' || step.do === 'doubt' || step.do === 'tell' || step.do === 'baseline')
    return [step.pull];
  return step.do === 'move' && step.nudge ? step.nudge.readings : [];
}

/** The faces that the card names: those that its tapes touch, or the one that the level is held against. */
function touchedFaces({ plan, laid }: Situation, step: SetStep, live: string): DrawnFace[] {
  if (!plan || !laid) return [];
  const face = (hole: string, side: Side): DrawnFace[] => {
    const facing = laid.holes.find(({ label }) => label === hole)?.facing;
    return facing === undefined
      ? []
      : [{ hole, bearing: sideBearing(facing, side), name: sideName(side, turningOf(plan, hole)) }];
  };
  if (step.do === 'plumb') return face(live, step.side);
  // The way to push is what a small drawing of a move is for.
  if (step.do === 'move') return [];
  return pullsOf(step)
    .flatMap(({ from, to }) => [from, to])
    .flatMap(({ thing, touch }) =>
      thing.kind === 'post' && touch.at === 'face' ? face(thing.hole, touch.side) : [],
    );
}

/** Adds what was found of the post at hand: how well its place is known, and which way to push it. */
function withResult(drawn: DrawnHole, hole: HoleAssessment | undefined, step: SetStep | null): DrawnHole {
  if (!hole) return drawn;
  const { at, nudge } = hole.set;
  return {
    ...drawn,
    ...(at && drawn.live ? { ellipse: at.ellipse } : {}),
    ...(drawn.live && nudge && step?.do === 'move' && step.nudge
      ? { nudge: { bearing: nudge.bearing, words: nudge.words } }
      : {}),
  };
}
