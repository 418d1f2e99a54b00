import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bagsFor, holeFill, postLength, requiredDepth, requiredDepthOf } from '../../src/build/index.ts';
import { roomRound } from '../../src/build/room.ts';
import { typedLength } from '../../src/job/length.ts';
import type { HoleOverride } from '../../src/job/plan-schema.ts';
import type { Units } from '../../src/units/index.ts';

const typed = (text: string, units: Units = 'ft-in-16') => {
  const length = typedLength(text, units, 'Sample', { min: 0 });
  if (!length.ok) throw new Error(length.problem.text);
  return length.value;
};
const rules = (frost: string | null, embedment: string, gravel: string) => ({
  frostDepth: frost === null ? null : typed(frost),
  embedment: typed(embedment),
  gravel: typed(gravel),
});

describe('required depth', () => {
  it('is the frost depth and the gravel where frost goes deeper', () => {
    expect(requiredDepth(rules('3 0', '2 6', '6"'))).toEqual({
      depth: 42 * 0.0254,
      text: '3′ 6″: frost depth 3′ 0″ and 6″ of gravel.',
    });
  });

  it('is the least embedment and the gravel where that is more', () => {
    const depth = requiredDepth(rules('1 0', '3 6', '4"'));
    expect(depth).toMatchObject({
      text: '3′ 10″: least embedment 3′ 6″ and 4″ of gravel.',
    });
    expect(depth.depth).toBeCloseTo(46 * 0.0254, 12);
  });

  it('has no gravel in its words where there is none', () => {
    expect(requiredDepth(rules('4 0', '1 0', '0')).text).toBe('4′ 0″, the frost depth.');
  });

  it('is the embedment where frost is said to be nothing', () => {
    expect(requiredDepth(rules('0', '1 0', '0'))).toMatchObject({ text: '1′ 0″, the least embedment.' });
  });

  it('is not known while the frost depth is not', () => {
    const depth = requiredDepth(rules(null, '3 6', '6"'));
    expect(depth.depth).toBeNull();
    expect(depth.text).toMatch(/ask the local building office/);
  });
});

describe('a hole with a depth of its own', () => {
  const plan = (own: HoleOverride, frost: string | null = '3 0') => ({
    units: 'ft-in-16' as const,
    rules: rules(frost, '2 6', '6"'),
    overrides: { '4': own },
  });

  it('goes by it, and lacks nothing where it is as deep as the rules ask', () => {
    expect(requiredDepthOf(plan({ depth: typed('3 6') }), '4')).toEqual({
      depth: typed('3 6').m,
      text: '3′ 6″, a depth of its own.',
      lacks: null,
    });
    expect(requiredDepthOf(plan({ depth: typed('3 6') }), '5').text).toMatch(/^3′ 6″: frost depth/);
  });
  it('says what it lacks, why, and who has to agree, and never that it is enough', () => {
    const { depth, lacks } = requiredDepthOf(plan({ depth: typed('2 0'), depthWhy: 'ledge' }), '4');
    expect(depth).toBe(typed('2 0').m);
    expect(lacks?.by).toBeCloseTo(typed('1 6').m, 12);
    expect(lacks?.text).toBe(
      'Hole 4 has a depth of its own, 2′ 0″ (ledge), 1′ 6″ less than the 3′ 6″ that the rules ask: whoever is responsible for the structure, the designer or the building office, has to agree to that before concrete goes in.',
    );
  });
  it('has to be agreed to as well while the frost depth is not known', () => {
    const { depth, lacks } = requiredDepthOf(plan({ depth: typed('4 0') }, null), '4');
    expect(depth).toBe(typed('4 0').m);
    expect(lacks).toMatchObject({ by: null });
    expect(lacks?.text).toContain('the frost depth is not known');
  });
});

