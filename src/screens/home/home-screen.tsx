import { useEffect, useState } from 'preact/hooks';
import type { JobRow } from '../../store/db.ts';
import { Button } from '../../ui/button.tsx';
import { Frame } from '../../ui/frame.tsx';
import { Problem } from '../../ui/problem.tsx';
import { useServices } from '../services.ts';
import { JobList } from './job-list.tsx';
import { NewJobSheet } from './new-job-sheet.tsx';
import { PhoneState } from './phone-state.tsx';
import { RestoreButton } from './restore-button.tsx';
import { useHomeActions } from './use-home-actions.ts';

/** The page of jobs: go on with one, begin one, look at the example, bring one back from a file. */
export function HomeScreen() {
  const { jobs, trouble } = useJobs();
  const [naming, setNaming] = useState(false);
  const actions = useHomeActions();
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
      {problem && <Problem text={problem} />}
      {jobs.length === 0 ? <Welcome /> : <JobList jobs={jobs} />}
      <Button onPress={actions.openExample}>Open the example job</Button>
      <RestoreButton onFile={actions.restore} />
      <PhoneState />
      {naming && <NewJobSheet onClose={() => setNaming(false)} onCreate={actions.create} />}
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

function useJobs(): { jobs: readonly JobRow[]; trouble: string | null } {
  const { book } = useServices();
  const [jobs, setJobs] = useState<readonly JobRow[]>([]);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    book.listJobs().then(setJobs, (error: Error) => setTrouble(error.message));
  }, [book]);
  return { jobs, trouble };
}
