import type { Choice } from '../ui/choice-field.tsx';
import type { Units } from '../units/index.ts';

/** As the plan's schema allows. */
export const MOST_NAME = 80;

export const UNIT_CHOICES: readonly Choice<Units>[] = [
  { value: 'ft-in-16', label: 'Feet, inches, sixteenths', hint: '12′ 6 5/16″' },
  { value: 'ft-in-32', label: 'Feet, inches, thirty-seconds', hint: '12′ 6 5/32″' },
  { value: 'ft', label: 'Tenths of a foot', hint: '12.54 ft' },
  { value: 'm', label: 'Metres', hint: '3.825 m' },
  { value: 'mm', label: 'Millimetres', hint: '3825 mm' },
];
