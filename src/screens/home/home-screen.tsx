import { useState } from 'preact/hooks';
import type { Restored } from '../../store/restore.ts';
import { Button, ButtonLink, FilePick, Frame, Problem } from '../../ui/index.ts';
import { ActionRow } from '../action-row.tsx';
import { hrefOf } from '../route.ts';
import { BackUpReminder } from './back-up-reminder.tsx';
import { JobList } from './job-list.tsx';
import { NewJobSheet } from './new-job-sheet.tsx';
import { PhoneState } from './phone-state.tsx';
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
      actions={<HomeActions restored={actions.restored} onNew={() => setNaming(true)} />}
    >
      <TabWarning />
      {problem && <Problem text={problem} />}
      {actions.restored && <RestoredNote restored={actions.restored} jobs={jobs ?? []} />}
      {jobs && (jobs.length === 0 ? <Welcome /> : <JobList jobs={jobs} />)}
      {jobs && <BackUpReminder jobs={jobs} />}
      <Button onPress={actions.openExample}>Open the example job</Button>
      <FilePick label="Restore a backup" accept={ANY_TEXT} onFile={actions.restore} />
      <PhoneState anyJobs={jobs !== null && jobs.length > 0} />
      {naming && (
        <NewJobSheet problem={actions.problem} onClose={() => setNaming(false)} onCreate={actions.create} />
      )}
    </Frame>
  );
}

/** Some phones rename what they share, so that a backup may be a text file of any name. */
const ANY_TEXT = '.txt,.json,text/plain,application/json';

/** A job that was just brought back is what one goes on with; else a new one is begun. */
function HomeActions({
  restored,
  onNew,
}: {
  readonly restored: Restored | null;
  readonly onNew: () => void;
}) {
  if (!restored)
    return (
      <Button kind="main" onPress={onNew}>
        New job
      </Button>
    );
  return (
    <ActionRow beside={<Button onPress={onNew}>New job</Button>}>
      <ButtonLink kind="main" href={hrefOf({ at: 'job', job: restored.jobId, phase: 'record', hole: null })}>
        Open it
      </ButtonLink>
    </ActionRow>
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
