import { frameOutline } from '../../build/frame-outline.ts';
import { distance, type Vec } from '../../geometry/point.ts';
import type { Situation } from '../../judge/situation.ts';
import { type JobView, pointOf, stakeOf, viewOf } from '../../judge/view.ts';
import { listWords, moveWords, small } from '../../judge/words.ts';
import { readingOn } from '../../measure/index.ts';
import { tapeSigma } from '../../plan/index.ts';
import { rightTriangle } from '../../stakeout/right-triangle.ts';
import { diagonalsOf, type SquareUp, squareUp } from '../../stakeout/square-up.ts';
import { formatLength } from '../../units/index.ts';

/** Two held stakes share what they are off between them: three sigmas of a tape, which luck seldom makes, are half of it each. */
const TAPES_TELL = 1.5;

/**
 * How square the outer stakes of rows and columns stand, what would square them with the least moving, and the largest 3-4-5
 * that fits. Whole sentences; none of another shape, or before the plan lies on the site.
 */
export function squareWords(situation: Situation): string[] {
  const view = viewOf(situation);
  const labels = view && cornersOf(view);
  if (!view || !labels) return [];
  const drawn = labels.map((label) => view.sited.get(label)!.site);
  const now = labels.flatMap((label) => pointOf(view, stakeOf(label))?.fix?.place ?? []);
  const standing =
    now.length < labels.length
      ? [`Whether they are square is told here once stakes ${listWords(labels)} are measured.`]
      : standingWords(view, labels, now, drawn);
  return [...standing, ...triangleWords(view, labels, drawn)];
}

/** Four holes in order round: the outer ones of rows and columns, or a ring of four. */
function cornersOf({ plan: { shape }, laid }: JobView): readonly string[] | null {
  if (!laid) return null;
  if (shape.kind === 'ring' && shape.count === CORNERS)
    return laid.holes.slice(0, CORNERS).map(({ label }) => label);
  return frameOutline(shape, laid.holes).rectangle;
}

const CORNERS = 4;

function standingWords(
  view: JobView,
  labels: readonly string[],
  now: readonly Vec[],
  drawn: readonly Vec[],
): string[] {
  const within = TAPES_TELL * tapeSigma(diagonalsOf(drawn)[0], view.plan.instruments);
  const found = squareUp({ now, drawn }, within);
  const [first, second] = diagonalsOf(now);
  const apart = small(Math.abs(first - second), view.plan.units);
  const told = `Diagonals: ${labels[0]} to ${labels[2]} is ${tape(view, first)}, ${labels[1]} to ${labels[3]} is ${tape(view, second)}, ${apart} apart.`;
  if (found.moves.length === 0)
    return [`${told} The four are square, and the sides are as drawn, as near as these tapes tell.`];
  const [one, other] = diagonalsOf(drawn);
  const right = `Then both diagonals read ${tape(view, (one + other) / 2)} and the sides ${tape(view, distance(drawn[0]!, drawn[1]!))} and ${tape(view, distance(drawn[1]!, drawn[2]!))}.`;
  const rest = view.sited.size > CORNERS ? [REST] : [];
  return [`${told} ${mendWords(view, labels, now, found)} ${right}`, ...rest, OWN_MARK];
}

const REST = 'Then bring the stakes between them onto strings from one to the next.';
const OWN_MARK =
  'That squares them among themselves. To bring each to its own mark on the drawing instead, follow its own card.';

function mendWords(
  view: JobView,
  labels: readonly string[],
  now: readonly Vec[],
  { held, moves }: SquareUp,
): string {
  const orders = new Map<string, string[]>();
  for (const { corner, by } of moves) {
    const way = moveWords(now[corner]!, by, view.ground);
    orders.set(way, [...(orders.get(way) ?? []), labels[corner]!]);
  }
  // `by`, or stake 4 and a fraction read as four and a fraction.
  const told = [...orders].map(([way, which]) =>
    which.length === 1 ? `stake ${which[0]} by ${way}` : `stakes ${listWords(which)}, each by ${way}`,
  );
  const hold =
    held.length === 0
      ? 'no two are the drawn length apart, so move'
      : `hold stakes ${listWords(held.map((i) => labels[i]!))}, and move`;
  return `The least that squares them: ${hold} ${told.join('; ')}.`;
}

function triangleWords(view: JobView, labels: readonly string[], drawn: readonly Vec[]): string[] {
  const { units, instruments } = view.plan;
  const sides = [distance(drawn[0]!, drawn[1]!), distance(drawn[1]!, drawn[2]!)] as const;
  const found = rightTriangle(sides, instruments.tapeLength.m, units);
  if (!found) return [];
  const [along, down] = found.legs.map((m) => tape(view, m));
  return [
    `A right angle at stake ${labels[1]} by three tapes, the largest that fits: ${along} toward stake ${labels[0]}, ${down} toward stake ${labels[2]}, ${tape(view, found.across)} across. The diagonals of the whole prove more.`,
  ];
}

/** As the tape in hand reads it. */
const tape = ({ inHand, plan }: JobView, m: number): string => formatLength(readingOn(inHand, m), plan.units);
