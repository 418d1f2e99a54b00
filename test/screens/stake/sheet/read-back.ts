import { expect } from 'vitest';
import type { Situation } from '../../../../src/judge/situation.ts';
import { lengthBy } from '../../../../src/measure/index.ts';
import { parseLength, stepOf, type Units } from '../../../../src/units/index.ts';

/** Texts that were printed for one hole's two tapes. */
export interface Printed {
  readonly hole: string;
  readonly fromA: string;
  readonly fromB: string;
}

/** What a printed length says, by the reader of the app's own keypads; metres. */
function readBack(text: string, units: Units): number {
  const read = parseLength(text, units, 'Printed', { min: 0 });
  if (!read.ok) throw new Error(read.problem.text);
  return read.value;
}

/** Ground heights by `point:label`, as read. */
function heightsOf({ measured }: Situation): ReadonlyMap<string, number> {
  return new Map((measured?.heights ?? []).map(({ key, height }) => [key, height]));
}

/**
 * Drives every stake where the two printed readings meet, on its side of A–B, and holds its place against the plan. How far off
 * it may be is the rounding's own doing: half a step of each tape, along the slope more by slope over level, and both at once
 * at the crossing angle γ, √(a² + b² + 2ab|cos γ|) / sin γ (the far corner of the parallelogram of two such strips).
 */
export function expectPlaces(
  situation: Situation,
  printed: readonly Printed[],
  how: 'level' | 'slope',
): void {
  const { plan, laid } = situation;
  expect(printed.map(({ hole }) => hole).sort()).toEqual(laid!.holes.map(({ label }) => label).sort());
  const { units } = plan!;
  const heights = heightsOf(situation);
  const c = laid!.baseline;
  const places = new Map(laid!.holes.map(({ label, site }) => [label, site]));
  for (const { hole, fromA, fromB } of printed) {
    const site = places.get(hole)!;
    const tape = (text: string, stake: 'A' | 'B') => {
      const read = lengthBy(situation.inHand, readBack(text, units));
      if (how === 'level') return { level: read, half: stepOf(units) / 2 };
      const rise = heights.get(`ground:${hole}`)! - heights.get(`stake:${stake}`)!;
      const level = Math.sqrt(read ** 2 - rise ** 2);
      return { level, half: (stepOf(units) / 2) * (read / level) };
    };
    const [a, b] = [tape(fromA, 'A'), tape(fromB, 'B')];
    const x = (a.level ** 2 - b.level ** 2 + c ** 2) / (2 * c);
    const y = Math.sign(site.y) * Math.sqrt(a.level ** 2 - x ** 2);
    const [ra, rb] = [Math.hypot(site.x, site.y), Math.hypot(site.x - c, site.y)];
    const cosine = (site.x * (site.x - c) + site.y ** 2) / (ra * rb);
    const both = Math.sqrt(a.half ** 2 + b.half ** 2 + 2 * a.half * b.half * Math.abs(cosine));
    const most = both / Math.sqrt(1 - cosine ** 2);
    const off = Math.hypot(x - site.x, y - site.y);
    // A hundredth for the bend of the arcs, which the strips leave out.
    if (!(off <= most * 1.01)) expect.fail(`hole ${hole}: ${off} m off, rounding explains ${most} m`);
  }
}
