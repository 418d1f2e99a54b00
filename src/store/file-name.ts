/** Longest job name in a file name: with the ending it fits every phone's share sheet. */
const NAME_LENGTH = 60;

/** `<job name>.<ending>`, without what file systems forbid. */
export function safeFileName(job: string, ending: string): string {
  const safe = job
    .normalize('NFC')
    .replace(/[\p{C}\p{Z}/\\:*?"<>|.]+/gu, ' ')
    .trim()
    .slice(0, NAME_LENGTH)
    .trim();
  return `${safe || 'job'}.${ending}`;
}
