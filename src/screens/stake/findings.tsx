import type { Entry } from '../../job/entry-schema.ts';
import type { Finding } from '../../judge/types.ts';
import { Caution } from '../../ui/index.ts';
import { type JobBook, useJobBook } from '../job-book.ts';
import { LoggedEntry } from '../logged-entry.tsx';
import { More } from '../more.tsx';

/** What is wrong with the pulls as a whole, above everything else, with each reading that could be the wrong one. */
export function Findings() {
  const book = useJobBook();
  return findingsToShow(book).map(({ finding, entries }) => (
    <Caution key={finding.text} title={TITLES[finding.code]}>
      <p>{finding.text}</p>
      {entries.length > MOST_SHOWN ? (
        <More label="The readings that it could be">
          <Readings entries={entries} />
        </More>
      ) : (
        <Readings entries={entries} />
      )}
    </Caution>
  ));
}

/** More suspects than this would push the card off the screen. */
const MOST_SHOWN = 1;

const Readings = ({ entries }: { readonly entries: readonly Entry[] }) => (
  <ul>
    {entries.map((entry) => (
      <LoggedEntry key={entry.id} entry={entry} />
    ))}
  </ul>
);

const TITLES: Record<Finding['code'], string> = {
  misreading: 'a reading looks wrong',
  baseline: 'A to B',
  'global-test': 'the pulls disagree',
  undetermined: 'not fixed yet',
  shape: 'shape',
  input: 'the plan',
};

/** Shape is judged of set posts; the plan's own faults are told where it is made. */
const ELSEWHERE: ReadonlySet<Finding['code']> = new Set(['undetermined', 'shape', 'input']);

/**
 * Findings that concern the stakes. What is merely not pulled yet is what the cards themselves ask for; pulls to set posts
 * are the business of the Set phase.
 */
function findingsToShow({ assessment, situation }: Pick<JobBook, 'assessment' | 'situation'>) {
  const byId = new Map(situation.entries.map((entry) => [entry.id, entry]));
  return assessment.findings
    .filter(({ code }) => !ELSEWHERE.has(code))
    .map((finding) => ({ finding, entries: finding.entries.flatMap((id) => byId.get(id) ?? []) }))
    .filter(({ entries }) => entries.length === 0 || !entries.every(touchesPost));
}

const touchesPost = ({ body }: { body: JobBook['log'][number]['body'] }): boolean =>
  body.kind === 'pull' ? [body.from, body.to].some(({ thing }) => thing.kind === 'post') : true;
