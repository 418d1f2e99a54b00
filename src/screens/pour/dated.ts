import type { GateItem } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import { weatherTick } from '../../judge/weather.ts';
import { whenWords } from '../record/when.ts';

/** The look at the sky with its day: the gate has no clock, and cannot say whether that was today. */
export function dated(view: JobView, hole: string, item: GateItem): GateItem {
  const { tick } = weatherTick(view, hole);
  if (item.item !== 'weather' || !tick) return item;
  return { ...item, text: `${item.text} Looked at ${whenWords(tick.entry.at)}.` };
}
