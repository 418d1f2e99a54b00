import { useMemo, useState } from 'preact/hooks';
import { thingName } from '../../job/words.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { type JobView, viewOf } from '../../judge/view.ts';
import { HoleStrip, JudgementTable } from '../../ui/index.ts';
import { Findings } from '../findings.tsx';
import { useJobBook } from '../job-book.ts';
import { JobFrame } from '../job-frame.tsx';
import { setLook } from '../looks.ts';
import { NothingYet } from '../nothing-yet.tsx';
import type { PhaseProps } from '../phase-props.ts';
import { hrefOf } from '../route.ts';
import { useHold } from '../use-hold.ts';
import { OtherReadings } from './other-readings.tsx';
import { SetActions } from './set-actions.tsx';
import { SetCard } from './set-card.tsx';
import { SetDrawing } from './set-drawing.tsx';
import { type OpenFlow, SetFlow } from './set-flow.tsx';
import { setRows } from './set-rows.ts';
import { lastSetup, nextHole, nextSetup, setStep } from './set-step.ts';
import { StepOptions } from './step-options.tsx';

/** Posts in their holes: stand, measure, put right, until each is in and guarded. */
export function SetScreen({ hole }: PhaseProps) {
  const { situation } = useJobBook();
  const view = useMemo(() => viewOf(situation), [situation]);
  if (!view || view.holes.length === 0)
    return <NothingYet phase="set" lead="plan" text="First describe the posts" />;
  if (!view.laid) return <NothingYet phase="set" lead="stake" text="First say where A and B stand" />;
  return <SetWork view={view} focused={hole} />;
}

function SetWork({ view, focused }: { readonly view: JobView; readonly focused: string | null }) {
  const { jobId, assessment } = useJobBook();
  const [moved, setMoved] = useState<string | null>(null);
  const [leave, setLeave] = useState(false);
  const [how, setHow] = useHold();
  const [flow, setFlow] = useState<OpenFlow | null>(null);
  const setup = moved ?? lastSetup(view);
  const known = assessment.holes.some((hole) => hole.hole === focused);
  const label = known ? focused : nextHole(view, assessment.holes, setup);
  const hole = assessment.holes.find((candidate) => candidate.hole === label) ?? null;
  const step = hole && setStep(view, hole, { setup, leave });
  const next = nextHole(view, assessment.holes, setup, label);
  const href = (to: string | null) => hrefOf({ at: 'job', job: jobId, phase: 'set', hole: to });
  const strip = assessment.holes.map((each) => ({
    label: each.hole,
    href: href(each.hole),
    current: each.hole === label,
    ...setLook(each),
  }));
  return (
    <JobFrame
      phase="set"
      actions={
        <SetActions
          hole={hole}
          step={step}
          nextHref={next === null ? null : href(next)}
          onFlow={setFlow}
          onLeave={() => setLeave(true)}
        />
      }
    >
      <Findings />
      <SetDrawing hole={hole} step={step} />
      {hole && step ? (
        <>
          <SetCard step={step} hole={hole} plan={view.plan} />
          <StepOptions
            step={step}
            how={how}
            onHow={setHow}
            setup={setup}
            onNewSetup={() => setMoved(nextSetup(view))}
          />
          <Judgements view={view} hole={hole} />
          <OtherReadings view={view} hole={hole} onFlow={setFlow} />
        </>
      ) : (
        <h2>Every post and pier is set, measured and guarded</h2>
      )}
      <HoleStrip label="Posts and piers" holes={strip} />
      {flow && label !== null && (
        <SetFlow flow={flow} hole={label} how={how} setup={setup} view={view} onClose={() => setFlow(null)} />
      )}
    </JobFrame>
  );
}

function Judgements({ view, hole }: { readonly view: JobView; readonly hole: HoleAssessment }) {
  if (!hole.set.done) return null;
  const post = thingName({ kind: 'post', hole: hole.hole }, view.plan);
  return <JudgementTable label={`${post} against the plan`} rows={setRows(hole, view.plan)} />;
}
