export interface HeightsProps {
  /** The hole at hand. */
  readonly hole: string | null;
}

/** What of the heights is open. */
export type OpenOfHeights = 'list' | 'rod' | 'difference' | 'two-peg';

export interface OpenHeightsProps extends HeightsProps {
  readonly open: OpenOfHeights;
  readonly onOpen: (open: OpenOfHeights | null) => void;
}
