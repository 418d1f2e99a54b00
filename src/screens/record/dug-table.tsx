import { VerdictCell } from './cell.tsx';
import { type DugRow, NOTHING_YET } from './record-rows.ts';
import { whenWords } from './when.ts';

/** Heads of the columns, and the class of those that on paper are not of the usual width. */
const HEADS = [
  ['Hole', 'record-narrow'],
  ['Depth asked', 'record-time'],
  ['Depth dug', 'record-wide'],
  ['Width dug', 'record-wide'],
  ['In the way'],
  ['Dug'],
] as const;

/** The holes as they were dug. On a narrow screen each row stands as a block, its cells under their names. */
export function DugTable({ rows }: { readonly rows: readonly DugRow[] }) {
  return (
    <table class="record-table">
      <caption>Holes as dug</caption>
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
          <tr key={row.hole}>
            <th scope="row">{row.hole}</th>
            <td data-head="Depth asked">{row.asked}</td>
            <td data-head="Depth dug">
              <VerdictCell {...row.depth} />
            </td>
            <td data-head="Width dug">
              <VerdictCell {...row.width} />
            </td>
            <td data-head="In the way">{row.inTheWay}</td>
            <td data-head="Dug">{row.dugAt === null ? NOTHING_YET : whenWords(row.dugAt)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
