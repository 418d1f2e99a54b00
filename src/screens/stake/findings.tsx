import type { Entry } from '../../job/entry-schema.ts';
import { linesTooNear } from '../../judge/setback.ts';
import { groundLinesOf } from '../../judge/situation.ts';
import type { Finding } from '../../judge/types.ts';
import { listWords } from '../../judge/words.ts';
import { Caution } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { type JobBook, useJobBook } from '../job-book.ts';
import { LoggedEntry } from '../logged-entry.tsx';
import { More } from '../more.tsx';

interface FindingsProps {
  readonly about: string | null;
  readonly lines: boolean;
}

/**
 * What is wrong with the pulls as a whole, above everything else, with each reading that could be the wrong one.
 *
 * @param about id of the entry that the card itself is about
 * @param lines whether the card is about where the plan lies: only then is all told that is too near a line
 */
export function Findings({ about, lines }: FindingsProps) {
  const book = useJobBook();
  const found = findingsToShow(book, about).filter(({ finding }) => lines || finding.code !== 'setback');
  return found.map(({ finding, entries }) => (
    <Caution key={finding.text} title={TITLES[finding.code]}>
      <p>{unbroken(finding.text)}</p>
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

/** One line on the card of a hole whose post comes too near a line on the ground. */
export function NearLine({ hole }: { readonly hole: string }) {
  const { situation } = useJobBook();
  const at = situation.holes.find(({ label }) => label === hole);
  const names = at ? linesTooNear(at, situation.holes, groundLinesOf(situation).lines) : [];
  if (names.length === 0) return null;
  return <p>By the plan this post comes too near {listWords(names)}.</p>;
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
  'moved-stake': 'a stake moved',
  baseline: 'A to B',
  'global-test': 'the pulls disagree',
  undetermined: 'not fixed yet',
  decision: 'a decision is missing',
  shape: 'shape',
  heights: 'heights',
  setback: 'too near a line',
  input: 'the plan',
};

/** Shape and heights are judged of set posts; the plan's own faults are told where it is made. */
const ELSEWHERE: ReadonlySet<Finding['code']> = new Set(['undetermined', 'shape', 'heights', 'input']);

/**
 * Findings that concern the stakes. What is merely not pulled yet is what the cards themselves ask for; pulls to set posts
 * are the business of the Set phase.
 */
function findingsToShow(
  { assessment, situation }: Pick<JobBook, 'assessment' | 'situation'>,
  about: string | null,
) {
  const byId = new Map(situation.entries.map((entry) => [entry.id, entry]));
  const found = assessment.findings
    .filter(({ code, entries }) => !ELSEWHERE.has(code) && !(about !== null && entries.includes(about)))
    .map((finding) => ({ finding, entries: finding.entries.flatMap((id) => byId.get(id) ?? []) }))
    .filter(({ entries }) => entries.length === 0 || !entries.every(touchesPost));
  // A misreading bends A–B along with all the rest: first that, then the line.
  const misread = assessment.findings.some(({ code }) => code === 'misreading');
  return misread ? found.filter(({ finding }) => finding.code !== 'baseline') : found;
}

const touchesPost = ({ body }: { body: JobBook['log'][number]['body'] }): boolean =>
  body.kind === 'pull' ? [body.from, body.to].some(({ thing }) => thing.kind === 'post') : true;
