import type { ComponentChildren } from 'preact';

/** A column of one of the record's tables. */
export interface Column<Row> {
  readonly head: string;
  /** Where on paper it is not of the usual width. */
  readonly width?: 'record-wide' | 'record-time';
  readonly cell: (row: Row) => ComponentChildren;
}

export interface RecordTableProps<Row> {
  readonly caption: string;
  readonly rows: readonly Row[];
  /** Head of the first column, which names each row. */
  readonly nameHead: string;
  readonly nameOf: (row: Row) => string;
  /** On paper names are more than a label. */
  readonly longNames?: boolean;
  readonly columns: readonly Column<Row>[];
}

/** A table of the record. On a narrow screen each row stands as a block, its cells under their names. */
export function RecordTable<Row extends { readonly hole: string }>(props: RecordTableProps<Row>) {
  const { caption, rows, nameHead, nameOf, columns, longNames = false } = props;
  return (
    <table class="record-table">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col" class={longNames ? 'record-wide' : 'record-narrow'}>
            {nameHead}
          </th>
          {columns.map(({ head, width }) => (
            <th key={head} scope="col" class={width}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.hole}>
            <th scope="row">{nameOf(row)}</th>
            {columns.map(({ head, cell }) => (
              <td key={head} data-head={head}>
                {cell(row)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
