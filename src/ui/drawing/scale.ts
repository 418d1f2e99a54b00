import type { Ellipse } from '../../measure/types.ts';
import { isMetric, METRES_PER_FOOT, type Units } from '../../units/index.ts';

/** A round length for the scale bar. */
export interface ScaleBar {
  readonly metres: number;
  readonly label: string;
}

/** Longest bar, pixels. */
const LONGEST_BAR = 110;

/** The longest of 1, 2, 5, 10 … of the job's units that fits. */
export function scaleBar(pxPerMetre: number, units: Units): ScaleBar {
  const metric = isMetric(units);
  const metresPerUnit = metric ? 1 : METRES_PER_FOOT;
  const count = roundDown(LONGEST_BAR / (pxPerMetre * metresPerUnit));
  const label = units === 'mm' ? `${Math.round(count * 1000)} mm` : `${count} ${metric ? 'm' : 'ft'}`;
  return { metres: count * metresPerUnit, label };
}

/** The largest ellipse reaches at most this far from its centre, pixels: beyond the mark, short of the next hole. */
const ELLIPSE_REACH = 40;

/** How much ellipses are enlarged to be seen, a round number; never less than 1. */
export function exaggeration(ellipses: readonly Ellipse[], pxPerMetre: number): number {
  const greatest = Math.max(0, ...ellipses.map((ellipse) => ellipse.semiMajor));
  return greatest > 0
    ? Math.max(1, roundDown(ELLIPSE_REACH / (greatest * pxPerMetre), [1, 1.5, 2, 3, 5, 7]))
    : 1;
}

/** The greatest number not above `x` that is one of `digits` times a power of ten. */
export function roundDown(x: number, digits: readonly number[] = [1, 2, 5]): number {
  const power = Math.floor(Math.log10(x));
  const tens = 10 ** Math.abs(power);
  // Dividing by a power of ten keeps 0.2 and 0.5 as they are written; multiplying by 0.1 would not.
  const kept = digits.findLast((digit) => digit <= (power < 0 ? x * tens : x / tens)) ?? 1;
  return power < 0 ? kept / tens : kept * tens;
}
