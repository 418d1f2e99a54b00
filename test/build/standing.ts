import type { FramePost } from '../../src/build/frame.ts';
import type { Vec } from '../../src/geometry/point.ts';
import type { PostsTogether } from '../../src/measure/index.ts';
import type { Section } from '../../src/plan/hole.ts';

const POST: Section = { kind: 'post', width: 0.14, depth: 0.14 };

/** A post drawn at a place, its front face along +y unless turned. */
export const framePost = (
  label: string,
  designed: Vec,
  neighbours: readonly string[],
  more: Partial<FramePost> = {},
): FramePost => ({
  label,
  hole: label,
  designed,
  neighbours,
  section: POST,
  facing: Math.PI / 2,
  height: 0,
  ...more,
});

/** Posts that stand where they stand, each way known to one sigma by itself; those left out are not measured. */
export function standing(places: Readonly<Record<string, Vec>>, sigma = 0): PostsTogether {
  const at = (hole: string) => (Object.hasOwn(places, hole) ? places[hole]! : null);
  return {
    at: ({ hole }) => at(hole),
    variance: (pulls) => {
      const sums = new Map<string, Vec>();
      for (const { spot, by } of pulls) {
        const { x, y } = sums.get(spot.hole) ?? { x: 0, y: 0 };
        sums.set(spot.hole, { x: x + by.x, y: y + by.y });
      }
      return [...sums.values()].reduce((sum, { x, y }) => sum + (x * x + y * y) * sigma * sigma, 0);
    },
  };
}

/** The posts of a ring, clockwise from the front, faces turned outward, and where they were drawn. */
export function ringPosts(count: number, radius: number, section: Section = POST): FramePost[] {
  const label = (i: number) => String(((i + count) % count) + 1);
  return Array.from({ length: count }, (_, i) => {
    const bearing = Math.PI / 2 - (2 * Math.PI * i) / count;
    const designed = { x: radius * Math.cos(bearing), y: radius * Math.sin(bearing) };
    return framePost(label(i), designed, [label(i - 1), label(i + 1)], { section, facing: bearing });
  });
}

/** All of them where they were drawn. */
export const asDrawn = (posts: readonly FramePost[]): Record<string, Vec> =>
  Object.fromEntries(posts.map(({ label, designed }) => [label, designed]));

/** A grid's corner posts: front left, front right, back right, back left, of a width and a depth. */
export const rectanglePosts = (width: number, depth: number): FramePost[] => [
  framePost('1', { x: 0, y: depth }, ['2', '3']),
  framePost('2', { x: width, y: depth }, ['1', '4']),
  framePost('4', { x: width, y: 0 }, ['2', '3']),
  framePost('3', { x: 0, y: 0 }, ['1', '4']),
];
