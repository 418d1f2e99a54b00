import { unit } from '../../../src/geometry/point.ts';
import type { DrawnHole, DrawnPull, HoleState } from '../../../src/ui/index.ts';

/** Ten posts on a ring of 3.6 m with a pier in the middle, by their bearings: post 1 at the back. */
const CENTRE = { x: 3.2, y: 6.4 };
const RADIUS = 3.6;

export const STAKES = { a: { x: 0, y: 0 }, b: { x: 6.1, y: 0 } };

export function ringPlace(n: number) {
  const way = unit(Math.PI / 2 - ((n - 1) * 2 * Math.PI) / 10);
  return { x: CENTRE.x + RADIUS * way.x, y: CENTRE.y + RADIUS * way.y };
}

export function ring(stateOf: (n: number) => HoleState): DrawnHole[] {
  const posts = Array.from({ length: 10 }, (_, i) => ({
    label: String(i + 1),
    place: ringPlace(i + 1),
    state: stateOf(i + 1),
    section: { kind: 'post', width: 0.14, depth: 0.14 },
    facing: Math.PI / 2 - (i * 2 * Math.PI) / 10,
  })) satisfies DrawnHole[];
  const pier: DrawnHole = {
    label: 'P',
    place: CENTRE,
    state: stateOf(0),
    section: { kind: 'pier', diameter: 0.9 },
  };
  return [...posts, pier];
}

export const livePulls = (n: number): DrawnPull[] => [
  { from: STAKES.a, to: ringPlace(n), kind: 'live', words: `from A to stake ${n}` },
  { from: STAKES.b, to: ringPlace(n), kind: 'live', words: `from B to stake ${n}` },
];
