/**
 * Runs `work` on the browser's small store for what is convenient and no data. Where the browser refuses it (a private window,
 * cookies forbidden) nothing is kept, and nothing else comes of it.
 */
export function withSmallStore<T>(work: (storage: Storage) => T): T | null {
  try {
    return work(localStorage);
  } catch (error) {
    // Refused or full: SecurityError or QuotaExceededError, both of them DOMExceptions.
    if (error instanceof DOMException) return null;
    throw error;
  }
}
