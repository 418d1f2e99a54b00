import type { ComponentChildren } from 'preact';
import type { Verdict } from '../judge/types.ts';
import { VerdictShape, verdictWord } from './mark-shapes.tsx';
import { unbrokenIn } from './unbroken.ts';

export interface VerdictMarkProps {
  readonly verdict: Verdict;
  /** False: no spare reading guards it. The mark is then hollow and the word says `unchecked`. */
  readonly checked?: boolean;
  /** What stands beside the shape instead of the plain word. It must hold the verdict's word itself. */
  readonly children?: ComponentChildren;
}

/** A verdict by shape and word; colour comes last. */
export function VerdictMark({ verdict, checked = true, children }: VerdictMarkProps) {
  return (
    <span class={`verdict verdict-${verdict}${checked ? '' : ' verdict-unchecked'}`}>
      <svg class="verdict-shape" viewBox="-14 -14 28 28" aria-hidden="true" focusable="false">
        <VerdictShape x={0} y={0} r={12} verdict={verdict} checked={checked} />
      </svg>
      <span class="verdict-word">{unbrokenIn(children) ?? verdictWord(verdict, checked)}</span>
    </span>
  );
}
