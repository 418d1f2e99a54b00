import { unbroken } from '../../../ui/unbroken.ts';
import type { Units } from '../../../units/index.ts';
import { PaperDrawing } from './paper-drawing.tsx';
import type { SheetCard, SheetPart, SheetTable, StakingSheet } from './sheet-parts.ts';

export interface StakingPaperProps {
  readonly sheet: StakingSheet;
  readonly units: Units;
}

/** The staking sheet: the same on the screen, on paper and in the file. No part of it keeps a state or handles an event. */
export function StakingPaper({ sheet: { job, head, cautions, parts }, units }: StakingPaperProps) {
  return (
    <div class="staking">
      <h1>{job}: staking sheet</h1>
      {head.map((words) => (
        <p key={words}>{unbroken(words)}</p>
      ))}
      <div class="staking-cautions">
        <p>Caution</p>
        <ul>
          {cautions.map((words) => (
            <li key={words}>{unbroken(words)}</li>
          ))}
        </ul>
      </div>
      {parts.map((part) => (
        <Part key={part.heading} part={part} units={units} />
      ))}
    </div>
  );
}

function Part({ part, units }: { readonly part: SheetPart; readonly units: Units }) {
  const { heading, drawing, sentences = [], tables = [], cards = [] } = part;
  return (
    <section>
      <h2>{heading}</h2>
      {drawing && <PaperDrawing drawing={drawing} units={units} />}
      {sentences.map((words) => (
        <p key={words}>{unbroken(words)}</p>
      ))}
      {tables.map((table) => (
        <div key={table.caption} class={isLong(table) ? 'staking-long' : undefined}>
          <Table {...table} />
        </div>
      ))}
      {cards.length > 0 && (
        <div class="staking-cards">
          {cards.map((card) => (
            <Card key={card.heading} card={card} units={units} />
          ))}
        </div>
      )}
    </section>
  );
}

/** Fewer rows than these are one list, wide or narrow. */
const MANY_ROWS = 12;

const isLong = ({ rows, narrow }: SheetTable): boolean => narrow === true && rows.length >= MANY_ROWS;

/** On a narrow screen each row stands as a block, its cells under their names. */
function Table({ caption, nameHead, heads, rows, readings }: SheetTable) {
  return (
    <table>
      <caption>{caption}</caption>
      <thead>
        <tr>
          {[nameHead, ...heads].map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([name = '', ...cells]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {cells.map((cell, i) => (
              <td key={heads[i]} data-head={heads[i]} class={i < readings ? 'staking-reading' : undefined}>
                {unbroken(cell)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Card({
  card: { heading, sentences, drawing },
  units,
}: {
  readonly card: SheetCard;
  readonly units: Units;
}) {
  return (
    <div class="staking-card">
      <h3>{heading}</h3>
      <div class="staking-card-parts">
        {drawing && <PaperDrawing drawing={drawing} units={units} />}
        <div>
          {sentences.map((words) => (
            <p key={words}>{unbroken(words)}</p>
          ))}
        </div>
      </div>
    </div>
  );
}
