import { thingName } from '../../job/words.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import { AfterFirstFrame, Button, HoleStrip, JudgementTable } from '../../ui/index.ts';
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
import { OtherReadings } from './other-readings.tsx';
import { SetActions } from './set-actions.tsx';
import { type SetBook, useSetBook } from './set-book.ts';
import { SetCard } from './set-card.tsx';
import { SetDrawing } from './set-drawing.tsx';
import { SetFlow } from './set-flow.tsx';
import { setRows } from './set-rows.ts';
import { allDoneWords } from './set-words.ts';
import type { SetStep } from './step.ts';
import { StepOptions } from './step-options.tsx';
import { type SetWork as SetWorkState, useSetWork } from './use-set-work.ts';

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
  const work = useSetWork(book, focused);
  const { hole, step, memory, how, flow, onFlow } = work;
  const label = hole?.hole ?? null;
  return (
    <JobFrame phase="set" actions={<SetActions {...work} />}>
      <Alarms />
      <SessionCheck />
      {hole && step ? <AtPost view={view} hole={hole} step={step} work={work} /> : <AllDone />}
      <AfterFirstFrame>
        <HeightsButton hole={label} />
        <NextReadings />
        <Findings />
        <PostStrip label={label} />
      </AfterFirstFrame>
      {flow && label !== null && (
        <SetFlow
          flow={flow}
          hole={label}
          how={how}
          setup={memory.setup}
          view={view}
          onClose={() => onFlow(null)}
        />
      )}
    </JobFrame>
  );
}

interface AtPostProps extends JudgedProps {
  readonly work: SetWorkState;
}

/** One post: what to do about it, where it stands, what is judged of it, and every other reading of it. */
function AtPost({ view, hole, step, work }: AtPostProps) {
  const { memory, how, onHow, onFlow, onLog } = work;
  const options = (
    <StepOptions step={step} how={how} onHow={onHow} setup={memory.setup} onNewSetup={memory.onNewSetup} />
  );
  return (
    <>
      <SetCard step={step} hole={hole} plan={view.plan} how={how} />
      {step.do === 'done' && work.nextHref === null && <FrameButton />}
      {step.do === 'rod' && options}
      <Judged view={view} hole={hole} step={step} />
      {step.do !== 'rod' && options}
      {hole.set.twist && (step.do === 'stand' || step.do === 'move') && (
        <Button onPress={() => onFlow({ take: 'faces' })}>What each face reads</Button>
      )}
      <AfterFirstFrame>
        <OtherReadings view={view} hole={hole} setup={memory.setup} onFlow={onFlow} onLog={onLog} />
      </AfterFirstFrame>
    </>
  );
}

function AllDone() {
  const { assessment } = useJobBook();
  return (
    <>
      <h2>{allDoneWords(assessment.holes)}</h2>
      <FrameButton />
      <SetDrawing hole={null} step={null} />
    </>
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
