import { describe, expect, it } from 'vitest';
import { frameAsBuilt } from '../../src/build/frame.ts';
import { roundDeck } from '../../src/build/round-deck.ts';
import { squareAsBuilt } from '../../src/build/square.ts';
import type { Vec } from '../../src/geometry/point.ts';
import { asDrawn, framePost, rectanglePosts, ringPosts, standing } from '../build/standing.ts';
import { ringPlan, rowsPlan } from '../plan/plans.ts';
import { OCTAGON } from './octagon.ts';

const FOOT = 0.3048;
const INCH = 0.0254;
const DEGREE = Math.PI / 180;

const ringFrame = (count: number, radius: number) => {
  const posts = ringPosts(count, radius);
  return frameAsBuilt(ringPlan({ count }).shape, posts, standing(asDrawn(posts)));
};

/** The saw for a regular figure of n sides is set to 180°/n, as carpenters' mitre tables have it (from memory). */
describe('mitre settings of regular figures', () => {
  it.each([
    [4, 45, 90],
    [5, 36, 108],
    [6, 30, 120],
    [8, 22.5, 135],
    [10, 18, 144],
    [12, 15, 150],
  ])('%i sides: %f°, inside angle %f°', (count, mitre, angle) => {
    for (const corner of ringFrame(count, 3).corners) {
      expect(corner.mitre!.is / DEGREE).toBeCloseTo(mitre, 9);
      expect(corner.angle!.is / DEGREE).toBeCloseTo(angle, 9);
    }
  });
});

describe('chords of the octagon on a circle of radius 1', () => {
  it('every side', () => {
    for (const { centres } of ringFrame(8, 1).sides) expect(centres!.is).toBeCloseTo(OCTAGON.side, 9);
  });

  it('past one post; across, twice the radius', () => {
    const { diagonals } = ringFrame(8, 1);
    const lengths = diagonals.map(({ centres }) => centres!.is.toFixed(9));
    expect(lengths.filter((text) => text === '2.000000000')).toHaveLength(4);
    expect(lengths.filter((text) => text === OCTAGON.overOne.toFixed(9))).toHaveLength(8);
    expect(diagonals).toHaveLength(12);
  });
});

describe('diagonals of rectangles', () => {
  /** The 3-4-5 triangle four times as large (common practice), and 10 × 14 ft: 17.2047 ft, 17′ 2 7/16″. */
  it.each([
    [12, 16, 20],
    [10, 14, 17.2047],
  ])('%i × %i ft: %f ft', (width, depth, diagonal) => {
    const posts = rectanglePosts(width * FOOT, depth * FOOT);
    const shape = rowsPlan({ columns: 2, rows: 2 }).shape;
    const [a, b, d, c] = posts;
    const frame = frameAsBuilt(shape, [a!, b!, c!, d!], standing(asDrawn(posts)));
    expect(frame.diagonals).toHaveLength(2);
    for (const { centres } of frame.diagonals) expect(centres!.is / FOOT).toBeCloseTo(diagonal, 4);
  });

  /** 12 × 16 ft with diagonals half an inch apart: slide the 16-foot side by 5/16″ (derived, not published). */
  it('half an inch of difference in 12 × 16 ft is taken out by sliding the long side 5/16″', () => {
    const [width, depth] = [16 * FOOT, 12 * FOOT];
    const posts = rectanglePosts(width, depth);
    const slid = (5 / 16) * INCH;
    const places = asDrawn(posts);
    const moved = (place: Vec): Vec => ({ x: place.x + slid, y: place.y });
    const square = squareAsBuilt(
      standing({ ...places, 1: moved(places['1']!), 2: moved(places['2']!) }),
      posts,
    )!;
    expect(Math.abs(square.difference.is) / INCH).toBeCloseTo(0.5, 3);
    expect(square.rack.is / INCH).toBeCloseTo(5 / 16, 6);
    expect(square.longer).toEqual(['2', '3']);
  });
});

/**
 * Gander, Golub & Strebel, "Least-squares fitting of circles and ellipses", BIT 34 (1994): six points, geometric fit
 * (from memory; recomputed).
 */
describe('the middle of a round deck', () => {
  const points: readonly (readonly [number, number])[] = [
    [1, 7],
    [2, 6],
    [5, 8],
    [7, 7],
    [9, 5],
    [3, 7],
  ];
  const dots = points.map(([x, y], i) =>
    framePost(String(i + 1), { x, y }, [], { section: { kind: 'pier', diameter: 0 } }),
  );
  const deck = (about: 'nearest' | 'widest', edge: number | null = null) =>
    roundDeck(standing(asDrawn(dots)), {
      ring: dots,
      pier: null,
      middle: { x: 0, y: 0 },
      edge,
      opening: null,
      about,
    })!;

  it('is (4.7398, 2.9835), and the largest distance from it 4.7142 less the smallest residual', () => {
    const { centre, reach } = deck('nearest');
    expect(centre.x).toBeCloseTo(4.739782, 5);
    expect(centre.y).toBeCloseTo(2.983533, 5);
    // Residuals radius less distance: 0.77376, −0.63924, 0.30899, −0.10547, −0.00088, −0.33714.
    expect(reach.is).toBeCloseTo(4.714226 + 0.77376, 3);
  });

  it('for the largest least overhang is the middle of the smallest circle round all', () => {
    const edge = 6;
    const [nearest, widest] = [deck('nearest', edge), deck('widest', edge)];
    expect(widest.smallest!.past.is).toBeGreaterThan(nearest.smallest!.past.is);
    // Points 1 and 5 lie furthest apart, and the others within the circle on them (derived, not published).
    expect(widest.centre).toEqual({ x: 5, y: 6 });
    expect(widest.reach.is).toBeCloseTo(Math.hypot(4, 1), 9);
  });
});
