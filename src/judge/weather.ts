import { countedTick, type Ticked } from './ticks.ts';
import type { JobView } from './view.ts';

/** A look at the sky holds for half a day (common practice). */
const WEATHER_HOLDS_MS = 12 * 3600 * 1000;

/**
 * The look at the sky that counts for a hole: near enough to its pour, and before that to the newest entry, for there is
 * no clock here. A screen has one, and holds the tick against the day.
 */
export function weatherTick(view: JobView, hole: string) {
  const pour = view.book.pours(hole).at(-1);
  const at = pour ? Date.parse(pour.entry.at) : view.book.latest;
  const near = ({ entry }: Ticked) => Math.abs(at - Date.parse(entry.at)) <= WEATHER_HOLDS_MS;
  return countedTick(view, 'weather', hole, near, pour?.index);
}
