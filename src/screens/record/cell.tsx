import { VerdictMark } from '../../ui/index.ts';
import type { Cell } from './record-rows.ts';

/** A verdict in a table: shape and words. What is not guarded is hollow. */
export function VerdictCell({ verdict, checked, text }: Cell) {
  return (
    <VerdictMark verdict={verdict} checked={checked || verdict === 'unmeasured'}>
      {text}
    </VerdictMark>
  );
}
