import type { PullEnd } from '../job/entry-schema.ts';
import type { Situation } from '../judge/situation.ts';

/**
 * How much higher one end of a tape is than the other, metres and never negative, where a level has read the ground at
 * both; else null. `measure` takes the same heights for a pull along the slope that was logged without its rise.
 */
export function riseBetween(
  { measured }: Pick<Situation, 'measured'>,
  from: PullEnd,
  to: PullEnd,
): number | null {
  const heightAt = ({ thing, height }: PullEnd): number | null => {
    if (thing.kind === 'nail') return null;
    const key = thing.kind === 'stake' ? `stake:${thing.label}` : `ground:${thing.hole}`;
    const ground = measured?.heights.find((each) => each.key === key);
    return ground ? ground.height + (height?.m ?? 0) : null;
  };
  const [low, high] = [heightAt(from), heightAt(to)];
  return low === null || high === null ? null : Math.abs(high - low);
}

/** What a tape along a slope reads for a level length. Metres. */
export const alongSlope = (level: number, rise: number): number => Math.hypot(level, rise);
