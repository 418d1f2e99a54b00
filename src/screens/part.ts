import type { ComponentType } from 'preact';

/** A part of the app in a file of its own. */
export interface Part<P> {
  /** Null until it has been loaded. */
  readonly now: () => ComponentType<P> | null;
  /** Loads it, unless it is here already. One that failed is tried again. */
  readonly load: () => Promise<ComponentType<P>>;
}

export function part<P>(load: () => Promise<ComponentType<P>>): Part<P> {
  let loaded: ComponentType<P> | null = null;
  return {
    now: () => loaded,
    load: async () => {
      loaded ??= await load();
      return loaded;
    },
  };
}
