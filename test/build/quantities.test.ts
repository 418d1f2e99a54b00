import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holeFill } from '../../src/build/concrete.ts';
import { type HoleToFill, jobQuantities } from '../../src/build/quantities.ts';

const POST = { kind: 'post', width: 0.1, depth: 0.1 } as const;
const FILLING = { gravel: 0.1, waste: 0, bagYield: 10 } as const;

const hole = (label: string, more: Partial<HoleToFill> = {}): HoleToFill => ({
  hole: label,
  section: POST,
  planned: { depth: 1.1, diameter: 0.4 },
  dug: null,
  above: 0,
  poured: null,
  ...more,
});
const ONE = (Math.PI / 4) * 0.16 - 0.01;

describe('concrete of a job', () => {
  it('is as planned until a hole is dug, then as dug', () => {
    const { holes, concrete } = jobQuantities(
      [hole('1'), hole('2', { dug: { depth: 1.6, diameter: 0.4 } })],
      FILLING,
    );
    expect(holes.map(({ from }) => from)).toEqual(['planned', 'dug']);
    expect(holes[0]!.concrete).toBeCloseTo(ONE, 12);
    expect(holes[1]!.concrete).toBeCloseTo(1.5 * ONE, 12);
    expect(holes[1]!.asPlanned).toBeCloseTo(ONE, 12);
    expect(concrete).toBeCloseTo(2.5 * ONE, 12);
  });

  it('leaves out and names a hole of which no depth is known', () => {
    const all = jobQuantities([hole('1'), hole('2', { planned: null })], FILLING);
    expect(all.unknown).toEqual(['2']);
    expect(all.holes[1]).toMatchObject({ from: null, concrete: null, bags: null, gravel: null });
    expect(all.concrete).toBeCloseTo(ONE, 12);
  });

  it('of a pier whose height above the ground is not known leaves its form out, and says so', () => {
    const pier = { section: { kind: 'pier', diameter: 0.3 } as const };
    const [without, withIt] = jobQuantities(
      [hole('P', { ...pier, above: null }), hole('Q', { ...pier, above: 0.5 })],
      FILLING,
    ).holes;
    expect(without!.withoutForm).toBe(true);
    expect(withIt!.withoutForm).toBe(false);
    expect(withIt!.concrete! - without!.concrete!).toBeCloseTo((Math.PI / 4) * 0.09 * 0.5, 12);
  });
});

describe('bags of a job', () => {
  it('are rounded up once for all holes, and by hole for each', () => {
    const bagYield = ONE * 1000 * 0.8;
    const all = jobQuantities([hole('1'), hole('2'), hole('3')], { ...FILLING, bagYield });
    // 1.25 bags each: two each, four in all.
    expect(all.holes.map(({ bags }) => bags)).toEqual([2, 2, 2]);
    expect(all.bags).toBe(4);
  });

  it('are never one short, nor one too many at an exact multiple, with waste too', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 40 }), (count, per) => {
        const waste = 0.25;
        const bagYield = (ONE * 1000 * (1 + waste)) / per;
        const holes = Array.from({ length: count }, (_, i) => hole(String(i)));
        expect(jobQuantities(holes, { ...FILLING, waste, bagYield }).bags).toBe(count * per);
        expect(jobQuantities(holes, { ...FILLING, waste, bagYield: bagYield * 0.999 }).bags).toBeGreaterThan(
          count * per,
        );
      }),
    );
  });

  it('that were used stand against those that the poured holes were to take', () => {
    const bagYield = ONE * 1000;
    const all = jobQuantities([hole('1', { poured: 1.5 }), hole('2', { poured: 1 }), hole('3')], {
      ...FILLING,
      bagYield,
    });
    expect(all).toMatchObject({ used: 2.5, usedFor: 2, left: 1, bags: 3 });
  });

  it('are not counted until somebody says what one makes', () => {
    expect(jobQuantities([hole('1')], { ...FILLING, bagYield: null })).toMatchObject({
      bags: null,
      usedFor: null,
      left: null,
    });
  });

  it('of no holes are none', () => {
    expect(jobQuantities([], FILLING)).toMatchObject({ concrete: 0, gravel: 0, bags: 0, used: 0 });
  });
});

describe('tubes and bells', () => {
  const plain = { diameter: 0.4, depth: 1.1, gravel: 0.1, section: POST } as const;

  it('a tube is filled, and not the hole round it', () => {
    expect(holeFill({ ...plain, tube: 0.3 }).concrete).toBeCloseTo((Math.PI / 4) * 0.09 - 0.01, 12);
    expect(holeFill({ ...plain, tube: 0.3 }).gravel).toBeCloseTo((Math.PI / 4) * 0.16 * 0.1, 12);
  });

  it('a tube wider than its hole is no wider than it', () => {
    expect(holeFill({ ...plain, tube: 0.9 })).toEqual(holeFill(plain));
  });

  it('a bell adds its frustum less the shaft in it', () => {
    const bell = { diameter: 0.7, height: 0.3 };
    const frustum = ((Math.PI * 0.3) / 3) * (0.35 ** 2 + 0.35 * 0.2 + 0.2 ** 2);
    const shaft = Math.PI * 0.2 ** 2 * 0.3;
    expect(holeFill({ ...plain, bell }).concrete).toBeCloseTo(holeFill(plain).concrete + frustum - shaft, 12);
  });

  it.each([
    ['no wider than the hole', { diameter: 0.4, height: 0.3 }],
    ['of no height', { diameter: 0.7, height: 0 }],
  ])('a bell %s adds nothing', (_, bell) => {
    expect(holeFill({ ...plain, bell }).concrete).toBeCloseTo(holeFill(plain).concrete, 12);
  });
});
