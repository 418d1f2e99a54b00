import { describe, expect, it } from 'vitest';
import { add, distance, scale, unit } from '../../src/geometry/point.ts';
import type { Body } from '../../src/job/entry-schema.ts';
import { assess } from '../../src/judge/assess.ts';
import { HALF_WIDTH_95 } from '../../src/judge/normal.ts';
import { situate } from '../../src/judge/situation.ts';
import { twistOf } from '../../src/measure/twist.ts';
import { Field, mm, post, stake } from './field.ts';
import { holeOf } from './ring-job.ts';

const DEGREE = Math.PI / 180;
const HALF = 0.07;

/** Posts 6, 1 and 2 of the ring stand on their marks and are measured. */
function placed(): Field {
  const field = new Field().site();
  for (let i = 0; i < 2; i++) field.pull(stake('A'), stake('B'));
  for (const hole of ['6', '1', '2']) field.set(hole).pullsTo(post(hole), [stake('A'), stake('B')]);
  return field;
}

const siteOf = (field: Field, hole: string) => field.laid.holes.find(({ label }) => label === hole)!;

/** The two edges of a face of post 1, turned about its middle; anticlockwise one first. */
function edges(field: Field, bearingOff: number, turn: number) {
  const { site, facing } = siteOf(field, '1');
  const way = facing + bearingOff + turn;
  const middle = add(site, scale(unit(way), HALF));
  const across = scale(unit(way + Math.PI / 2), HALF);
  return [add(middle, across), add(middle, scale(across, -1))] as const;
}

/** As read from A, to the inner face: the one that looks back towards the baseline. */
function byTape(field: Field, turn: number): Extract<Body, { kind: 'twist' }> {
  const [acw, cw] = edges(field, Math.PI, turn).map((edge) => mm(distance({ x: 0, y: 0 }, edge) * 1000));
  const at = { thing: stake('A'), touch: { at: 'nail' } } as const;
  return {
    kind: 'twist',
    hole: '1',
    side: 'back',
    from: { by: 'tape', at },
    anticlockwise: acw!,
    clockwise: cw!,
  };
}

/** As read off a string between the middles of posts 2 and 6, which runs square to the way post 1 looks. */
function byString(field: Field, turn: number): Extract<Body, { kind: 'twist' }> {
  const [p, q] = [siteOf(field, '2').site, siteOf(field, '6').site];
  const along = unit(Math.atan2(q.y - p.y, q.x - p.x));
  const [acw, cw] = edges(field, Math.PI, turn).map(({ x, y }) =>
    mm(Math.abs((x - p.x) * along.y - (y - p.y) * along.x) * 1000),
  );
  const from = { by: 'string', from: post('2'), to: post('6') } as const;
  return { kind: 'twist', hole: '1', side: 'back', from, anticlockwise: acw!, clockwise: cw! };
}

const measuredIn = (field: Field, body: Extract<Body, { kind: 'twist' }>) => {
  const { measured, laid, plan } = situate(field.log);
  return twistOf(body, siteOf(field, '1'), measured!, laid!.holes, plan!.instruments);
};

describe('how far a post is turned', () => {
  it.each([0, 1, -2.5, 12, -30])(
    '%d° comes out of two pulls from A, and of two rules off a string',
    (degrees) => {
      const field = placed();
      for (const body of [byTape(field, degrees * DEGREE), byString(field, degrees * DEGREE)]) {
        const found = measuredIn(field, body)!;
        expect(found.turn / DEGREE).toBeCloseTo(degrees, 3);
      }
    },
  );

  it('is as sure as its two readings over the width of the face: two rules to 0.5 mm over 140 mm are 0.29°', () => {
    const field = placed();
    const { sigma } = measuredIn(field, byString(field, 0))!;
    expect(sigma / DEGREE).toBeGreaterThan(0.28);
    expect(sigma / DEGREE).toBeLessThan(0.32);
    expect(measuredIn(field, byTape(field, 0))!.sigma).toBeGreaterThan(3 * sigma);
  });

  it('is nothing where the edges differ by more than the face is wide, or the string runs across it', () => {
    const field = placed();
    expect(
      measuredIn(field, { ...byString(field, 0), anticlockwise: mm(500), clockwise: mm(300) }),
    ).toBeNull();
    const across = { by: 'string', from: post('1'), to: stake('A') } as const;
    expect(measuredIn(field, { ...byString(field, 0), side: 'left', from: across })).not.toBeNull();
    expect(measuredIn(field, { ...byString(field, 0), side: 'left' })).toBeNull();
  });
});

describe('a string', () => {
  it('is seen by the face that looks to it, not by the one opposite', () => {
    const field = placed();
    expect(measuredIn(field, byString(field, 0))).not.toBeNull();
    expect(measuredIn(field, { ...byString(field, 0), side: 'front' })).toBeNull();
  });
  it('that lies in doubt is in as much doubt for two readings off it as for one', () => {
    const field = placed();
    field.add(byString(field, 0));
    const { sigma, common } = measuredIn(field, byString(field, 0))!;
    field.add(byString(field, 0));
    const own = Math.sqrt(sigma ** 2 - common ** 2);
    expect(holeOf(assess(field.log), '1').set.twist!.uncertainty! / HALF_WIDTH_95).toBeCloseTo(
      Math.hypot(own / Math.SQRT2, common),
      9,
    );
  });
});

describe('judged', () => {
  const judged = (...degrees: number[]) => {
    const field = placed();
    for (const each of degrees) field.add(byString(field, each * DEGREE));
    return holeOf(assess(field.log), '1').set;
  };

  it('never forced: unmeasured it says so and changes nothing; of a round it is not asked', () => {
    const { twist, headline } = judged();
    expect(twist).toMatchObject({ quantity: 'twist', verdict: 'unmeasured', checked: false });
    expect(headline).not.toMatch(/turned/);
    expect(holeOf(assess(placed().log), 'P').set.twist).toBeNull();
  });
  it('in, unchecked after one reading and checked after two', () => {
    expect(judged(0.3).twist).toMatchObject({ verdict: 'in', checked: false });
    expect(judged(0.3, 0.3).twist).toMatchObject({ verdict: 'in', checked: true, why: '' });
  });
  it('out: how far, which way, what is allowed, and which way to turn it', () => {
    const { twist, verdict } = judged(4, 4);
    expect(twist!.why).toBe(
      'Post 1 is turned 4.0° anticlockwise seen from above, and 1.5° is allowed: turn it clockwise by as much.',
    );
    expect(verdict).toBe('out');
    expect(judged(-4, -4).twist!.why).toMatch(/4\.0° clockwise seen from above.*turn it anticlockwise/);
  });
  it('readings that do not agree are told', () => {
    expect(judged(0, 5).twist).toMatchObject({ checked: false, why: expect.stringMatching(/do not agree/) });
  });
  it('goes by the plan’s tolerance where the plan has one', () => {
    const field = placed();
    const { plan } = field;
    field.add({ kind: 'plan', plan: { ...plan, tolerances: { ...plan.tolerances, twist: 0.1 } } });
    field.add(byString(field, 4 * DEGREE));
    expect(holeOf(assess(field.log), '1').set.twist).toMatchObject({ verdict: 'in', tolerance: 0.1 });
  });
});
