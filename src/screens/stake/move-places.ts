import { createContext } from 'preact';
import { useContext } from 'preact/hooks';

/** What is being given a place: A and B, or a further stake or nail. */
export type Placing = 'A and B' | 'further';

/** Opens the card on which places are chosen; provided by the Stake screen. */
export const MovePlacesContext = createContext<((what: Placing) => void) | null>(null);

export function useMovePlaces(): (what: Placing) => void {
  const open = useContext(MovePlacesContext);
  if (!open) throw new Error('useMovePlaces: no MovePlacesContext.Provider above this component');
  return open;
}
