import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cross, distance, subtract, unit } from '../../src/geometry/point.ts';
import { PlaceGrid } from '../../src/stakeout/string-grid.ts';

const place = fc.record({
  x: fc.double({ min: -30, max: 30, noNaN: true }),
  y: fc.double({ min: -30, max: 30, noNaN: true }),
});
const places = fc.array(place, { minLength: 1, maxLength: 60 });

describe('places sorted into cells', () => {
  it('give every place beside a line, as a look at all of them does', () => {
    fc.assert(
      fc.property(places, place, fc.double({ min: 0, max: 6.3, noNaN: true }), (all, through, way) => {
        const along = unit(way);
        const found = new Set(new PlaceGrid(all).beside(through, along, 0.5));
        for (const [i, at] of all.entries())
          if (Math.abs(cross(along, subtract(at, through))) <= 0.5) expect(found.has(i)).toBe(true);
      }),
    );
  });

  it('give the nearest first, as a look at all of them does', () => {
    fc.assert(
      fc.property(places, fc.integer({ min: 0, max: 8 }), (all, count) => {
        const grid = new PlaceGrid(all);
        const away = (j: number) => distance(all[j]!, all[0]!);
        const others = [...all.keys()].slice(1).map(away);
        expect(grid.nearest(0, count).map(away)).toEqual(others.sort((p, q) => p - q).slice(0, count));
      }),
    );
  });

  it('hold places that stand in one line, at one place, or are none', () => {
    const row = [0, 1, 2, 3].map((x) => ({ x, y: 5 }));
    expect(new PlaceGrid(row).beside({ x: 0, y: 5 }, { x: 1, y: 0 }, 0.1).sort()).toEqual([0, 1, 2, 3]);
    expect(new PlaceGrid(row).nearest(1, 2).sort()).toEqual([0, 2]);
    expect(new PlaceGrid([{ x: 1, y: 1 }]).nearest(0, 3)).toEqual([]);
    expect(new PlaceGrid([]).beside({ x: 0, y: 0 }, { x: 1, y: 0 }, 1)).toEqual([]);
  });
});
