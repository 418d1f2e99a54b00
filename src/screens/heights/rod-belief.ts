import type { EntryOf, HeightPoint } from '../../job/entry-schema.ts';
import { ofKind } from '../../job/log.ts';
import { heightPointName, thingName } from '../../job/words.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { DRIVEN_WITHIN_M, heightKey, isBeyondBelief, rodSlips } from '../../measure/index.ts';
import { differenceInWords } from '../../ui/index.ts';
import { formatLength } from '../../units/index.ts';

/** What is about to be read with the rod. */
export interface RodSight {
  readonly on: HeightPoint;
  /** The level's set-up. */
  readonly setup: string;
  /** Held upside down against a point above the level. */
  readonly inverted: boolean;
}

interface Expected {
  /** Metres, as the rod would read. */
  readonly reading: number;
  /** One sigma of a reading less this. */
  readonly sigma: number;
  /** What it is expected by, after `more than`. */
  readonly by: string;
}

/** Line of sight above the benchmark from a set-up, metres; null while nothing ties it to the benchmark. */
export function sightLine(view: JobView, setup: string): number | null {
  return view.measured.levelling.setups.find(({ key }) => key === setup)?.height ?? null;
}

/**
 * What the rod reads on a top that is at its height; null before the set-up hangs on the benchmark, and from a level that
 * looks below that height.
 */
export function rodAtTarget(view: JobView, hole: string, setup: string): number | null {
  const below = belowLine(view, hole, setup);
  return below !== null && below > 0 ? below : null;
}

/** Whether the level stands too low to read a rod that stands on a top at its height. */
export function looksBelow(view: JobView, { on, setup, inverted }: RodSight): boolean {
  const below = on.point === 'top' && !inverted ? belowLine(view, on.hole, setup) : null;
  return below !== null && below <= 0;
}

/** How far a top at its height is below the line of sight, metres; null before the set-up hangs on the benchmark. */
function belowLine(view: JobView, hole: string, setup: string): number | null {
  const line = sightLine(view, setup);
  const target = view.sited.get(hole)?.top;
  return line === null || target === undefined ? null : line - target;
}

/**
 * Asks back where a rod reading is beyond belief, and names the slip that would explain it best.
 *
 * @param m the reading, metres
 * @returns one question; null when it is believable, or when nothing is known to hold it against
 */
export function rodDoubt(view: JobView, sight: RodSight, m: number): string | null {
  const expected = expectedReading(view, sight);
  if (!expected) return misplaced(view, sight, m);
  if (!isBeyondBelief({ reading: m, expected: expected.reading, sigma: expected.sigma })) return null;
  const { units, instruments } = view.plan;
  if (expected.reading <= 0)
    return `By what is known the line of sight passes ${formatLength(-expected.reading, units)} ${sight.inverted ? 'above' : 'below'} this point, where the rod cannot read it so. ${sight.inverted ? 'Hold the rod upright' : 'Hold the rod upside down, or raise the level'}; or keep it as read.`;
  const [slip] = rodSlips({
    reading: m,
    expected: expected.reading,
    sigma: expected.sigma,
    units,
    sightLine: sightLine(view, sight.setup) ?? expected.reading,
    inverted: sight.inverted,
    ...(instruments.rodLength ? { rodLength: instruments.rodLength.m } : {}),
  });
  const difference = `This is ${differenceInWords(m - expected.reading, units)} than ${expected.by} (${formatLength(expected.reading, units)}).`;
  return [difference, ...(slip ? [slip.text] : []), 'Read it again, or keep it as read.'].join(' ');
}

/**
 * By earlier readings of the same point from the same set-up; else by its height, read from elsewhere; else, of a top, by
 * the plan, which a post seldom misses by more than a stake does.
 */
function expectedReading(view: JobView, sight: RodSight): Expected | null {
  const rod = view.plan.instruments.rodError.m;
  const earlier = earlierReadings(view, sight);
  if (earlier.length > 0) {
    const mean = earlier.reduce((sum, each) => sum + each, 0) / earlier.length;
    return { reading: mean, sigma: rod * Math.sqrt(1 + 1 / earlier.length), by: 'before' };
  }
  const { on, setup, inverted } = sight;
  const line = view.measured.levelling.setups.find(({ key }) => key === setup);
  if (!line) return null;
  const way = inverted ? -1 : 1;
  const known = view.heights.get(heightKey(on));
  if (known)
    return {
      reading: way * (line.height - known.height),
      sigma: Math.hypot(line.sigma, known.sigma, rod),
      by: 'its height from other readings comes to',
    };
  const target = on.point === 'top' ? belowLine(view, on.hole, setup) : null;
  return target === null ? null : { reading: way * target, sigma: DRIVEN_WITHIN_M, by: 'expected' };
}

/**
 * Of a point whose height nothing foretells: ground above where its post's top is to be, or the bottom of a hole above
 * its ground, is a height told the wrong way.
 */
function misplaced(view: JobView, { on, setup, inverted }: RodSight, m: number): string | null {
  const line = sightLine(view, setup);
  if (line === null || (on.point !== 'ground' && on.point !== 'bottom')) return null;
  const height = inverted ? line + m : line - m;
  const ground = on.point === 'bottom' ? view.heights.get(`ground:${on.hole}`)?.height : undefined;
  const ceiling = ground ?? view.sited.get(on.hole)?.top;
  if (ceiling === undefined || height <= ceiling) return null;
  const post = thingName(postOf(on.hole), view.plan);
  const what = ground === undefined ? `where the top of ${post} is to be` : 'the ground beside it';
  const above = formatLength(height - ceiling, view.plan.units);
  return `This puts ${heightPointName(on, view.plan)} ${above} above ${what}, and a larger reading is a lower point. Read it again, or keep it as read.`;
}

/** Of what stands there now: a top or a stake that was moved since is another point. */
function earlierReadings(view: JobView, { on, setup, inverted }: RodSight): number[] {
  const key = heightKey(on);
  if (on.point !== 'benchmark' && !view.heights.has(key)) return [];
  return rodsSince(view, on)
    .filter(({ body }) => body.setup === setup && heightKey(body.on) === key)
    .filter(({ body }) => (body.inverted ?? false) === inverted)
    .map(({ body }) => body.reading.m);
}

function rodsSince({ book, entries }: JobView, on: HeightPoint): readonly EntryOf<'rod'>[] {
  if (on.point === 'top') return book.tops(on.hole);
  if (on.point !== 'stake') return ofKind(entries, 'rod');
  return ofKind(entries.slice(book.standAt({ kind: 'stake', label: on.label }) + 1), 'rod');
}
