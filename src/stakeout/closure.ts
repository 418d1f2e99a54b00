import type { Instruments } from '../job/plan-schema.ts';
import { slips } from '../measure/index.ts';
import { fiveTapes, foundBy, type LaidOnPegs, type LaidOnTwo, tapeSigma } from '../plan/index.ts';
import { formatLength, formatSmall, smallStep, type Units } from '../units/index.ts';

export interface Closure {
  /** The five tapes and the plan agree, as far as such tapes tell. */
  readonly closes: boolean;
  /** Whole sentences: what the stakes are apart, what the plan has, and what to do where these differ. */
  readonly text: string;
}

/** How well five tapes to two stakes close on the plan, in words; where they do not, the tape that a usual slip would explain. */
export function closureOf(laid: LaidOnPegs, on: LaidOnTwo, instruments: Instruments, units: Units): Closure {
  const [one, other] = laid.pegs.map(({ hole }) => hole);
  const misfit = on.found - on.planned;
  const apart = `By these tapes stakes ${one} and ${other} are ${formatLength(on.found, units)} apart, and the plan has ${formatLength(on.planned, units)}`;
  const small = smallWords(misfit, units);
  if (Math.abs(misfit) <= on.allowed)
    return {
      closes: true,
      text: `${apart}: ${small === null ? 'it closes' : `${small}, no more than such tapes may be off; it closes`}.`,
    };
  const slip = slipThatCloses(laid, on, instruments, units);
  const cure =
    slip === ''
      ? 'Pull all five again. If they bear it out, the stakes do not stand where these holes are to be'
      : `${slip} Pull that again. If it is borne out, the stakes do not stand where these holes are to be`;
  const half = formatSmall(Math.abs(misfit) / 2, units);
  return {
    closes: false,
    text: `${apart}: ${small ?? formatSmall(0, units)}. It does not close. ${cure}: each will be told as ${half} off its mark.`,
  };
}

/** `12 mm more`; null for what no step of the units shows. */
function smallWords(misfit: number, units: Units): string | null {
  if (Math.abs(misfit) < smallStep(units) / 2) return null;
  return `${formatSmall(Math.abs(misfit), units)} ${misfit > 0 ? 'more' : 'less'}`;
}

/** The tape that would close, had it been read without a slip that people make; empty where none would. */
function slipThatCloses(
  laid: LaidOnPegs,
  { planned }: LaidOnTwo,
  instruments: Instruments,
  units: Units,
): string {
  const [p, q] = laid.pegs.map(({ hole }) => `stake ${hole}`);
  const names = ['A to B', `A to ${p}`, `B to ${p}`, `A to ${q}`, `B to ${q}`];
  const tapes = fiveTapes(laid);
  for (const [i, tape] of tapes.entries()) {
    const closing = readingThatCloses(laid, i, planned);
    if (closing === null) continue;
    const sigma = SPREAD * tapeSigma(tape.m, instruments);
    const [slip] = slips({ reading: tape.m, expected: closing, sigma, units, typed: tape.typed });
    if (slip) return `It would if ${names[i]} were ${formatLength(closing, units)}. ${slip.text}`;
  }
  return '';
}

/** Five tapes are off together, not one: what would close is known so many times as badly as one reading. */
const SPREAD = 3;

const ROUNDS = 12;
/** Found to a tenth of a millimetre, which no tape shows; and farther from what was typed than this no slip leads, metres. */
const FOUND = 1e-4;
const FAR = 1.5;
const FIRST_STEP = 0.01;

/** What one of the five would have to read for the two stakes to be so far apart (secant method); null where nothing near does. */
function readingThatCloses(laid: LaidOnPegs, i: number, planned: number): number | null {
  const tapes = fiveTapes(laid).map(({ m }) => m);
  const off = (m: number) => foundBy(laid, tapes.with(i, m)) - planned;
  let [before, at] = [tapes[i]!, tapes[i]! + FIRST_STEP];
  for (let round = 0; round < ROUNDS; round++) {
    const [was, is] = [off(before), off(at)];
    if (Number.isNaN(is) || is === was) return null;
    if (Math.abs(is) < FOUND) return Math.abs(at - tapes[i]!) <= FAR ? at : null;
    [before, at] = [at, at - (is * (at - before)) / (is - was)];
  }
  return null;
}
