import { isMetric, type Units } from '../../units/index.ts';

const CUBIC_METRES_PER_CUBIC_FOOT = 0.3048 ** 3;
const CUBIC_FEET_PER_CUBIC_YARD = 27;
const LITRES_PER_CUBIC_METRE = 1000;

/** `2.3 ft³`, `0.065 m³`. */
export function volumeWords(cubicMetres: number, units: Units): string {
  if (isMetric(units)) return `${cubicMetres.toFixed(3)} m³`;
  return `${(cubicMetres / CUBIC_METRES_PER_CUBIC_FOOT).toFixed(1)} ft³`;
}

/** A load, as it is ordered: `0.72 yd³ (19.4 ft³)`, `0.55 m³`. */
export function loadWords(cubicMetres: number, units: Units): string {
  if (isMetric(units)) return `${cubicMetres.toFixed(2)} m³`;
  const feet = cubicMetres / CUBIC_METRES_PER_CUBIC_FOOT;
  return `${(feet / CUBIC_FEET_PER_CUBIC_YARD).toFixed(2)} yd³ (${feet.toFixed(1)} ft³)`;
}

/** A bag's yield as it is printed where lengths are in feet, or metric. */
export const yieldShown = (litres: number, units: Units): number =>
  isMetric(units)
    ? rounded(litres, 10)
    : rounded(litres / LITRES_PER_CUBIC_METRE / CUBIC_METRES_PER_CUBIC_FOOT, 1000);

export const yieldLitres = (shown: number, units: Units): number =>
  isMetric(units) ? shown : shown * CUBIC_METRES_PER_CUBIC_FOOT * LITRES_PER_CUBIC_METRE;

export const yieldUnit = (units: Units): string => (isMetric(units) ? 'litres' : 'ft³');

const rounded = (value: number, parts: number): number => Math.round(value * parts) / parts;
