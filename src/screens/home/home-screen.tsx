import { useState } from 'preact/hooks';
import { Button, Frame, Problem } from '../../ui/index.ts';
import { BackUpReminder } from './back-up-reminder.tsx';
import { JobList } from './job-list.tsx';
import { NewJobSheet } from './new-job-sheet.tsx';
import { PhoneState } from './phone-state.tsx';
import { RestoreButton } from './restore-button.tsx';
import { RestoredNote } from './restored-note.tsx';
import { TabWarning } from './tab-warning.tsx';
import { useHomeActions } from './use-home-actions.ts';
import { useJobs } from './use-jobs.ts';
import './home.css';

/** The page of jobs: go on with one, begin one, look at the example, bring one back from a file. */
export function HomeScreen() {
  const { jobs, trouble, reload } = useJobs();
  const [naming, setNaming] = useState(false);
  const actions = useHomeActions(reload);
  const problem = actions.problem ?? trouble;
  return (
    <Frame
      name="Swingtape"
      actions={
        <Button kind="main" onPress={() => setNaming(true)}>
          New job
        </Button>
      }
    >
      <TabWarning />
      {problem && <Problem text={problem} />}
      {actions.restored && <RestoredNote restored={actions.restored} jobs={jobs ?? []} />}
      {jobs && (jobs.length === 0 ? <Welcome /> : <JobList jobs={jobs} />)}
      {jobs && <BackUpReminder jobs={jobs} />}
      <Button onPress={actions.openExample}>Open the example job</Button>
      <RestoreButton onFile={actions.restore} />
      <PhoneState anyJobs={jobs !== null && jobs.length > 0} />
      {naming && (
        <NewJobSheet problem={actions.problem} onClose={() => setNaming(false)} onCreate={actions.create} />
      )}
    </Frame>
  );
}

function Welcome() {
  return (
    <>
      <p>
        Put posts where the drawing wants them: tape lengths to pull from two stakes, and a verdict on every
        post before the concrete sets.
      </p>
      <p>Begin a job, or look round in the example: ten posts on a ring round a stove pier.</p>
    </>
  );
}
