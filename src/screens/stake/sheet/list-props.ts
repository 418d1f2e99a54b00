/** What is open: the list on the screen, or the sheet for paper. */
export type OpenList = 'list' | 'paper';

export interface OpenListProps {
  readonly open: OpenList;
  readonly onOpen: (open: OpenList | null) => void;
}
