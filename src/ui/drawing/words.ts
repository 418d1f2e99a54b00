import { dot, subtract, unit } from '../../geometry/point.ts';
import { holeWords } from '../mark-shapes.tsx';
import type { Drawn } from './drawn.ts';
import { turnAsStanding } from './view.ts';

/** The drawing told to someone who cannot see it: what stands where it is, what is being pulled, what is to be pushed. */
export function describeDrawing(
  title: string,
  { holes, stakes, references = [], pulls = [], faces = [], lines = [], front }: Drawn,
  exaggerated: number,
): string {
  const sentences = [`${title}, seen from above.`];
  const places = holes.map(({ place }) => place);
  const turn = stakes ? turnAsStanding(stakes.a, stakes.b, places) : 0;
  if (stakes) {
    const { a, b } = stakes;
    const side = dot(unit(-turn), subtract(b, a)) > 0 ? 'left' : 'right';
    sentences.push(`The line from A to B lies below the holes, A on the ${side}.`);
  }
  if (front !== undefined) sentences.push(`The plan’s front is ${wayOnDrawing(front + turn)}.`);
  if (references.length > 0)
    sentences.push(`Further stakes: ${references.map(({ label }) => label).join(', ')}.`);
  if (lines.length > 0) sentences.push(`Lines on the ground: ${lines.map(({ name }) => name).join(', ')}.`);
  const groups = new Map<string, string[]>();
  for (const hole of holes) {
    const words = holeWords(hole);
    groups.set(words, [...(groups.get(words) ?? []), hole.label]);
  }
  for (const [words, labels] of groups)
    sentences.push(`${labels.length === 1 ? 'Hole' : 'Holes'} ${labels.join(', ')}: ${words}.`);
  const live = pulls.filter((pull) => pull.kind === 'live').map((pull) => pull.words);
  if (live.length > 0) sentences.push(`Being pulled now: ${live.join('; ')}.`);
  const check = pulls.filter((pull) => pull.kind === 'check').map((pull) => pull.words);
  if (check.length > 0) sentences.push(`Check pulls: ${check.join('; ')}.`);
  const strings = pulls.filter((pull) => pull.kind === 'string').map((pull) => pull.words);
  if (strings.length > 0) sentences.push(`Strings: ${strings.join('; ')}.`);
  if (faces.length > 0)
    sentences.push(
      `Touched: ${faces.map(({ hole, name }) => `the ${name} face at hole ${hole}`).join('; ')}.`,
    );
  for (const { nudge } of holes) if (nudge) sentences.push(nudge.words);
  if (exaggerated > 1) sentences.push(`Ellipses are drawn ${exaggerated} times too large.`);
  return sentences.join(' ');
}

const WAYS = [
  'to the right',
  'up and to the right',
  'up',
  'up and to the left',
  'to the left',
  'down and to the left',
  'down',
  'down and to the right',
] as const;

/** @param bearing as drawn, radians anticlockwise from the right */
function wayOnDrawing(bearing: number): string {
  const eighth = Math.round((bearing * WAYS.length) / (2 * Math.PI));
  return WAYS[((eighth % WAYS.length) + WAYS.length) % WAYS.length]!;
}
