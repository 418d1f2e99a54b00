import type { Vec } from '../geometry/point.ts';
import type { Hole, LaidLine } from '../plan/index.ts';
import { formatLength, type Units } from '../units/index.ts';
import { barredBy, wallBetween } from './ground.ts';

interface OnGround {
  readonly a: Vec;
  readonly b: Vec;
  readonly holes: readonly Hole[];
  readonly lines: readonly LaidLine[];
  readonly units: Units;
}

/** What the ground has against A and B: where they cannot stand, and what a house hides from them. */
export function groundObjections({ a, b, holes, lines, units }: OnGround): string[] {
  const open = lines.filter((line) => barredBy(line, a) === 0 && barredBy(line, b) === 0);
  const wall = wallBetween(open, a, b);
  return [
    ...barredWords('A', a, lines, units),
    ...barredWords('B', b, lines, units),
    ...(wall ? [`${wall.name} stands between A and B: put them where each sees the other.`] : []),
    ...hiddenWords('A', a, holes, lines),
    ...hiddenWords('B', b, holes, lines),
  ];
}

/** A stake that stands where it cannot: one sentence for each line that bars it. */
export function barredWords(stake: string, at: Vec, lines: readonly LaidLine[], units: Units): string[] {
  return lines.flatMap((line) => {
    const by = barredBy(line, at);
    if (by === 0) return [];
    const words = formatLength(by, units);
    return line.kind === 'house'
      ? [`${stake} would stand in ${line.name}: move it ${words} or more, to where there is ground.`]
      : [
          `${stake} stands ${words} beyond ${line.name}, where no stake can stand: move it back over that line.`,
        ];
  });
}

/** Holes that a house hides from a stake. One that lies under the house is no fault of the stake. */
export function hiddenWords(
  stake: string,
  at: Vec,
  holes: readonly Hole[],
  lines: readonly LaidLine[],
): string[] {
  return lines.flatMap((line) => {
    const hidden = holes.filter(
      ({ place }) => barredBy(line, place) === 0 && wallBetween([line], at, place) !== undefined,
    );
    const [first, second] = hidden.map(({ label }) => label);
    if (first === undefined || barredBy(line, at) > 0) return [];
    const which =
      second === undefined
        ? `hole ${first}`
        : hidden.length === 2
          ? `holes ${first} and ${second}`
          : `${hidden.length} holes`;
    return [
      `${line.name} stands between ${stake} and ${which}: no tape goes through it; move ${stake} to where it sees them.`,
    ];
  });
}
