import { VerdictMark } from '../../ui/index.ts';
import type { Cell } from './record-rows.ts';

/** A verdict in a table: shape and words. What is not guarded, or not read since the pour, is hollow. */
export function VerdictCell({ verdict, checked, text, beforePour = false }: Cell) {
  return (
    <VerdictMark verdict={verdict} checked={(checked && !beforePour) || verdict === 'unmeasured'}>
      {beforePour ? `${text} before the pour` : text}
    </VerdictMark>
  );
}
