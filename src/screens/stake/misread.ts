import { lengthWords } from '../../job/length.ts';
import { thingName } from '../../job/words.ts';
import type { Situation } from '../../judge/situation.ts';
import type { Finding } from '../../judge/types.ts';
import { CRITICAL, readingOn, slips, tapeOf, tapeSigma } from '../../measure/index.ts';
import { differenceInWords } from '../../ui/index.ts';
import type { PullToRead } from '../pull-flow.tsx';
import { alongSlope, riseBetween } from '../rise.ts';
import type { LoggedPull, Present } from './present.ts';

/** A pull to a stake that looks misread: to be made again, or struck once it was made again and read otherwise. */
export interface Misread {
  readonly entry: LoggedPull;
  readonly pull: PullToRead;
  readonly cure: 'again' | 'strike';
  /** For the card, above the shift. */
  readonly text: string;
}

type Known = Pick<Situation, 'plan' | 'measured'>;

/**
 * The pull, among those of A and B to a stake, that is off by a named slip or is under suspicion; null when there is
 * none, or when it was made again and reads the same, for then it was no slip.
 */
export function misreadOf(
  situation: Known,
  findings: readonly Finding[],
  present: Present,
  pulls: readonly PullToRead[],
): Misread | null {
  const suspects = new Set(findings.flatMap(({ code, entries }) => (code === 'misreading' ? entries : [])));
  for (const pull of pulls) {
    const logged = present.pulls(pull.from.thing, pull.to.thing);
    const slipped = (entry: LoggedPull) => slipOf(situation, pull, entry) !== null;
    const suspected = ({ id }: LoggedPull) => suspects.has(id);
    // A named slip tells which of two readings is the wrong one, even where both are under suspicion.
    const doubted = logged.some(slipped) ? slipped : suspected;
    const entry = logged.find(doubted);
    const others = logged.filter((other) => entry && !agree(situation, pull, other, entry));
    if (!entry || (logged.length > 1 && others.length === 0)) continue;
    return cureOf(situation, pull, entry, { others, trusted: others.findLast((other) => !doubted(other)) });
  }
  return null;
}

interface Others {
  /** Readings of the same pull that disagree with the one in doubt. */
  readonly others: readonly LoggedPull[];
  /** The last of them that nothing speaks against. */
  readonly trusted: LoggedPull | undefined;
}

/** A reading is struck only for another that nothing speaks against. */
function cureOf(situation: Known, pull: PullToRead, entry: LoggedPull, { others, trusted }: Others): Misread {
  const read = `The tape from ${thingName(pull.from.thing)} read ${lengthWords(entry.body.reading)}`;
  const [other] = others;
  const first = trusted ?? other;
  if (!first) {
    const slip = slipOf(situation, pull, entry);
    const looks = slip === null ? 'which looks misread.' : slip;
    return {
      entry,
      pull,
      cure: 'again',
      text: `${read}, ${looks} Pull it again before you shift the stake.`,
    };
  }
  const both = `${read} once and ${lengthWords(first.body.reading)} once`;
  if (!trusted)
    return { entry, pull, cure: 'again', text: `${both}: pull it again, to tell which is the wrong one.` };
  return {
    entry,
    pull,
    cure: 'strike',
    text: `${both}: strike the first of these before you shift the stake.`,
  };
}

/** What a reading is off what it should be, as a slip of the hand or eye: `1′ 0″ more than planned. One foot too much: …` */
function slipOf(situation: Known, pull: PullToRead, { body }: LoggedPull): string | null {
  const expected = expectedOf(situation, pull, body);
  const { plan } = situation;
  if (!plan || expected === null) return null;
  const { m, typed } = body.reading;
  const { units } = plan;
  const [slip] = slips({ reading: m, expected, sigma: tapeSigma(m, plan.instruments), units, typed });
  return slip ? `${differenceInWords(m - expected, units)} than planned. ${slip.text}` : null;
}

/** What the tape should read, held as it was; null where that is not known. Metres. */
function expectedOf(situation: Known, { from, to, expected }: PullToRead, body: LoggedPull['body']) {
  if (expected === undefined) return null;
  const { hold } = body;
  const rise = hold.how === 'level' ? 0 : (hold.rise?.m ?? riseBetween(situation, from, to));
  const hand = situation.plan ? tapeOf(body, situation.plan.instruments) : null;
  return rise === null ? null : readingOn(hand ?? null, alongSlope(expected, rise));
}

/** Within what two readings of one tape may differ by luck. */
function agree(situation: Known, pull: PullToRead, one: LoggedPull, other: LoggedPull): boolean {
  const off = ({ body }: LoggedPull) => body.reading.m - (expectedOf(situation, pull, body) ?? Number.NaN);
  const sigma = situation.plan ? tapeSigma(one.body.reading.m, situation.plan.instruments) : 0;
  return Math.abs(off(one) - off(other)) <= CRITICAL * Math.SQRT2 * sigma;
}
