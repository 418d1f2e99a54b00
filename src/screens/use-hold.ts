import type { Hold } from '../job/entry-schema.ts';
import { ofKind } from '../job/log.ts';
import { useJobBook } from './job-book.ts';
import { watched } from './watched.ts';

type How = Hold['how'];

/** What was chosen on this page, by job: it lasts from hole to hole, each of which starts its screen afresh. */
const chosen = new Map<string, How>();

const { useChanges, changed } = watched();

/** How the tape is held: as chosen on this page, else as for the last pull of the job, else level. */
export function useHold(): readonly [How, (how: How) => void] {
  const { jobId, situation } = useJobBook();
  useChanges();
  const how = chosen.get(jobId) ?? ofKind(situation.entries, 'pull').at(-1)?.body.hold.how ?? 'level';
  const choose = (next: How) => {
    chosen.set(jobId, next);
    // Every card that shows it: a choice made in a sheet is the card's behind it too.
    changed();
  };
  return [how, choose];
}
