import { isMetric, type Units } from './units.ts';

/** How a quantity that is not a length is typed and shown: its mark, and the way to SI and back. */
export interface Scale {
  readonly mark: string;
  toSI(shown: number): number;
  fromSI(si: number): number;
}

const scale = (mark: string, perUnit: number, zero = 0): Scale => ({
  mark,
  toSI: (shown) => (shown - zero) * perUnit,
  fromSI: (si) => si / perUnit + zero,
});

/** °C and °F: the freezing point of water is 32 °F, and 9 °F are 5 °C. */
const CELSIUS = scale('°C', 1);
const FAHRENHEIT = scale('°F', 5 / 9, 32);

/** The pound-force: 0.45359237 kg (exact, 1959) at the standard acceleration of 9.80665 m/s² (NIST SP 811). */
const NEWTONS_PER_POUND = 0.45359237 * 9.80665;

/** Of a tape: °F where lengths are in feet, °C where they are metric. */
export const temperatureScale = (units: Units): Scale => (isMetric(units) ? CELSIUS : FAHRENHEIT);

const NEWTONS = scale('N', 1);
const POUNDS = scale('lb', NEWTONS_PER_POUND);

/** How hard a tape is pulled: pounds where lengths are in feet, newtons where they are metric. */
export const forceScale = (units: Units): Scale => (isMetric(units) ? NEWTONS : POUNDS);

const NEWTONS_PER_METRE = scale('N in 1 m', 1);
/** A hundred feet are 30.48 m. */
const POUNDS_PER_HUNDRED_FEET = scale('lb in 100′', NEWTONS_PER_POUND / 30.48);

/** How heavy a tape is for its length. */
export const weightScale = (units: Units): Scale =>
  isMetric(units) ? NEWTONS_PER_METRE : POUNDS_PER_HUNDRED_FEET;
