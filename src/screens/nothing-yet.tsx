import { ButtonLink, Problem } from '../ui/index.ts';
import { useJobBook } from './job-book.ts';
import { JobFrame } from './job-frame.tsx';
import { hrefOf, type Phase } from './route.ts';

/** Shown by a phase that has nothing to work on yet: what is missing, and the way there. */
export function NothingYet({
  phase,
  lead,
  text,
}: {
  readonly phase: Phase;
  readonly lead: Phase;
  readonly text: string;
}) {
  const { jobId, situation } = useJobBook();
  const name = lead === 'plan' ? 'the plan' : 'the stakes';
  return (
    <JobFrame
      phase={phase}
      actions={
        <ButtonLink kind="main" href={hrefOf({ at: 'job', job: jobId, phase: lead, hole: null })}>
          Go to {name}
        </ButtonLink>
      }
    >
      <h2>{text}</h2>
      {situation.problems.map((problem) => (
        <Problem key={problem.text} text={problem.text} />
      ))}
    </JobFrame>
  );
}
