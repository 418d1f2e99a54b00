import type { JobView } from '../../../judge/view.ts';
import { readingOn } from '../../../measure/index.ts';
import type { Drawn } from '../../../ui/index.ts';
import { formatLength } from '../../../units/index.ts';
import type { PaperTable } from '../../build/paper-table.tsx';

/** A drawing with its size on paper, pixels. */
export interface SheetDrawing {
  readonly title: string;
  readonly drawn: Drawn;
  readonly width: number;
  readonly maxHeight: number;
}

/** A hole's ties: a drawing of what stands round it, and what is said of them. */
export interface SheetCard {
  readonly heading: string;
  readonly sentences: readonly string[];
  readonly drawing: SheetDrawing | null;
}

/** A table of the sheet. */
export interface SheetTable extends PaperTable {
  /** So many of the cells after the first are what a tape must read: they stand out. */
  readonly readings: number;
  /** Few and short columns: where rows are many, they stand side by side on paper. */
  readonly narrow?: true;
}

/** One part of the staking sheet. */
export interface SheetPart {
  readonly heading: string;
  readonly drawing?: SheetDrawing;
  readonly sentences?: readonly string[];
  readonly tables?: readonly SheetTable[];
  readonly cards?: readonly SheetCard[];
}

/** The whole staking sheet as data: what the screen shows, and what the file says, are both made of it. */
export interface StakingSheet {
  readonly job: string;
  readonly head: readonly string[];
  readonly cautions: readonly string[];
  readonly parts: readonly SheetPart[];
}

/** To be written in with a pencil. */
export const TO_WRITE = '________';

/** Nothing of the kind. Never an empty cell: on paper that could be taken for a forgotten one. */
export const NONE = '—';

/** What the tape in hand reads for a length that is there, metres, in the job's units. */
export const reads = ({ plan, inHand }: Pick<JobView, 'plan' | 'inHand'>, m: number): string =>
  formatLength(readingOn(inHand, m), plan.units);
