/**
 * Reads a count off the command line.
 *
 * @throws RangeError in words when it is none
 */
export function whole(name: string, typed: string): number {
  if (!/^[1-9]\d{0,6}$/.test(typed))
    throw new RangeError(`--${name}: “${typed}” is not a whole number from 1 to 9999999.`);
  return Number(typed);
}
