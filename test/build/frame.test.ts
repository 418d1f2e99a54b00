import { describe, expect, it } from 'vitest';
import { frameAsBuilt } from '../../src/build/frame.ts';
import { roundDeck } from '../../src/build/round-deck.ts';
import { squareAsBuilt } from '../../src/build/square.ts';
import { pointsPlan, ringPlan, rowsPlan } from '../plan/plans.ts';
import { asDrawn, framePost, rectanglePosts, ringPosts, standing } from './standing.ts';

const SIGMA = 0.003;

describe('the sides of a frame', () => {
  it('are as sure as both posts together, along the line between them', () => {
    const posts = ringPosts(8, 3);
    const { sides } = frameAsBuilt(ringPlan().shape, posts, standing(asDrawn(posts), SIGMA));
    expect(sides.map(({ from, to }) => `${from}-${to}`).join(' ')).toBe('1-2 2-3 3-4 4-5 5-6 6-7 7-8 8-1');
    for (const { centres } of sides) expect(centres!.sigma).toBeCloseTo(SIGMA * Math.SQRT2, 6);
  });

  it('between faces leave off what the line of centres runs through each post', () => {
    const [width, depth] = [3, 2];
    const posts = rectanglePosts(width, depth);
    const [a, b, d, c] = posts;
    const { sides } = frameAsBuilt(
      rowsPlan({ columns: 2, rows: 2 }).shape,
      [a!, b!, c!, d!],
      standing(asDrawn(posts)),
    );
    expect(sides.map(({ clear }) => clear!.is.toFixed(6))).toEqual([
      '2.860000',
      '1.860000',
      '1.860000',
      '2.860000',
    ]);
  });

  it('of a square post that stands askew to the line take more of it than half its width', () => {
    const posts = ringPosts(4, 2);
    const { sides } = frameAsBuilt(ringPlan({ count: 4 }).shape, posts, standing(asDrawn(posts)));
    // The side of a square on its corners leaves each post at 45°: through a corner.
    for (const { centres, clear } of sides) expect(centres!.is - clear!.is).toBeCloseTo(0.14 * Math.SQRT2, 9);
  });

  it('that end at a post that is not measured have no length, and the post is named', () => {
    const posts = ringPosts(8, 3);
    const { 3: _, ...places } = asDrawn(posts);
    const frame = frameAsBuilt(ringPlan().shape, posts, standing(places));
    expect(frame.unmeasured).toEqual(['3']);
    expect(frame.sides.filter(({ centres }) => centres === null).map(({ from, to }) => from + to)).toEqual([
      '23',
      '34',
    ]);
    expect(frame.corners.filter(({ mitre }) => mitre === null).map(({ hole }) => hole)).toEqual([
      '2',
      '3',
      '4',
    ]);
    expect(frame.diagonals.find(({ from, to }) => from + to === '37')!.centres).toBeNull();
  });

  it('differ from the drawing by what a post moved', () => {
    const posts = rectanglePosts(3, 2);
    const places = asDrawn(posts);
    const frame = frameAsBuilt(
      rowsPlan({ columns: 2, rows: 2 }).shape,
      [posts[0]!, posts[1]!, posts[3]!, posts[2]!],
      standing({ ...places, 2: { x: 3.02, y: 2 } }),
    );
    const { centres } = frame.sides[0]!;
    expect(centres!.is - centres!.drawn).toBeCloseTo(0.02, 9);
  });
});

describe('corners', () => {
  it('of a straight row bend by what a middle post stands off it, either way', () => {
    const row = ['1', '2', '3'].map((label, i) =>
      framePost(
        label,
        { x: 2 * i, y: 0 },
        ['1', '2', '3'].filter((_, j) => Math.abs(i - j) === 1),
      ),
    );
    for (const off of [0.02, -0.02]) {
      const { corners } = frameAsBuilt(
        rowsPlan({ columns: 3, rows: 1 }).shape,
        row,
        standing({ ...asDrawn(row), 2: { x: 2, y: off } }, SIGMA),
      );
      expect(corners).toHaveLength(1);
      expect(Math.abs(corners[0]!.mitre!.is)).toBeCloseTo(Math.atan2(0.02, 2), 9);
      // A kink in the figure would make the doubt nothing on the very line.
      expect(corners[0]!.mitre!.sigma).toBeGreaterThan(0);
    }
    const straight = frameAsBuilt(
      rowsPlan({ columns: 3, rows: 1 }).shape,
      row,
      standing(asDrawn(row), SIGMA),
    );
    expect(straight.corners[0]!.mitre!.sigma).toBeCloseTo((SIGMA * Math.sqrt(6)) / 4, 6);
  });

  it('of a grid run round its rim; inner posts carry none', () => {
    const posts = Array.from({ length: 9 }, (_, i) =>
      framePost(String(i + 1), { x: i % 3, y: -Math.floor(i / 3) }, []),
    );
    const { corners, diagonals } = frameAsBuilt(
      rowsPlan({ columns: 3, rows: 3 }).shape,
      posts,
      standing(asDrawn(posts)),
    );
    expect(corners.map(({ hole }) => hole).join('')).toBe('12369874');
    expect(corners.filter(({ mitre }) => Math.abs(mitre!.is - Math.PI / 4) < 1e-9)).toHaveLength(4);
    // The whole, and four bays.
    expect(diagonals).toHaveLength(10);
  });

  it('of free points are where a post has two neighbours', () => {
    const bent = [
      framePost('a', { x: 0, y: 0 }, ['b']),
      framePost('b', { x: 2, y: 0 }, ['a', 'c']),
      framePost('c', { x: 2, y: 2 }, ['b']),
    ];
    const frame = frameAsBuilt(pointsPlan([]).shape, bent, standing(asDrawn(bent)));
    expect(frame.corners.map(({ hole }) => hole)).toEqual(['b']);
    expect(frame.corners[0]!.mitre!.is).toBeCloseTo(Math.PI / 4, 9);
    expect(frame.diagonals).toMatchObject([{ from: 'a', to: 'c' }]);
  });
});

