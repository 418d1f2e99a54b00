import { useEffect, useState } from 'preact/hooks';

/** What is chosen outside any one component, and tells all that show it when it changes. */
export interface Watched {
  /** Draws the component that calls it again whenever something is changed. */
  readonly useChanges: () => void;
  /** To be called after every change. */
  readonly changed: () => void;
}

export function watched(): Watched {
  const watchers = new Set<() => void>();
  const useChanges = () => {
    const [, count] = useState(0);
    useEffect(() => {
      const redraw = () => count((n) => n + 1);
      watchers.add(redraw);
      return () => void watchers.delete(redraw);
    }, []);
  };
  return {
    useChanges,
    changed: () => {
      for (const redraw of watchers) redraw();
    },
  };
}
