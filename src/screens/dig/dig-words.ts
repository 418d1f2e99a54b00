import type { OBSTRUCTIONS } from '../../job/entry-schema.ts';
import type { HoleAssessment, Judgement } from '../../judge/types.ts';
import { differenceInWords } from '../../ui/index.ts';
import { formatLength, stepOf, type Units } from '../../units/index.ts';
import type { DigTask } from './dig-step.ts';

export type Obstruction = (typeof OBSTRUCTIONS)[number];

export const OBSTRUCTION_NAMES: Record<Obstruction, string> = {
  none: 'Nothing',
  rock: 'Rock',
  water: 'Water',
  roots: 'Roots',
  soft: 'Soft ground',
  other: 'Other',
};

/** A length rounded up to the units' step: a depth to dig to is never rounded down. */
export function roundedUp(m: number, units: Units): number {
  const step = stepOf(units);
  return Math.ceil(m / step - STEP_SLACK) * step;
}

/** A whole number of steps stays what it is, whatever its last bits say. */
const STEP_SLACK = 1e-6;

/** Deeper than asked by this much is more often a foot misread than a foot too much dug: 250 mm, ten inches. */
const DEEPER_ASKS_M = 0.25;
/** A hole this many times as wide as planned, or the inverse of it, is more often a slip. */
const WIDER_ASKS = 1.6;

/** Asks back where an as-dug depth looks like a slip. Too shallow is no slip: it is what the hole is like. */
export function depthDoubt(m: number, required: number | null, units: Units): string | null {
  if (required === null || m <= required + DEEPER_ASKS_M) return null;
  return `This is ${differenceInWords(m - required, units)} than the depth to dig to, ${formatLength(required, units)}. Read it again, or keep it as read.`;
}

export function widthDoubt(m: number, planned: number, units: Units): string | null {
  if (m <= planned * WIDER_ASKS && m >= planned / WIDER_ASKS) return null;
  return `This is ${differenceInWords(m - planned, units)} than planned (${formatLength(planned, units)}). Read it again, or keep it as read.`;
}

/** What a dug hole is, for a headline; the verdict's word is in it. */
export function dugHeadline(
  hole: string,
  task: Exclude<DigTask, 'gate' | 'dig'>,
  { depth, width, middle }: HoleAssessment['dug'],
): string {
  const guarded = depth.checked && width.checked ? '' : ', unchecked';
  if (task === 'decide') return `Hole ${hole} is unsure: it waits for a decision`;
  if (task === 'unknown') return `Hole ${hole} is unmeasured: the depth it needs is not known`;
  if (task === 'done') return `Hole ${hole} is in: deep and wide enough${guarded}`;
  if (task === 'middle') return `Hole ${hole} is in: deep and wide enough${guarded}. Now its middle`;
  if (task === 'shave') return `Hole ${hole} is too tight. ${middle?.shave?.words ?? ''}`.trim();
  if (task === 'tell') return `Hole ${hole} may be too tight: too close to tell`;
  const short = [...(depth.verdict === 'out' ? ['deep'] : []), ...(width.verdict === 'out' ? ['wide'] : [])];
  if (short.length === 0) return `Hole ${hole} is unsure: too close to tell`;
  return `Hole ${hole} is out: not ${short.join(' and ')} enough yet`;
}

/** What is to be said of a dug hole, worst first, but for what its headline says; empty when nothing is wrong. */
export function dugTrouble(task: DigTask, { depth, width, middle }: HoleAssessment['dug']): string[] {
  const said = task === 'shave' && middle?.shave ? middle.shave.words : '';
  const words = middle && (said === '' ? middle.words : middle.words.replace(said, '').trim());
  return [...[depth, width].filter(notIn).map(({ why }) => why), ...(words ? [words] : [])];
}

const notIn = ({ verdict }: Judgement): boolean => verdict !== 'in';

/** Never waved through: what was met, and who decides. */
export function obstructionWords(hole: string, obstruction: string): string {
  const named = obstruction in OBSTRUCTION_NAMES && obstruction !== 'other';
  const met = named
    ? `${OBSTRUCTION_NAMES[obstruction as Obstruction].toLowerCase()} ${obstruction === 'roots' ? 'were' : 'was'} met`
    : 'something is in the way';
  return `Hole ${hole}: ${met}. Whether the hole will do is a decision by whoever is responsible for the structure: the designer or the building office.`;
}
