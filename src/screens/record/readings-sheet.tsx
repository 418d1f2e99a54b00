import { viewOf } from '../../judge/view.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { PaperSheet } from '../build/paper-sheet.tsx';
import { asText, PaperTableView } from '../build/paper-table.tsx';
import { useJobBook } from '../job-book.ts';
import { offsetsTable, pullsTable, READINGS_MEAN, suspectNames } from './reading-rows.ts';

const TITLE = 'Every reading';

/** What the adjustment says of every reading of a place: the page that a survey office would ask for. */
export function ReadingsSheet({ onClose }: { readonly onClose: () => void }) {
  const { situation, assessment } = useJobBook();
  const view = viewOf(situation);
  const tables = view ? [pullsTable(view, assessment), offsetsTable(view, assessment)] : [];
  const job = view?.plan.name ?? '';
  const text = () => asText(`${job}: ${TITLE}`, READINGS_MEAN, tables);
  const suspects = view ? suspectNames(tables) : [];
  const told = tables.filter(({ rows }) => rows.length > 0);
  return (
    <PaperSheet title={TITLE} job={job} text={text} onClose={onClose}>
      {suspects.length > 0 && <p>{unbroken(`Looks misread: ${suspects.join('; ')}.`)}</p>}
      {told.length === 0 && <p>No pull tells of a place yet.</p>}
      {told.map((table) => (
        <PaperTableView key={table.caption} {...table} />
      ))}
      <ul class="record-list">
        {READINGS_MEAN.map((words) => (
          <li key={words}>{unbroken(words)}</li>
        ))}
      </ul>
    </PaperSheet>
  );
}
