import type { Entry } from '../../job/entry-schema.ts';
import { lengthWords } from '../../job/length.ts';
import { standing } from '../../job/log.ts';
import type { Situation } from '../../judge/situation.ts';
import type { Assessment } from '../../judge/types.ts';
import { formatLength, formatSmall } from '../../units/index.ts';
import { leanBase } from '../plan/lean-base.ts';

/** How the numbers of the record came about, in whole sentences: method first, then what this job had of it. */
export function computedWords(
  log: readonly Entry[],
  { plan, measured }: Pick<Situation, 'plan' | 'measured'>,
  assessment: Assessment,
): string[] {
  return [
    'Places come from all tape pulls that stand, adjusted together by least squares, each weighted by its tape’s error; A is held, and B gives the direction.',
    'After ± stands the half-width that holds the truth 19 times in 20. A quantity is in when the chance that it is within tolerance is 95 % or more, out at 5 % or less, and unsure between; unchecked means that no spare reading guards it.',
    'Depths count from the downhill lip of the hole, heights from the benchmark, leans over two faces side by side.',
    ...(plan ? [toleranceWords(plan)] : []),
    ...(plan && measured ? [baselineWords(plan.units, assessment)] : []),
    ...(assessment.pulls.length > 0 ? [testWords(assessment)] : []),
    `${standing(log).length} of ${log.length} entries of the field book stand. Judged by Swingtape’s rules, version ${assessment.version}.`,
  ];
}

function toleranceWords({
  tolerances: { position, spacing, plumb, level },
  rules: { frostDepth, gravel, embedment },
  units,
}: NonNullable<Situation['plan']>): string {
  const base = leanBase(units);
  const lean = `${formatSmall(plumb * base.metres, units)} in ${base.words}`;
  const frost = frostDepth ? `frost depth ${lengthWords(frostDepth)}` : 'frost depth not known';
  return `Allowed: place ${lengthWords(position)}, spacing ${lengthWords(spacing)}, plumb ${lean}, level ${lengthWords(level)}. Rules: ${frost}, gravel ${lengthWords(gravel)}, embedment ${lengthWords(embedment)}.`;
}

function baselineWords(
  units: NonNullable<Situation['plan']>['units'],
  { baseline: { designed, measured } }: Assessment,
): string {
  const was = designed === null ? 'not placed' : formatLength(designed, units);
  const is = measured === null ? 'not pulled' : formatLength(measured, units);
  return `A to B: planned ${was}, measured ${is}.`;
}

function testWords({ pulls, globalTest: { degreesOfFreedom, chance } }: Assessment): string {
  const pulled = `${pulls.length} ${pulls.length === 1 ? 'pull was' : 'pulls were'} used`;
  if (degreesOfFreedom === 0) return `${pulled}, none of them to spare.`;
  const percent = chance < 0.001 ? 'less than 0.1' : (chance * 100).toFixed(chance < 0.1 ? 1 : 0);
  return `${pulled}, ${degreesOfFreedom} of them to spare; errors as large as theirs come by luck alone in ${percent} % of jobs.`;
}