describe('room in a hole', () => {
  it('round a round is half the difference, less how far it stands off', () => {
    const round = { section: { kind: 'pier', diameter: 0.3 }, facing: 0 } as const;
    expect(roomRound(round, { x: 0.02, y: 0 }, { x: 0, y: 0 }, 0.5)).toMatchObject({
      cover: expect.closeTo(0.08, 12),
      atBest: expect.closeTo(0.1, 12),
      tightest: { x: 1, y: 0 },
    });
  });
  it('is the same however hole and post are turned together (property)', () => {
    const angle = fc.double({ min: -4, max: 4, noNaN: true });
    const off = fc.double({ min: -0.1, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(angle, angle, off, off, (facing, turn, x, y) => {
        const section = { kind: 'post', width: 0.14, depth: 0.09 } as const;
        const c = Math.cos(turn);
        const s = Math.sin(turn);
        const straight = roomRound({ section, facing }, { x, y }, { x: 0, y: 0 }, 0.4);
        const turned = { x: x * c - y * s, y: x * s + y * c };
        const other = roomRound({ section, facing: facing + turn }, turned, { x: 0, y: 0 }, 0.4);
        expect(other.cover).toBeCloseTo(straight.cover, 9);
        expect(straight.cover).toBeLessThanOrEqual(straight.atBest + 1e-12);
      }),
    );
  });
});

describe('concrete and gravel', () => {
  const post = { kind: 'post', width: 0.1, depth: 0.2 } as const;
  const pier = { kind: 'pier', diameter: 0.3 } as const;
  const floor = (Math.PI / 4) * 0.4 ** 2;

  it('fills the hole above the gravel, less the post', () => {
    const fill = holeFill({ diameter: 0.4, depth: 1, gravel: 0.15, section: post });
    expect(fill.gravel).toBeCloseTo(floor * 0.15, 12);
    expect(fill.concrete).toBeCloseTo((floor - 0.02) * 0.85, 12);
  });

  it('fills the whole hole where a pier is cast, and what rises above the ground', () => {
    const fill = holeFill({ diameter: 0.4, depth: 1, gravel: 0.15, section: pier, above: 0.5 });
    expect(fill.concrete).toBeCloseTo(floor * 0.85 + (Math.PI / 4) * 0.09 * 0.5, 12);
    const level = holeFill({ diameter: 0.4, depth: 1, gravel: 0.15, section: pier });
    expect(level.concrete).toBeCloseTo(floor * 0.85, 12);
  });

  it('is never less than nothing', () => {
    const shallow = holeFill({ diameter: 0.4, depth: 0.1, gravel: 0.15, section: post });
    expect(shallow.concrete).toBe(0);
    expect(shallow.gravel).toBeCloseTo(floor * 0.1, 12);
    expect(holeFill({ diameter: 0.1, depth: 1, gravel: 0, section: post }).concrete).toBe(0);
  });
});

describe('bags', () => {
  it('are never one too many at an exact multiple, and never one short', () => {
    const bags = fc.integer({ min: 0, max: 500 });
    const litres = fc.integer({ min: 100, max: 40_000 }).map((ml) => ml / 1000);
    fc.assert(
      fc.property(bags, litres, (count, yielded) => {
        // Added up bag by bag, so that rounding piles up as it would.
        let volume = 0;
        for (let i = 0; i < count; i++) volume += yielded / 1000;
        expect(bagsFor(volume, yielded)).toBe(count);
        const cupful = 0.0002;
        expect(bagsFor(volume + cupful, yielded)).toBe(count + Math.ceil(cupful / (yielded / 1000)));
      }),
    );
  });

  it('of nothing are none', () => {
    expect(bagsFor(0, 17)).toBe(0);
    expect(Object.is(bagsFor(0, 17), 0)).toBe(true);
  });

  it.each([0, -1, Number.NaN])('cannot yield %f litres', (litres) => {
    expect(() => bagsFor(1, litres)).toThrow(RangeError);
  });
});

describe('length of post to buy', () => {
  it('reaches from what it stands on to its top, with something to cut off', () => {
    const length = postLength({ top: 0.9, bottom: -1.05, spare: 0.1 });
    expect(length.ok && length.value).toBeCloseTo(2.05, 12);
  });

  it.each([
    ['equal', 1, 1],
    ['upside down', -1, 1],
    ['unknown', Number.NaN, 1],
  ])('refuses heights that are %s', (_, top, bottom) => {
    expect(postLength({ top, bottom, spare: 0.1 })).toMatchObject({
      ok: false,
      problem: {
        field: 'Height of the top',
        text: expect.stringMatching(/^Height of the top: .* check both heights\.$/),
      },
    });
  });
});