describe('a frame of nothing', () => {
  it('has no sides', () => {
    expect(frameAsBuilt(pointsPlan([]).shape, [], standing({}))).toEqual({
      sides: [],
      corners: [],
      diagonals: [],
      unmeasured: [],
    });
  });

  it('of posts all on one spot throws nothing and tells finite numbers', () => {
    const posts = ringPosts(6, 3);
    const heap = Object.fromEntries(posts.map(({ label }) => [label, { x: 1, y: 1 }]));
    const { sides, corners } = frameAsBuilt(ringPlan({ count: 6 }).shape, posts, standing(heap, SIGMA));
    for (const { centres, clear } of sides)
      expect([centres!.is, centres!.sigma, clear!.is, clear!.sigma].every(Number.isFinite)).toBe(true);
    for (const { angle } of corners) expect(Number.isFinite(angle!.is)).toBe(true);
  });
});

describe('a round edge', () => {
  const ring = ringPosts(8, 3);
  const pier = framePost('P', { x: 0, y: 0 }, [], { section: { kind: 'pier', diameter: 0.3 } });
  const asked = { ring, pier, middle: { x: 0, y: 0 }, edge: 3.2, opening: 0.4, about: 'nearest' } as const;
  const corner = Math.hypot(3.07, 0.07);

  it('overhangs the outer corners by edge less their distance', () => {
    const deck = roundDeck(standing(asDrawn([...ring, pier])), asked)!;
    expect(deck.reach.is).toBeCloseTo(corner, 9);
    expect(deck.smallest!.past.is).toBeCloseTo(3.2 - corner, 9);
    expect(deck.largest!.past.is).toBeCloseTo(3.2 - corner, 9);
  });

  it('leaves the least gap where the pier stands off, known by the worst direction', () => {
    const places = { ...asDrawn([...ring, pier]), P: { x: 0.03, y: 0.04 } };
    const { gap } = roundDeck(standing(places, SIGMA), asked)!;
    expect(gap!.smallest).toBeCloseTo(0.4 - 0.15 - 0.05, 9);
    expect(gap!.largest).toBeCloseTo(0.4 - 0.15 + 0.05, 9);
    expect(gap!.sigma).toBeGreaterThan(SIGMA);
    const centred = roundDeck(standing(asDrawn([...ring, pier]), SIGMA), asked)!;
    expect(centred.gap!.sigma).toBeCloseTo(gap!.sigma, 4);
  });

  it('about the pier is concentric with it', () => {
    const places = { ...asDrawn([...ring, pier]), P: { x: 0.03, y: 0 } };
    const deck = roundDeck(standing(places, SIGMA), { ...asked, about: 'pier' })!;
    expect(deck.centre).toEqual({ x: 0.03, y: 0 });
    expect(deck.gap).toMatchObject({ smallest: 0.25, largest: 0.25, sigma: 0 });
  });

  it.each([
    ['two posts', { 1: { x: 0, y: 3 }, 2: { x: 2, y: 2 } }],
    ['posts in a line', { 1: { x: 0, y: 0 }, 2: { x: 1, y: 0 }, 3: { x: 2, y: 0 } }],
  ])('has no middle over %s', (_, places) => {
    expect(roundDeck(standing(places), asked)).toBeNull();
  });

  it('about a pier that is not measured is not told', () => {
    expect(roundDeck(standing(asDrawn(ring)), { ...asked, about: 'pier' })).toBeNull();
    expect(roundDeck(standing(asDrawn(ring)), asked)!.gap).toBeNull();
  });

  it('says which posts it knows nothing of', () => {
    const { 2: _, ...places } = asDrawn(ring);
    expect(roundDeck(standing(places), asked)!.unmeasured).toEqual(['2']);
  });
});

describe('square', () => {
  const corners = rectanglePosts(4, 3);

  it('is nothing off where it stands as drawn', () => {
    const square = squareAsBuilt(standing(asDrawn(corners), SIGMA), corners)!;
    expect(square.difference.is).toBeCloseTo(0, 12);
    expect(square.difference.sigma).toBeGreaterThan(SIGMA);
    for (const { off } of square.offRectangle) expect(Math.hypot(off.x, off.y)).toBeLessThan(1e-12);
  });

  it('turned as a whole is square still', () => {
    const turned = Object.fromEntries(
      corners.map(({ label, designed: { x, y } }) => [label, { x: 0.6 * x - 0.8 * y, y: 0.8 * x + 0.6 * y }]),
    );
    const square = squareAsBuilt(standing(turned), corners)!;
    expect(square.difference.is).toBeCloseTo(0, 12);
    expect(square.rack.is).toBeCloseTo(0, 12);
  });

  it('is not told without all four', () => {
    const { 3: _, ...places } = asDrawn(corners);
    expect(squareAsBuilt(standing(places), corners)).toBeNull();
  });
});
