import { heightPointName } from '../../job/words.ts';
import { atSight, loopWords } from '../../judge/height-findings.ts';
import { pointOfKey } from '../../judge/height-words.ts';
import { HALF_WIDTH_95 } from '../../judge/normal.ts';
import type { JobView } from '../../judge/view.ts';
import { capital, small } from '../../judge/words.ts';
import type { Collimation, LevelLoop, MeasuredHeight } from '../../measure/index.ts';
import { formatLength } from '../../units/index.ts';

export interface HeightLine {
  readonly key: string;
  /** `The top of post 3`. */
  readonly name: string;
  /** `2′ 0 1/16″ above the benchmark ± 1/8″`. */
  readonly height: string;
  /** How far it is guarded: `checked to 3/16″`, `unchecked`. */
  readonly guard: string;
}

/** What the last words of a line mean. */
export const GUARD_MEANS =
  'Checked to so much: no single misreading that goes unseen moves the height by more. Unchecked: a misread rod would go unseen.';

/** Every height that is known, but for the benchmark's own. */
export function heightLines(view: JobView): HeightLine[] {
  return view.measured.heights
    .filter(({ key }) => key !== 'benchmark')
    .map((found) => ({
      key: found.key,
      name: capital(heightPointName(pointOfKey(found.key), view.plan)),
      height: heightWords(view, found),
      guard: guardWords(view, found),
    }));
}

function heightWords({ plan: { units } }: JobView, { height, sigma }: MeasuredHeight): string {
  const above = `${formatLength(Math.abs(height), units)} ${height < 0 ? 'below' : 'above'} the benchmark`;
  return `${above} ± ${small(HALF_WIDTH_95 * sigma, units)}`;
}

function guardWords(view: JobView, { unseenShift, unguarded }: MeasuredHeight): string {
  return unguarded.length > 0 ? 'unchecked' : `checked to ${small(unseenShift, view.plan.units)}`;
}

/** What the levels that come back to a point sum to, worst first. */
export function closingWords(view: JobView): string[] {
  const share = ({ misclosure, allowance }: LevelLoop) => Math.abs(misclosure) / allowance;
  return [...view.measured.levelling.loops]
    .sort((p, q) => share(q) - share(p))
    .slice(0, MOST_LOOPS)
    .map((loop) => `${share(loop) > 1 ? 'Does not close' : 'Closes'}: ${loopWords(view, loop)}.`);
}

/** Tops read from two set-ups make a loop each: the worst few say enough. */
const MOST_LOOPS = 3;

/** What the last two-peg test says of the level. */
export function levelTestWords({ plan, measured }: JobView): string {
  const last = measured.levelling.collimations.at(-1);
  return last
    ? testWords(last, plan.units)
    : 'The level itself is not tested: test it before sights are long or unequal.';
}

/** In a sentence or two, whatever the test says. */
export function testWords(test: Collimation, units: JobView['plan']['units']): string {
  const doubt = atSight(HALF_WIDTH_95 * test.sigma, units);
  const way = `${test.slope > 0 ? 'up' : 'down'} by ${atSight(test.slope, units)}, ± ${doubt}`;
  switch (test.says) {
    case 'true':
      return `The level looks true, as far as the test can tell: ± ${doubt}.`;
    case 'off':
      return `The level looks ${way}. Readings with a known distance are put right by it.`;
    case 'unbelievable':
      return `By this the level would look ${way}. No level does: one of the four rod readings is wrong.`;
  }
}
