import { ofKind } from '../job/log.ts';
import { heightPointName, thingName } from '../job/words.ts';
import type { LevelLoop } from '../measure/misclosure.ts';
import type { Collimation } from '../measure/two-peg.ts';
import { isMetric, METRES_PER_FOOT, type Units } from '../units/index.ts';
import { pointOfKey } from './height-words.ts';
import { agreedTops } from './tops.ts';
import type { Finding, HoleAssessment } from './types.ts';
import { type JobView, postOf } from './view.ts';
import { listWords, small } from './words.ts';

/** Trouble with the levels that no single top owns, but for readings believed wrong. */
export function heightFindings(view: JobView, best: JobView, holes: readonly HoleAssessment[]): Finding[] {
  return [
    ...misclosed(view),
    ...levelTests(view),
    ...adrift(view),
    ...allOff(best, holes),
    ...unlevel(holes),
  ];
}

const found = (text: string, entries: readonly string[] = []): Finding => ({
  code: 'heights',
  text,
  entries,
});

/** The worst loop that does not close, unless one reading of it is known to be the cause. */
function misclosed(view: JobView): Finding[] {
  const told = view.measured.suspicions.flatMap(({ entries }) => (entries.length === 1 ? entries : []));
  const [worst] = view.measured.levelling.loops
    .filter(({ misclosure, allowance }) => Math.abs(misclosure) > allowance)
    .filter(({ entries }) => !told.some((id) => entries.includes(id)))
    .sort((p, q) => Math.abs(q.misclosure) / q.allowance - Math.abs(p.misclosure) / p.allowance);
  if (!worst) return [];
  const text = `The levels do not close: ${loopWords(view, worst)}. One reading on that way is wrong, or a point sank or was moved: go back along it, last reading first, and read each point again.`;
  return [found(text, worst.entries)];
}

/** `from the benchmark over turning point 1 back to the benchmark, 2 set-ups: 12 mm, and 7 mm is allowed`. */
export function loopWords(view: JobView, { points, stations, misclosure, allowance }: LevelLoop): string {
  const { units } = view.plan;
  const name = (key: string) => heightPointName(pointOfKey(key), view.plan);
  const over = points.slice(1, -1).map(name);
  const way = `from ${name(points[0]!)}${over.length > 0 ? ` over ${listWords(over)}` : ''} back to it, ${stations} set-ups`;
  return `${way}: ${small(misclosure, units)}, and ${small(allowance, units)} is allowed`;
}

/** From 5 mm in 50 m builders have a level adjusted: TAFE NSW, practical projects on surveying and setting out. */
const ADJUST_FROM = 0.005 / 50;

function levelTests(view: JobView): Finding[] {
  const tests = view.measured.levelling.collimations;
  const useless = ofKind(view.entries, 'two-peg').filter(
    ({ id }) => !tests.some(({ entry }) => entry === id),
  );
  const last = tests.at(-1);
  return [
    ...useless.map(({ id }) =>
      found(
        'The two-peg test tells nothing: at its second set-up the level stood as far from one peg as from the other. Take it again from near one peg.',
        [id],
      ),
    ),
    ...(last && wantsAdjusting(last) ? [found(offWords(last, view.plan.units), [last.entry])] : []),
    ...(last?.says === 'unbelievable'
      ? [
          found(
            `By the two-peg test the level would be ${atSight(last.slope, view.plan.units)}, and no level is: one of its four readings is wrong. It is not used; take it again.`,
            [last.entry],
          ),
        ]
      : []),
  ];
}

const wantsAdjusting = ({ slope, says }: Collimation): boolean =>
  says === 'off' && Math.abs(slope) >= ADJUST_FROM;

function offWords({ slope }: Collimation, units: Units): string {
  return `The level looks ${slope > 0 ? 'up' : 'down'}, by ${atSight(slope, units)}: have it adjusted, and test it again. Until then stand it as far from one rod as from the other, or enter how far off the rod is, and the reading is put right.`;
}

/** An error of the line of sight is told over a usual sight, finely enough to be seen: ten metres, or thirty feet. */
function sightOf(units: Units): { readonly metres: number; readonly shown: Units; readonly words: string } {
  if (isMetric(units)) return { metres: 10, shown: 'mm', words: '10 m' };
  const metres = 30 * METRES_PER_FOOT;
  return units === 'ft'
    ? { metres, shown: 'ft', words: '30 ft' }
    : { metres, shown: 'ft-in-32', words: '30′' };
}

/** `6 mm in 10 m`. */
export function atSight(slope: number, units: Units): string {
  const { metres, shown, words } = sightOf(units);
  return `${small(slope * metres, shown)} in ${words}`;
}

/** Set-ups from which something was read, and that hang on no benchmark. */
function adrift(view: JobView): Finding[] {
  const entries = view.measured.levelling.adrift.flatMap((id) => view.levelled.get(id) ?? []);
  const bySetup = new Map<string, string[]>();
  for (const { id, body } of entries) {
    const name = body.kind === 'rod' ? `set-up ${body.setup}` : 'a water level or a laser';
    bySetup.set(name, [...(bySetup.get(name) ?? []), id]);
  }
  return [...bySetup].map(([name, ids]) =>
    found(
      `What was read from ${name} hangs on no benchmark, and says nothing of any height yet: read from there also the benchmark, or a point whose height is known.`,
      ids,
    ),
  );
}

/** Tops that are level with one another and all off by the same: the benchmark is to be doubted before any of them. */
function allOff(view: JobView, holes: readonly HoleAssessment[]): Finding[] {
  const agreed = agreedTops(view);
  const { units, tolerances } = view.plan;
  if (!agreed || Math.abs(agreed.above) <= tolerances.level.m) return [];
  const out = holes.filter(({ hole, set }) => agreed.holes.includes(hole) && set.level.verdict === 'out');
  if (out.length < agreed.holes.length) return [];
  const way = agreed.above > 0 ? 'high' : 'low';
  return [
    found(
      `The tops of ${holeNames(view, agreed.holes)} are level with one another, and all of them stand ${small(agreed.above, units)} too ${way}: see that the benchmark is the one the plan means and was read right, before any of them is cut or raised.`,
    ),
  ];
}

/** Tops that the benchmark has in, and that are not level with the others: nothing else says so. */
function unlevel(holes: readonly HoleAssessment[]): Finding[] {
  return holes
    .filter(({ set }) => set.tops.verdict === 'out' && set.level.verdict === 'in')
    .map(({ set }) =>
      found(`${set.tops.why} Against the benchmark it is in: decide whether the frame can take it up.`),
    );
}

const holeNames = (view: JobView, holes: readonly string[]): string =>
  listWords(holes.map((hole) => thingName(postOf(hole), view.plan)));
