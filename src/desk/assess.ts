import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { deskReport } from '../judge/desk-report.ts';
import { readBackup } from '../store/read-backup.ts';

/** What the command answers: the text for its output or for its complaints, and its exit code. */
export interface Answer {
  readonly code: 0 | 1 | 2;
  readonly out: string;
  readonly complaint: string;
}

const USAGE = 'Usage: npm run assess -- FILE, where FILE is a backup of a job.';

/**
 * Judges a backup file with the very functions that the phone uses.
 *
 * @param args command line arguments after the script's name
 * @param read text of a file; throws the system's error when there is none
 * @returns code 0 and the `DeskReport` as JSON; 1 and one sentence when the file cannot be read; 2 and the usage
 */
export function answer(args: readonly string[], read: (path: string) => string): Answer {
  const [path, ...more] = args;
  if (path === undefined || more.length > 0) return { code: 2, out: '', complaint: USAGE };
  let text: string;
  try {
    text = read(path);
  } catch (error) {
    return {
      code: 1,
      out: '',
      complaint: `FILE: “${path}” cannot be read (${reasonOf(error)}); name a backup file.`,
    };
  }
  const backup = readBackup(text);
  if (!backup.ok) return { code: 1, out: '', complaint: backup.problem.text };
  return { code: 0, out: JSON.stringify(deskReport(backup.value.log), null, 2), complaint: '' };
}

/** The system's own code, such as ENOENT. */
function reasonOf(error: unknown): string {
  if (error instanceof Error && 'code' in error) return String(error.code);
  throw error;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { code, out, complaint } = answer(process.argv.slice(2), (path) => readFileSync(path, 'utf8'));
  if (out) console.log(out);
  if (complaint) console.error(complaint);
  process.exitCode = code;
}
