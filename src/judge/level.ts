import type { EntryOf } from '../job/entry-schema.ts';
import { thingName } from '../job/words.ts';
import { chanceWithin } from './chance.ts';
import { judged, unmeasured } from './judgement.ts';
import { HALF_WIDTH_95 } from './normal.ts';
import { REPEATS_AGREE } from './plumb-repeats.ts';
import { unseenAllowed } from './position.ts';
import { readingWords } from './reading-words.ts';
import type { Judgement } from './types.ts';
import { type JobView, type Levelled, postOf } from './view.ts';
import { cellWords, small } from './words.ts';

/**
 * The height of a post's top held against its target, two-sided. Checked when no single misreading between the benchmark
 * and the top would go unseen, or move it by more than a place may be moved unseen, and what was read twice agrees: one
 * backsight misread would lift every top alike.
 */
export function judgeLevel(view: JobView, hole: string, target: number): Judgement {
  const tolerance = view.plan.tolerances.level.m;
  const name = thingName(postOf(hole), view.plan);
  const readings = view.book.tops(hole);
  const height = view.heights.get(topKey(hole));
  if (!height) return unmeasured('level', tolerance, missingWords(name, readings.length > 0));
  const error = height.height - target;
  const { units } = view.plan;
  const way = error > 0 ? 'high' : 'low';
  const unguarded = unguardedWords(view, hole, readings);
  const offWords = `The top of ${name} is ${small(error, units)} too ${way}`;
  return judged(
    {
      quantity: 'level',
      chance: chanceWithin(error, height.sigma, tolerance),
      best: () => chanceWithin(0, height.sigma, tolerance),
      error,
      sigma: height.sigma,
      tolerance,
      checked: unguarded === '',
    },
    {
      cell: (verdict, e, u) => cellWords(verdict, e, u, units) + (e === 0 ? '' : ` ${way}`),
      out: () => `${offWords}, and ${small(tolerance, units)} is allowed.`,
      unsure: () =>
        `${offWords}, known to ± ${small(HALF_WIDTH_95 * height.sigma, units)}, and ${small(tolerance, units)} is allowed: it may be in or out. Read the rod on it again.`,
      unchecked: () => unguarded,
    },
  );
}

type Rod = EntryOf<'rod'>;

export const topKey = (hole: string): string => `top:${hole}`;

/** Whether a reading is of the top of what a hole holds. */
export function isOfTop({ body }: Levelled, hole: string): boolean {
  const points = body.kind === 'rod' ? [body.on] : [body.from, body.to];
  return points.some((on) => on.point === 'top' && on.hole === hole);
}

/** Whether a reading is of nothing but tops, grounds and bottoms of single holes: no other height hangs on such a one. */
function isOfAnotherHole({ body }: Levelled, hole: string): boolean {
  return body.kind === 'rod' && 'hole' in body.on && body.on.hole !== hole;
}

function missingWords(name: string, read: boolean): string {
  if (read)
    return `The rod was read on the top of ${name}, but that set-up hangs on no benchmark: read the rod on the benchmark from the same set-up.`;
  return `The top of ${name} is not measured: read the rod on the benchmark, then on the top.`;
}

function unguardedWords(view: JobView, hole: string, tops: readonly Rod[]): string {
  const name = thingName(postOf(hole), view.plan);
  const unguarded = (view.heights.get(topKey(hole))?.unguarded ?? []).flatMap(
    (id) => view.levelled.get(id) ?? [],
  );
  if (unguarded.some((entry) => isOfTop(entry, hole)))
    return `A misread rod would go unseen: read it on the top of ${name} once more.`;
  if (unguarded.some(({ body }) => body.kind === 'rod' && body.on.point === 'benchmark'))
    return 'A misread benchmark would lift every top alike: read the rod on the benchmark once more before the level moves.';
  const [first] = unguarded;
  if (first) return `“${readingWords(view, first)}” would go unseen if it were misread: take it once more.`;
  const unseen = view.heights.get(topKey(hole))?.unseenShift ?? 0;
  if (unseen > unseenAllowed(view.plan.tolerances.level.m))
    return `One misread rod could lift the top of ${name} by ${small(unseen, view.plan.units)} unseen: read it once more, from a set-up nearer to the benchmark.`;
  const suspects = [...view.suspects].flatMap((id) => view.levelled.get(id) ?? []);
  if (suspects.some((entry) => !isOfAnotherHole(entry, hole)))
    return `A rod reading for ${name} looks misread: read it again, and strike the wrong one.`;
  if (!agree(view, tops))
    return `Two rod readings on the top of ${name} do not agree: read it again and strike the wrong one.`;
  const benchmarks = [...new Set(tops.map(({ body }) => body.setup))].flatMap((setup) =>
    view.book.benchmarks(setup),
  );
  if (!agree(view, benchmarks))
    return 'Two rod readings on the benchmark do not agree: read it again and strike the wrong one.';
  return '';
}

/** From the line of sight down; of a rod held upside down, up. */
const heightRead = ({ reading, inverted }: Rod['body']): number => (inverted ? -reading.m : reading.m);

/** Whether readings of one point from one set-up lie as close as two rod readings should. */
function agree(view: JobView, readings: readonly Rod[]): boolean {
  const allowed = REPEATS_AGREE * Math.SQRT2 * view.plan.instruments.rodError.m;
  const bySetup = new Map<string, number[]>();
  for (const { body } of readings)
    bySetup.set(body.setup, [...(bySetup.get(body.setup) ?? []), heightRead(body)]);
  return [...bySetup.values()].every((values) => Math.max(...values) - Math.min(...values) <= allowed);
}
