import type { SitePoint } from '../../geometry/point.ts';
import type { Thing } from '../../job/entry-schema.ts';
import { thingName } from '../../job/words.ts';
import type { PullPlan } from '../../judge/pull-ends.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { type JobView, pointOf } from '../../judge/view.ts';
import { type DrawnHole, type DrawnPull, PlanDrawing } from '../../ui/index.ts';
import { setLook } from '../looks.ts';
import type { SetStep } from './set-step.ts';

export interface SetDrawingProps {
  readonly view: JobView;
  readonly holes: readonly HoleAssessment[];
  /** The hole that is worked on, and what is to be done about it. */
  readonly current: string | null;
  readonly step: SetStep | null;
}

/** Where things stand: every post by its verdict, the tapes to pull now, the way to push. */
export function SetDrawing({ view, holes, current, step }: SetDrawingProps) {
  if (!view.laid) return null;
  const b: SitePoint = { x: view.measured.baseline?.length ?? view.laid.baseline, y: 0 };
  const pulls = step ? pullsOf(step) : [];
  return (
    <PlanDrawing
      title={current === null ? view.plan.name : `${view.plan.name}, hole ${current}`}
      units={view.plan.units}
      holes={holes.flatMap((hole) => drawn(view, hole, current, step))}
      stakes={{ a: { x: 0, y: 0 }, b }}
      pulls={pulls.map((pull) => drawnPull(view, pull, b))}
      maxHeight={DRAWING_HEIGHT}
    />
  );
}

/** Leaves room for a card and its main button on a phone of 844 px. */
const DRAWING_HEIGHT = 200;

function pullsOf(step: SetStep): readonly PullPlan[] {
  if (step.do === 'stand') return step.hold;
  if (step.do === 'pull') return [step.pull];
  return step.do === 'move' && step.nudge
    ? step.nudge.readings.map((r) => ({ ...r, expected: r.reading }))
    : [];
}

function drawn(
  view: JobView,
  hole: HoleAssessment,
  current: string | null,
  step: SetStep | null,
): DrawnHole[] {
  const sited = view.sited.get(hole.hole);
  if (!sited) return [];
  const { section, facing, holeDiameter, label } = sited;
  const live = label === current;
  const { nudge } = hole.set;
  return [
    {
      label,
      place: sited.site,
      section,
      facing,
      holeDiameter,
      live,
      ...setLook(hole),
      ...(hole.set.at ? { ellipse: hole.set.at.ellipse } : {}),
      ...(live && nudge && step?.do === 'move'
        ? { nudge: { bearing: nudge.bearing, words: nudge.words } }
        : {}),
    },
  ];
}

function drawnPull(view: JobView, { from, to }: Pick<PullPlan, 'from' | 'to'>, b: SitePoint): DrawnPull {
  return {
    from: placeOf(view, from.thing, b),
    to: placeOf(view, to.thing, b),
    kind: 'live',
    words: `from ${thingName(from.thing, view.plan)} to ${thingName(to.thing, view.plan)}`,
  };
}

const ORIGIN: SitePoint = { x: 0, y: 0 };

/** Where it was measured to be, else where it belongs. */
function placeOf(view: JobView, thing: Thing, b: SitePoint): SitePoint {
  if (thing.kind === 'stake') return thing.label === 'A' ? ORIGIN : (pointOf(view, thing)?.fix?.place ?? b);
  if (thing.kind === 'nail') return pointOf(view, thing)?.fix?.place ?? ORIGIN;
  return view.sited.get(thing.hole)?.site ?? ORIGIN;
}
