import { useState } from 'preact/hooks';
import type { Body } from '../../job/entry-schema.ts';
import { thingName } from '../../job/words.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import { HoleStrip, JudgementTable } from '../../ui/index.ts';
import { FrameButton } from '../build/frame-button.tsx';
import { Alarms, Findings } from '../findings.tsx';
import { HeightsButton } from '../heights/heights-button.tsx';
import { useJobBook } from '../job-book.ts';
import { JobFrame } from '../job-frame.tsx';
import { setLook } from '../looks.ts';
import { NextReadings } from '../next-readings.tsx';
import { NothingYet } from '../nothing-yet.tsx';
import type { PhaseProps } from '../phase-props.ts';
import { hrefOf } from '../route.ts';
import { SessionCheck } from '../session-check.tsx';
import { useHold } from '../use-hold.ts';
import { useLog } from '../use-log.ts';
import { useStartAtTop } from '../use-start-at-top.ts';
import { OtherReadings } from './other-readings.tsx';
import { SetActions } from './set-actions.tsx';
import { type SetBook, useSetBook } from './set-book.ts';
import { SetCard } from './set-card.tsx';
import { SetDrawing } from './set-drawing.tsx';
import { type OpenFlow, SetFlow } from './set-flow.tsx';
import { useSetMemory } from './set-memory.ts';
import { nextHole, stepsOf } from './set-order.ts';
import { setRows } from './set-rows.ts';
import { allDoneWords } from './set-words.ts';
import type { SetStep } from './step.ts';
import { StepOptions } from './step-options.tsx';

/** Posts in their holes: stand, measure, put right, until each is in and guarded. */
export function SetScreen({ hole }: PhaseProps) {
  const book = useSetBook();
  if (!book || book.view.holes.length === 0)
    return <NothingYet phase="set" lead="plan" text="First describe the posts" />;
  if (!book.view.laid) return <NothingYet phase="set" lead="stake" text="First say where A and B stand" />;
  return <SetWork book={book} focused={hole} />;
}

function SetWork({ book, focused }: { readonly book: SetBook; readonly focused: string | null }) {
  const { view } = book;
  const { jobId, assessment } = useJobBook();
  const { log } = useLog();
  const memory = useSetMemory(view);
  const [how, setHow] = useHold();
  const [flow, setFlow] = useState<OpenFlow | null>(null);
  const known = assessment.holes.some((hole) => hole.hole === focused);
  const stepOf = stepsOf(book, memory);
  const label = known ? focused : nextHole(view, assessment.holes, stepOf);
  const hole = assessment.holes.find((candidate) => candidate.hole === label) ?? null;
  const step = hole && stepOf(hole);
  const next = nextHole(view, assessment.holes, stepOf, label);
  useStartAtTop(`${label} ${step?.do}`);
  const onLog = (body: Body) => void log(body);
  const actions = (
    <SetActions
      hole={hole}
      step={step}
      nextHref={next === null ? null : hrefOf({ at: 'job', job: jobId, phase: 'set', hole: next })}
      onFlow={setFlow}
      onLog={onLog}
      onLeave={() => hole && step?.do === 'move' && memory.onLeave(hole.hole, step.part)}
    />
  );
  const options = (of: SetStep) => (
    <StepOptions step={of} how={how} onHow={setHow} setup={memory.setup} onNewSetup={memory.onNewSetup} />
  );
  return (
    <JobFrame phase="set" actions={actions}>
      <Alarms />
      <SessionCheck />
      {hole && step ? (
        <>
          <SetCard step={step} hole={hole} plan={view.plan} how={how} />
          {step.do === 'rod' && options(step)}
          <Judged view={view} hole={hole} step={step} />
          {step.do !== 'rod' && options(step)}
          <OtherReadings view={view} hole={hole} setup={memory.setup} onFlow={setFlow} onLog={onLog} />
        </>
      ) : (
        <>
          <h2>{allDoneWords(assessment.holes)}</h2>
          <FrameButton />
          <SetDrawing hole={null} step={null} />
        </>
      )}
      <HeightsButton hole={label} />
      <NextReadings />
      <Findings />
      <PostStrip label={label} />
      {flow && label !== null && (
        <SetFlow
          flow={flow}
          hole={label}
          how={how}
          setup={memory.setup}
          view={view}
          onClose={() => setFlow(null)}
        />
      )}
    </JobFrame>
  );
}

interface JudgedProps {
  readonly view: JobView;
  readonly hole: HoleAssessment;
  readonly step: SetStep;
}

/** Where the post stands and what is judged of it: once nothing more is to be read, what is judged comes first. */
function Judged({ view, hole, step }: JudgedProps) {
  const post = thingName({ kind: 'post', hole: hole.hole }, view.plan);
  const drawing = <SetDrawing hole={hole} step={step} />;
  const table = hole.set.done && (
    <JudgementTable label={`${post} against the plan`} rows={setRows(hole, view.plan)} />
  );
  return step.do === 'done' ? (
    <>
      {table}
      {drawing}
    </>
  ) : (
    <>
      {drawing}
      {table}
    </>
  );
}

function PostStrip({ label }: { readonly label: string | null }) {
  const { jobId, assessment } = useJobBook();
  const holes = assessment.holes.map((each) => ({
    label: each.hole,
    href: hrefOf({ at: 'job', job: jobId, phase: 'set', hole: each.hole }),
    current: each.hole === label,
    ...setLook(each),
  }));
  return <HoleStrip label="Posts and piers" holes={holes} />;
}
