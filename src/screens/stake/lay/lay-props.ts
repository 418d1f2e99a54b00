import type { LineDraft } from './line-draft.ts';
import type { PegsDraft } from './on-pegs-draft.ts';
import type { StakesDraft } from './on-stakes-draft.ts';
import type { Held } from './use-lay-draft.ts';

/** What is open of the ground and what stands on it. */
export type OpenLay = 'lines' | 'stakes' | 'pegs';

/** What was typed, which outlives the sheet: Back on the phone throws away no tape. Lines by their place in the list. */
export interface LayDrafts {
  readonly stakes: Held<StakesDraft>;
  readonly pegs: Held<PegsDraft>;
  readonly lines: Map<number, Held<LineDraft>>;
}

export const noDrafts = (): LayDrafts => ({ stakes: { now: null }, pegs: { now: null }, lines: new Map() });

export interface LaySheetProps {
  readonly drafts: LayDrafts;
  readonly onClose: () => void;
  /** The plan lies on what is there. */
  readonly onLaid: () => void;
}

export interface OpenLayProps extends LaySheetProps {
  readonly open: OpenLay;
}
