import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { PullToRead } from './pull-flow.tsx';

/** Opens the keypad for a pull; provided by the phase's screen. */
export const OpenPullContext = createContext<((pull: PullToRead) => void) | null>(null);

export function useOpenPull(): (pull: PullToRead) => void {
  const open = useContext(OpenPullContext);
  if (!open) throw new Error('useOpenPull: no OpenPullContext.Provider above this component');
  return open;
}
