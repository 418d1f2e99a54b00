import { VerdictCell } from './cell.tsx';
import { NOTHING_YET, type SetRow } from './record-rows.ts';
import { whenWords } from './when.ts';

/** Heads of the columns, and the class of those that on paper are not of the usual width. */
const HEADS = [
  ['Post', 'record-narrow'],
  ['Place'],
  ['Plumb'],
  ['Top'],
  ['Spacing', 'record-wide'],
  ['Verdict', 'record-time'],
  ['Set', 'record-time'],
  ['Poured', 'record-time'],
] as const;

/** The posts as they were set and poured, each quantity with its verdict. */
export function SetTable({ rows }: { readonly rows: readonly SetRow[] }) {
  return (
    <table class="record-table">
      <caption>Posts as set</caption>
      <thead>
        <tr>
          {HEADS.map(([head, width]) => (
            <th key={head} scope="col" class={width}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <Row key={row.hole} row={row} />
        ))}
      </tbody>
    </table>
  );
}

function Row({ row }: { readonly row: SetRow }) {
  return (
    <tr>
      <th scope="row">{row.name}</th>
      <td data-head="Place">
        <VerdictCell {...row.place} />
      </td>
      <td data-head="Plumb">
        <VerdictCell {...row.plumb} />
      </td>
      <td data-head="Top">
        <VerdictCell {...row.top} />
      </td>
      <td data-head="Spacing">
        <div class="record-cells">
          {row.spacing.length === 0 && NOTHING_YET}
          {row.spacing.map((part) => (
            <div key={part.to} class="record-spacing">
              <span>to {part.to}</span> <VerdictCell {...part} />
            </div>
          ))}
        </div>
      </td>
      <td data-head="Verdict">
        <VerdictCell {...row.verdict} />
      </td>
      <td data-head="Set">{row.setAt === null ? NOTHING_YET : whenWords(row.setAt)}</td>
      <td data-head="Poured">
        {row.poured === null ? NOTHING_YET : `${row.poured.bags}, ${whenWords(row.poured.at)}`}
      </td>
    </tr>
  );
}
