import { createContext } from 'preact';
import { useContext, useLayoutEffect, useRef } from 'preact/hooks';

/** Passes on what stands in a box; the reason where that is no good value. */
type Commit = () => string | null;

/** The typed fields of one sheet. */
export const BoxesContext = createContext<Set<Commit> | null>(null);

export interface Boxes {
  /** For the sheet's `BoxesContext.Provider`. */
  readonly scope: Set<Commit>;
  /** Has every box pass on what stands in it; the first reason why one could not, else null. */
  commit(): string | null;
}

/**
 * The boxes of a sheet, read when its button is tapped and not only when a box is left: some phones leave the box focused
 * through a tap on a button.
 */
export function useBoxes(): Boxes {
  const { current: scope } = useRef(new Set<Commit>());
  return { scope, commit: () => [...scope].map((commit) => commit()).find((why) => why !== null) ?? null };
}

/** Puts a box among those of its sheet, if that asks for them. */
export function useAmongBoxes(commit: Commit): void {
  const scope = useContext(BoxesContext);
  const latest = useRef(commit);
  latest.current = commit;
  useLayoutEffect(() => {
    if (!scope) return;
    const now = () => latest.current();
    scope.add(now);
    return () => void scope.delete(now);
  }, [scope]);
}
