import { ok, type Result, refuse } from '../../units/index.ts';

const FIELD = 'Poured at';
const TIME = /^(?:(\d{4})-(\d{1,2})-(\d{1,2})[ T]+)?(\d{1,2})[:.](\d{2})$/;

/**
 * Reads when concrete went in, by the phone's own clock and day: `14:20`, `2026-05-16 14:20`. Empty is now.
 *
 * @param now milliseconds since 1970
 * @returns UTC, as the log has it; null for now
 */
export function readPouredAt(text: string, now: number): Result<string | null> {
  const clean = text.trim();
  if (clean === '') return ok(null);
  const at = timeIn(clean, new Date(now));
  const quoted = `${FIELD}: “${clean.slice(0, 40)}”`;
  if (at === null)
    return refuse(
      FIELD,
      `${quoted} is no time; type it like 14:20, or ${dayOf(now)} 14:20, or leave it empty for now.`,
    );
  if (at > now)
    return refuse(
      FIELD,
      `${quoted} is in the future: it is ${clockOf(now)} now; type when it went in, with the day if it was not today.`,
    );
  return ok(new Date(at).toISOString());
}

/**
 * Asks to look again at a time from before the job was begun, which may be so: the phone is taken out after the pour.
 *
 * @param at as `readPouredAt` gives it
 * @param began milliseconds since 1970
 * @returns null where there is nothing to ask
 */
export const earlyWords = (at: string | null, began: number): string | null =>
  at !== null && Date.parse(at) < began
    ? `That is before this job was begun here, on ${dayOf(began)} at ${clockOf(began)}. If it is so, log it; else type the day with it.`
    : null;

function timeIn(text: string, today: Date): number | null {
  const [, year, month, day, hour, minute] = TIME.exec(text)?.map(Number) ?? [];
  if (hour === undefined || minute === undefined || hour > 23 || minute > 59) return null;
  if (year === undefined || Number.isNaN(year))
    return new Date(today.getFullYear(), today.getMonth(), today.getDate(), hour, minute).getTime();
  const at = new Date(year, month! - 1, day!, hour, minute);
  // The 31st of June is no day, and would be the 1st of July.
  return at.getMonth() === month! - 1 && at.getDate() === day ? at.getTime() : null;
}

const two = (n: number): string => String(n).padStart(2, '0');

function dayOf(ms: number): string {
  const at = new Date(ms);
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

function clockOf(ms: number): string {
  const at = new Date(ms);
  return `${two(at.getHours())}:${two(at.getMinutes())}`;
}
