import { unbroken } from '../../ui/unbroken.ts';
import { RecordTable } from '../record/record-table.tsx';
import '../record/record.css';

/** A table as data: what is on the screen and on paper is what is copied. */
export interface PaperTable {
  readonly caption: string;
  readonly nameHead: string;
  readonly heads: readonly string[];
  /** What names a row is more than a label. */
  readonly longNames?: boolean;
  /** Each begins with what names it. */
  readonly rows: readonly (readonly string[])[];
}

interface Row {
  /** What names it. */
  readonly hole: string;
  readonly cells: readonly string[];
}

/** On a narrow screen each row stands as a block, its cells under their names. */
export function PaperTableView({ caption, nameHead, heads, rows, longNames = false }: PaperTable) {
  return (
    <RecordTable<Row>
      caption={caption}
      nameHead={nameHead}
      longNames={longNames}
      rows={rows.map(([name = '', ...cells]) => ({ hole: name, cells }))}
      nameOf={({ hole }) => hole}
      columns={heads.map((head, i) => ({ head, cell: ({ cells }) => unbroken(cells[i] ?? '') }))}
    />
  );
}

/** What is copied: a title, sentences, and tables with a tab between cells, which spreadsheets take as columns. */
export function asText(title: string, sentences: readonly string[], tables: readonly PaperTable[]): string {
  const table = ({ caption, nameHead, heads, rows }: PaperTable) =>
    [caption, [nameHead, ...heads].join('\t'), ...rows.map((row) => row.join('\t'))].join('\n');
  return [
    title,
    ...sentences,
    ...tables.filter(({ rows }) => rows.length > 0).map((each) => `\n${table(each)}`),
  ].join('\n');
}
