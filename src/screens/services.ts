import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { FieldBook } from '../store/field-book.ts';
import type { KeptResults } from '../store/kept-results.ts';
import type { StorageState } from '../store/self-test.ts';
import type { OfflineWatch } from './offline.ts';

/** The world outside the screens. Tests put in a field book over a database of their own. */
export interface Services {
  readonly book: FieldBook;
  /** Null where nothing is to be kept but the log. */
  readonly kept: KeptResults | null;
  readonly offline: OfflineWatch;
  /** What the browser says of its storage; `ask` has it asked to keep ours, which is worth it once there is a job. */
  readonly storage: (ask: boolean) => Promise<StorageState>;
}

export const ServicesContext = createContext<Services | null>(null);

export function useServices(): Services {
  const services = useContext(ServicesContext);
  if (!services) throw new Error('useServices: no ServicesContext.Provider above this component');
  return services;
}
