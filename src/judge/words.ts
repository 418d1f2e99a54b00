import { cross, dot, length, type SitePoint, scale, subtract, type Vec } from '../geometry/point.ts';
import { formatSmall, isMetric, METRES_PER_FOOT, smallStep, type Units } from '../units/index.ts';
import type { Verdict } from './types.ts';

/** What a person on the site can point at: the middle of a ring, or the plan's front. */
export interface Ground {
  readonly units: Units;
  /** The plan's centre on the site. */
  readonly centre: SitePoint;
  /** Unit vector towards the plan's front. */
  readonly front: Vec;
  /** What stands in the middle of a ring; null for rows and free points, where ways are told by the plan's front. */
  readonly around: 'pier' | 'centre' | null;
}

/** A small length without its sign, and never `0″` for something that is there. */
export function small(m: number, units: Units): string {
  const size = Math.abs(m);
  const step = smallStep(units);
  if (size > 0 && size < step / 2) return `under ${formatSmall(step, units)}`;
  return formatSmall(size, units);
}

/** A half-width of doubt: at least one step, for a doubt of nothing is never true. */
function doubt(m: number, units: Units): string {
  return formatSmall(Math.max(m, smallStep(units)), units);
}

/**
 * A lean is told over a metre, over a four-foot level or, in decimal feet, over ten feet (common practice). It has to be told
 * finely enough that what is allowed can be told from what is too much: 1/4″ in 10′ is 1/10″ in 4′, and in sixteenths 1/8″.
 */
function leanScale(units: Units): { per: number; shown: Units; over: string } {
  if (isMetric(units)) return { per: 1, shown: 'mm', over: 'in 1 m' };
  if (units === 'ft') return { per: 10 * METRES_PER_FOOT, shown: 'ft', over: 'in 10 ft' };
  return { per: 4 * METRES_PER_FOOT, shown: 'ft-in-32', over: 'in 4′' };
}

/** A lean in metres per metre, as a level shows it: `1/4″ in 4′`, `5 mm in 1 m`. */
export function leanWords(perMetre: number, units: Units): string {
  const { per, shown, over } = leanScale(units);
  return `${small(perMetre * per, shown)} ${over}`;
}

/** Text for a table cell: `out, 5/8″ ± 1/8″`. */
export function cellWords(verdict: Verdict, error: number, uncertainty: number, units: Units): string {
  return `${verdict}, ${small(error, units)} ± ${doubt(uncertainty, units)}`;
}

/** As `cellWords`, for leans: `in, 1/16″ ± 1/32″ in 4′`. */
export function leanCellWords(verdict: Verdict, lean: number, uncertainty: number, units: Units): string {
  const { per, shown, over } = leanScale(units);
  return `${cellWords(verdict, lean * per, uncertainty * per, shown)} ${over}`;
}

/** A part under three tenths of the other (17°) is left unsaid: nobody pushes a post that finely. */
const MINOR_PART = 0.3;
/** Nearer the centre than this, "toward the centre" has no meaning: 100 mm. */
const AT_CENTRE = 0.1;

/**
 * A small move on the site in words that need no compass: `5/8″ toward the pier and 1/4″ clockwise seen from above`,
 * `12 mm toward the front`.
 *
 * @param at where the thing stands, site frame
 * @param move metres, site frame; not nil
 * @param how stands before each way: `too far` tells a fault from an order
 */
export function moveWords(at: SitePoint, move: Vec, ground: Ground, how?: 'too far'): string {
  const [a, b] = parts(at, move, ground);
  const main = Math.abs(a.size) >= Math.abs(b.size) ? a : b;
  const minor = main === a ? b : a;
  const step = smallStep(ground.units);
  const unsaid = Math.max(MINOR_PART * Math.abs(main.size), step / 2);
  const say = (size: number, part: Part) =>
    `${small(size, ground.units)} ${how === undefined ? '' : `${how} `}${wayOf(part)}`;
  if (Math.abs(minor.size) < unsaid) return say(length(move), main);
  return [main, minor].map((part) => say(part.size, part)).join(' and ');
}

/** Only the way of a move, by its greater part: `toward the pier`. */
export function wayWords(at: SitePoint, move: Vec, ground: Ground): string {
  const [a, b] = parts(at, move, ground);
  return wayOf(Math.abs(a.size) >= Math.abs(b.size) ? a : b);
}

interface Part {
  readonly size: number;
  readonly more: string;
  readonly less: string;
}

const wayOf = (part: Part): string => (part.size >= 0 ? part.more : part.less);

function parts(at: SitePoint, move: Vec, ground: Ground): [Part, Part] {
  const fromCentre = subtract(at, ground.centre);
  const away = length(fromCentre);
  if (ground.around === null || away < AT_CENTRE) return gridParts(move, ground.front);
  const out = scale(fromCentre, 1 / away);
  return [
    { size: dot(move, out), more: `away from the ${ground.around}`, less: `toward the ${ground.around}` },
    { size: cross(out, move), more: 'anticlockwise seen from above', less: 'clockwise seen from above' },
  ];
}

function gridParts(move: Vec, front: Vec): [Part, Part] {
  return [
    { size: dot(move, front), more: 'toward the front', less: 'toward the back' },
    {
      size: cross(front, move),
      more: 'to the left as you face the front',
      less: 'to the right as you face the front',
    },
  ];
}

/** `post 4`, `posts 4 and 5`, `posts 4, 5 and 6`. */
export function listWords(items: readonly string[], last = 'and'): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`;
}

export const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
