import type { Judgement } from '../judge/types.ts';
import { unbroken } from './unbroken.ts';
import { VerdictMark } from './verdict-mark.tsx';

export interface JudgementRow
  extends Pick<Judgement, 'verdict' | 'checked' | 'text'>,
    Partial<Pick<Judgement, 'why'>> {
  /** `place`, `plumb`, `spacing to 5`. */
  readonly name: string;
  /** `± 1/2″`, `1/4″ in 10′`, `at least 4′`. */
  readonly tolerance: string;
  /** It was in before the concrete, and nobody has read it since: no tick. */
  readonly beforePour?: boolean;
}

export interface JudgementTableProps {
  /** Accessible name: `Post 4 against the plan`. */
  readonly label: string;
  readonly rows: readonly JudgementRow[];
  /** `tap`: the reason opens under its row. `always`: it stands there, as on paper. */
  readonly why?: 'tap' | 'always';
}

/** One line per quantity: what, how much is allowed, the verdict by shape and word, and the reason. */
export function JudgementTable({ label, rows, why = 'tap' }: JudgementTableProps) {
  return (
    <ul class="judgements" aria-label={label}>
      {rows.map((row) => (
        <li key={row.name}>
          {row.why && why === 'tap' ? (
            <details>
              <summary class="judgement">
                <Cells row={row} />
                <span class="judgement-more">Why?</span>
              </summary>
              <p class="judgement-why">{unbroken(row.why)}</p>
            </details>
          ) : (
            <>
              <div class="judgement">
                <Cells row={row} />
              </div>
              {row.why && <p class="judgement-why">{unbroken(row.why)}</p>}
            </>
          )}
        </li>
      ))}
    </ul>
  );
}

function Cells({ row }: { readonly row: JudgementRow }) {
  return (
    <>
      <span class="judgement-name">
        {row.name} <span class="judgement-tolerance">{row.tolerance}</span>
      </span>
      <VerdictMark
        verdict={row.verdict}
        checked={(row.checked && !row.beforePour) || row.verdict === 'unmeasured'}
      >
        {unbroken(row.text)}
        {!row.checked && row.verdict !== 'unmeasured' && !row.text.includes('unchecked') && ', unchecked'}
        {row.beforePour && ' before the pour'}
      </VerdictMark>
    </>
  );
}
