import { VerdictCell } from './cell.tsx';
import { type DugRow, NOTHING_YET } from './record-rows.ts';
import { type Column, RecordTable } from './record-table.tsx';
import { whenWords } from './when.ts';

const COLUMNS: readonly Column<DugRow>[] = [
  { head: 'Depth asked', width: 'record-time', cell: (row) => row.asked },
  { head: 'Depth dug', width: 'record-wide', cell: (row) => <VerdictCell {...row.depth} /> },
  { head: 'Width dug', width: 'record-wide', cell: (row) => <VerdictCell {...row.width} /> },
  { head: 'Room', width: 'record-wide', cell: (row) => <VerdictCell {...row.room} /> },
  { head: 'In the way', cell: (row) => row.inTheWay },
  { head: 'Dug', cell: (row) => (row.dugAt === null ? NOTHING_YET : whenWords(row.dugAt)) },
];

/** The holes as they were dug. */
export function DugTable({ rows }: { readonly rows: readonly DugRow[] }) {
  return (
    <RecordTable
      caption="Holes as dug"
      rows={rows}
      nameHead="Hole"
      nameOf={(row) => row.hole}
      columns={COLUMNS}
    />
  );
}
