import { unbroken } from '../../ui/unbroken.ts';
import { VerdictCell } from './cell.tsx';
import { NOTHING_YET, type SetRow } from './record-rows.ts';
import { type Column, RecordTable } from './record-table.tsx';
import { whenWords } from './when.ts';

const COLUMNS: readonly Column<SetRow>[] = [
  { head: 'Place', cell: (row) => <VerdictCell {...row.place} /> },
  { head: 'Plumb', cell: (row) => <VerdictCell {...row.plumb} /> },
  { head: 'Top', cell: (row) => <VerdictCell {...row.top} /> },
  { head: 'Level with the others', cell: (row) => <VerdictCell {...row.tops} /> },
  { head: 'Spacing', width: 'record-wide', cell: (row) => <Spacings row={row} /> },
  { head: 'Verdict', width: 'record-time', cell: (row) => <VerdictCell {...row.verdict} /> },
  {
    head: 'Set',
    width: 'record-time',
    cell: (row) => (row.setAt === null ? NOTHING_YET : whenWords(row.setAt)),
  },
  {
    head: 'Poured',
    width: 'record-time',
    cell: ({ poured }) => (poured === null ? NOTHING_YET : `${poured.bags}, ${whenWords(poured.at)}`),
  },
];

interface SetTableProps {
  readonly rows: readonly SetRow[];
  /** What the tops have in common. */
  readonly tops: string;
}

/** The posts as they were set and poured, each quantity with its verdict. */
export function SetTable({ rows, tops }: SetTableProps) {
  return (
    <>
      <SetRows rows={rows} />
      <p>{unbroken(tops)}</p>
    </>
  );
}

function SetRows({ rows }: Pick<SetTableProps, 'rows'>) {
  return (
    <RecordTable
      caption="Posts as set"
      rows={rows}
      nameHead="Post"
      nameOf={(row) => row.name}
      columns={COLUMNS}
    />
  );
}

function Spacings({ row: { spacing } }: { readonly row: SetRow }) {
  return (
    <div class="record-cells">
      {spacing.length === 0 && NOTHING_YET}
      {spacing.map((part) => (
        <div key={part.to} class="record-spacing">
          <span>to {part.to}</span> <VerdictCell {...part} />
        </div>
      ))}
    </div>
  );
}
