import type { Figure } from '../build/figure.ts';
import { formatLength, formatSmall, smallStep, type Units } from '../units/index.ts';
import { HALF_WIDTH_95 } from './normal.ts';

/** A figure as it is told: rounded to what a tape or a saw shows, with the half-width that holds the truth at 95 %. */
export interface Told {
  readonly is: number;
  readonly half: number;
}

/** What a figure may be above a whole step and still be that step: a millionth of it. */
const SLACK = 1e-6;

/**
 * Rounds to whole steps. What rounding itself may be off, one sigma of step/√12 (JCGM 100:2008, F.2.2.1), is in the
 * half-width, which is rounded up and is one step at least.
 */
export function told({ is, sigma }: Pick<Figure, 'is' | 'sigma'>, step: number): Told {
  const half = HALF_WIDTH_95 * Math.hypot(sigma, step / Math.sqrt(12));
  return { is: Math.round(is / step) * step, half: Math.max(1, Math.ceil(half / step - SLACK)) * step };
}

/** Saws are set to a tenth of a degree at best. */
export const ANGLE_STEP = Math.PI / 1800;

/** `7′ 6 1/4″ ± 3/16″`. */
export function lengthTold(figure: Pick<Figure, 'is' | 'sigma'>, units: Units): string {
  const { is, half } = told(figure, smallStep(units));
  return `${formatLength(is, units)} ± ${formatSmall(half, units)}`;
}

/** `134.6° ± 0.3°`. */
export function angleTold(figure: Pick<Figure, 'is' | 'sigma'>): string {
  const { is, half } = told(figure, ANGLE_STEP);
  return `${degrees(is)} ± ${degrees(half)}`;
}

/** The size of an angle: `1.8°`. */
export const angleWords = (radians: number): string => degrees(Math.abs(radians));

const degrees = (radians: number): string =>
  `${((radians * 180) / Math.PI)
    .toFixed(1)
    .replace(/^-(?=0\.0$)/, '')
    .replace('-', '−')}°`;

/** Against the drawing: `1/4″ longer`, `1/8″ shorter`, `as drawn`. */
export function lengthAgainst({ is, drawn }: Figure, units: Units): string {
  const off = Math.round((is - drawn) / smallStep(units)) * smallStep(units);
  if (off === 0) return 'as drawn';
  return `${formatSmall(Math.abs(off), units)} ${off > 0 ? 'longer' : 'shorter'}`;
}

/** Against the drawing: `0.4° more`, `0.3° less`, `as drawn`. */
export function angleAgainst({ is, drawn }: Figure): string {
  const off = Math.round((is - drawn) / ANGLE_STEP) * ANGLE_STEP;
  return off === 0 ? 'as drawn' : `${degrees(Math.abs(off))} ${off > 0 ? 'more' : 'less'}`;
}

/** What the saw is set to for two pieces that meet here: `22.3° ± 0.2°`, `square: they run straight on`. */
export function mitreTold(mitre: Figure): string {
  const { is, half } = told(mitre, ANGLE_STEP);
  const drawnStraight = Math.abs(mitre.drawn) < ANGLE_STEP / 2;
  if (drawnStraight && Math.abs(is) <= half) return 'square: they run straight on';
  const inward = is < 0 ? ', bent inwards' : '';
  return `${degrees(Math.abs(is))} ± ${degrees(half)}${inward}`;
}
