import { distance } from '../geometry/point.ts';
import { lengthWords } from '../job/length.ts';
import type { Plan, TapeSpec } from '../job/plan-schema.ts';
import { formatLength, formatSmall } from '../units/index.ts';
import { FIELDS } from './fields.ts';
import type { Hole } from './hole.ts';
import { type PlanProblem, warn } from './plan-problem.ts';
import { isTape, tapeSigma } from './tape.ts';

/**
 * A place whose doubt is the same all ways lies within R with 95 % chance when R is 2.4477 sigma: R² = −2 ln 0.05 sigma²,
 * the 95 % point of chi-square with two degrees of freedom.
 */
const SURE_IN_A_DISC = Math.sqrt(-2 * Math.log(0.05));
/** One quantity lies within ±T with 95 % chance when T is 1.96 sigma. */
const SURE_BOTH_WAYS = 1.96;

/**
 * Tolerances that the instruments cannot prove even for a post that stands exactly right, and a tape that does not
 * reach. Two tapes from A and B are taken at their best, crossing square.
 */
export function checkInstruments(plan: Plan, holes: readonly Hole[]): PlanProblem[] {
  const { tolerances, instruments, units } = plan;
  const widest = widestApart(holes);
  const small = (m: number) => formatSmall(m, units);
  const position = SURE_IN_A_DISC * tapeSigma(widest, instruments);
  // The height of a top is the difference of two readings.
  const level = SURE_BOTH_WAYS * Math.SQRT2 * instruments.rodError.m;
  // Among themselves tops share the set-up: against a mean of many it is one reading.
  const tops = SURE_BOTH_WAYS * instruments.rodError.m;
  const plumb = SURE_IN_A_DISC * instruments.plumbError;
  return [
    ...(tolerances.position.m < position
      ? [tooFine(FIELDS.position, small(tolerances.position.m), 'your tape', small(position))]
      : []),
    ...(tolerances.level.m < level
      ? [tooFine(FIELDS.level, small(tolerances.level.m), 'your rod', small(level))]
      : []),
    ...(tolerances.tops && tolerances.tops.m < tops
      ? [tooFine(FIELDS.tops, small(tolerances.tops.m), 'your rod', small(tops))]
      : []),
    ...(tolerances.plumb < plumb
      ? [tooFine(FIELDS.plumb, perMetre(tolerances.plumb), 'your level', perMetre(plumb))]
      : []),
    ...(instruments.tapes ?? []).flatMap((tape) => tapeTrouble(tape)),
    ...(widest > instruments.tapeLength.m
      ? [
          warn(
            FIELDS.tapeLength,
            `the plan is ${formatLength(widest, units)} across, and the tape ${formatLength(instruments.tapeLength.m, units)}; take a longer tape.`,
          ),
        ]
      : []),
  ];
}

/** What an older or a foreign plan may say of a tape, that the screens would refuse. */
function tapeTrouble(tape: TapeSpec): PlanProblem[] {
  const name = `Tape ${tape.label}`;
  if (!isTape(tape))
    return [
      warn(
        name,
        `no tape reads ${lengthWords(tape.nominal)} where there are ${lengthWords(tape.actual)}, with its end ${lengthWords(tape.zero)} off; its pulls are left out until the plan says what is so.`,
      ),
    ];
  const untold = tape.tension === undefined && (tape.stiffness !== undefined || tape.weight !== undefined);
  return untold
    ? [
        warn(
          name,
          'type how hard it is pulled where it is true; without that neither its stretch nor its sag is known.',
        ),
      ]
    : [];
}

function tooFine(field: string, tolerance: string, tool: string, provable: string): PlanProblem {
  return warn(
    field,
    `${tolerance} is finer than ${tool} can prove, so that even a post that stands right will be “unsure”; type ${provable} or more, or read more finely.`,
  );
}

const perMetre = (ratio: number): string => `${(ratio * 1000).toFixed(1)} mm in a metre`;

function widestApart(holes: readonly Hole[]): number {
  return holes.reduce(
    (most, { place }, i) =>
      holes.slice(i + 1).reduce((far, other) => Math.max(far, distance(place, other.place)), most),
    0,
  );
}
