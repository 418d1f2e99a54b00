import type { Hold, PullEnd } from '../job/entry-schema.ts';
import { roundedLength } from '../job/length.ts';
import { otherSuspectWords } from '../judge/other-suspect.ts';
import type { Situation } from '../judge/situation.ts';
import { viewOf } from '../judge/view.ts';
import {
  DRIVEN_WITHIN_M,
  halfSection,
  isBeyondBelief,
  type Prediction,
  predict,
  type Reading,
  readingOn,
  slips,
  type TapeInHand,
  tapeDoubt,
  tapeSigma,
} from '../measure/index.ts';
import { differenceInWords } from '../ui/index.ts';
import { formatLength, type Units } from '../units/index.ts';
import type { PullToRead } from './pull-flow.tsx';
import { alongSlope, riseBetween } from './rise.ts';

/**
 * Asks back when a reading is beyond belief, and names the slip that would explain it best.
 *
 * @param m the reading, metres
 * @param how the tape was held
 * @returns one question; null when the reading is believable, or when nothing is known to hold it against
 */
export function doubtOf(pull: PullToRead, m: number, how: Hold['how'], situation: Situation): string | null {
  const { plan } = situation;
  const prediction = plan && predictionOf(pull, how, situation);
  if (!plan || !prediction || (how === 'level' && readsAsPlanned(pull, m, situation))) return null;
  const rise = riseBetween(situation, pull.from, pull.to);
  const { inHand } = situation;
  const about: Reading = {
    reading: m,
    expected: readingOn(inHand, prediction.reading),
    sigma: Math.hypot(prediction.sigma, doubtOfTape(inHand, prediction.reading)),
    ...(inHand && inHand.tape.zero.m !== 0 ? { hook: Math.abs(inHand.tape.zero.m) } : {}),
    units: plan.units,
    halfSections: [pull.from, pull.to].flatMap((end) => halfSectionAt(end, situation)),
    ...(how === 'level' && rise !== null ? { rise } : {}),
  };
  return isBeyondBelief(about) ? doubtWords(about, otherSuspect(pull, situation)) : null;
}

/** What the reading is held against may itself be wrong. */
function otherSuspect({ from, to }: PullToRead, situation: Situation): string {
  const view = viewOf(situation);
  return view ? otherSuspectWords(view, from.thing, to.thing) : '';
}

/** What reads as planned needs no question, even where an earlier misreading has moved what was to be expected. */
function readsAsPlanned({ expected: length }: PullToRead, m: number, { plan, inHand }: Situation): boolean {
  if (length === undefined || !plan) return false;
  const sigma = Math.hypot(tapeSigma(m, plan.instruments), doubtOfTape(inHand, length));
  return !isBeyondBelief({ reading: m, expected: readingOn(inHand, length), sigma });
}

const doubtOfTape = (inHand: TapeInHand | null, length: number): number =>
  inHand ? tapeDoubt(inHand, length) : 0;

/** `This is 1′ 0″ more than expected (18′ 6 5/16″). One foot too much: is it 18′ 6 5/16″? Read it again, or …`. `orElse` is what else may be wrong. */
export function doubtWords(about: Reading, orElse = ''): string | null {
  if (!isBeyondBelief(about)) return null;
  const { reading, expected, units } = about;
  const [slip] = slips(about);
  const difference = `This is ${differenceInWords(reading - expected, units)} than expected (${formatLength(expected, units)}).`;
  const causes = [...(slip ? [slip.text] : []), ...(orElse === '' ? [] : [orElse])];
  return [difference, ...causes, 'Read it again, or keep it as read.'].join(' ');
}

/** From what was measured so far; of a post that was never pulled to, from the plan. */
function predictionOf(pull: PullToRead, how: Hold['how'], situation: Situation): Prediction | null {
  const { plan, laid, measured } = situation;
  if (!plan) return null;
  const rise = how === 'slope' ? riseBetween(situation, pull.from, pull.to) : 0;
  const hold: Hold =
    how === 'level' ? { how } : rise === null ? { how } : { how, rise: roundedLength(rise, RISE_UNITS) };
  const found = measured && laid && predict(pull.from, pull.to, hold, measured, laid.holes, plan.instruments);
  if (found) return found;
  if (pull.expected === undefined || rise === null) return null;
  const reading = alongSlope(pull.expected, rise);
  return { reading, sigma: Math.hypot(DRIVEN_WITHIN_M, tapeSigma(reading, plan.instruments)) };
}

/** A height difference is not typed by anyone here; a millimetre is finer than any rod. */
const RISE_UNITS: Units = 'mm';

/** Centre to what the tape touches, for who pulls to the centre where a face was meant. */
function halfSectionAt({ thing, touch }: PullEnd, { laid }: Situation): number[] {
  const hole = thing.kind === 'post' ? laid?.holes.find(({ label }) => label === thing.hole) : undefined;
  if (!hole || (touch.at !== 'face' && touch.at !== 'near-side')) return [];
  return [halfSection(touch.at === 'face' ? touch.side : 'front', hole)];
}
