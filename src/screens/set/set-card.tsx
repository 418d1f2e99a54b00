import type { Plan } from '../../job/plan-schema.ts';
import { endName, sideName, thingName, turningOf } from '../../job/words.ts';
import type { PullPlan } from '../../judge/pull-ends.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { Figure, PullRow, VerdictMark } from '../../ui/index.ts';
import { formatSmall } from '../../units/index.ts';
import './set.css';
import type { SetStep } from './set-step.ts';

export interface SetCardProps {
  readonly step: SetStep;
  readonly hole: HoleAssessment;
  readonly plan: Plan;
}

/** The next thing to do about a post, in one sentence with its numbers. */
export function SetCard({ step, hole, plan }: SetCardProps) {
  const post = thingName({ kind: 'post', hole: hole.hole }, plan);
  switch (step.do) {
    case 'lay':
      return <h2>First say where A and B stand</h2>;
    case 'stand':
      return (
        <>
          <h2>Stand {post} where both tapes meet</h2>
          {step.hold.map((pull) => (
            <TapeRow key={pull.from.thing.kind + endName(pull.from, plan)} pull={pull} plan={plan} />
          ))}
        </>
      );
    case 'pull':
      return (
        <>
          <h2>
            Measure {post} from {thingName(step.pull.from.thing, plan)}
          </h2>
          <TapeRow pull={step.pull} plan={plan} />
        </>
      );
    case 'doubt':
      return (
        <>
          <h2>
            {step.again
              ? `Two tapes to ${post} disagree: strike the wrong one`
              : `A tape to ${post} looks misread: pull it again`}
          </h2>
          <p>
            Read as <Figure m={step.entry.body.reading.m} units={plan.units} size="text" />; everything else
            says:
          </p>
          <TapeRow pull={step.pull} plan={plan} />
        </>
      );
    case 'move':
      return <MoveCard step={step} hole={hole} plan={plan} />;
    case 'plumb':
      return (
        <h2>
          Hold the level on the {sideName(step.side, turningOf(plan, hole.hole))} face of {post}
        </h2>
      );
    case 'rod':
      return (
        <>
          <h2>Read the rod on {step.on.point === 'benchmark' ? 'the benchmark' : `the top of ${post}`}</h2>
          {step.expected !== null && (
            <p>
              At the right height it reads <Figure m={step.expected} units={plan.units} size="text" />.
            </p>
          )}
        </>
      );
    case 'done':
      return <h2>{hole.set.headline}</h2>;
  }
}

function MoveCard({ step, hole, plan }: SetCardProps & { readonly step: Extract<SetStep, { do: 'move' }> }) {
  const { nudge } = step;
  const post = thingName({ kind: 'post', hole: hole.hole }, plan);
  if (!nudge) return <OutHead text={step.why} />;
  return (
    <>
      <OutHead
        text={`${post.slice(0, 1).toUpperCase()}${post.slice(1)} is out by ${formatSmall(nudge.distance, plan.units)}`}
      />
      <p class="set-nudge">{nudge.words} It is right when these read:</p>
      {nudge.readings.map(({ from, to, reading }) => (
        <TapeRow key={endName(from, plan)} pull={{ from, to, expected: reading }} plan={plan} />
      ))}
    </>
  );
}

function OutHead({ text }: { readonly text: string }) {
  return (
    <h2 class="set-out">
      <VerdictMark verdict="out">{text}</VerdictMark>
    </h2>
  );
}

function TapeRow({ pull, plan }: { readonly pull: PullPlan; readonly plan: Plan }) {
  const from =
    pull.from.thing.kind === 'stake'
      ? `from ${pull.from.thing.label}’s nail`
      : `from ${endName(pull.from, plan)}`;
  return (
    <PullRow
      from={from}
      to={`to ${endName(pull.to, plan)}`}
      held="tape level"
      m={pull.expected}
      units={plan.units}
      live
    />
  );
}
