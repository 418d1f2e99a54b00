import { createContext } from 'preact';
import { useContext } from 'preact/hooks';

/** What is open: the list on the screen, or the sheet for paper. */
export type OpenList = 'list' | 'paper';

export interface OpenListProps {
  readonly open: OpenList;
  readonly onOpen: (open: OpenList | null) => void;
}

/** Provided by the Stake screen. */
export const OpenListContext = createContext<OpenListProps['onOpen'] | null>(null);

/** Opens the pull list over whatever card is shown. */
export function useOpenList(): OpenListProps['onOpen'] {
  const open = useContext(OpenListContext);
  if (!open) throw new Error('useOpenList: no OpenListContext.Provider above this component');
  return open;
}
