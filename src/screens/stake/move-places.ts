import { createContext } from 'preact';
import { useContext } from 'preact/hooks';

/** Opens the card on which the places of A and B are chosen; provided by the Stake screen. */
export const MovePlacesContext = createContext<(() => void) | null>(null);

export function useMovePlaces(): () => void {
  const open = useContext(MovePlacesContext);
  if (!open) throw new Error('useMovePlaces: no MovePlacesContext.Provider above this component');
  return open;
}
