import type { DepthMark } from '../../job/entry-schema.ts';
import type { Length } from '../../job/length.ts';

/** What a depth is read from, but for the level. */
export type MarkFrom = Exclude<DepthMark['from'], 'level'>;

/** What was answered of a depth from a mark so far: Back from the width leads to it again. */
export interface MarkAsked {
  readonly from: MarkFrom | null;
  readonly above: Length | null;
  readonly drafts: { readonly above: string; readonly reading: string };
}

export const NO_MARK: MarkAsked = { from: null, above: null, drafts: { above: '', reading: '' } };
