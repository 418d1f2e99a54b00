import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/job/plan-schema.ts';
import { checkPlan, defaultPlan, FIELDS, holesOf } from '../../src/plan/index.ts';
import { metres, pointsPlan, postTurned, ringPlan, rowsPlan } from './plans.ts';

/** Exactly one problem, with its field, whether it stops the work, and its sentence. */
function expectOnly(plan: Plan, field: string, stops: boolean, text: RegExp) {
  const problems = checkPlan(plan);
  expect(problems).toHaveLength(1);
  expect(problems[0]).toMatchObject({ field, stops });
  expect(problems[0]!.text).toMatch(text);
  expect(problems[0]!.text.startsWith(`${field}: `)).toBe(true);
  expect(problems[0]!.text).toMatch(/\.$/);
}
const ringOf = (change: (plan: Plan) => Partial<Plan>) => {
  const plan = ringPlan();
  return { ...plan, ...change(plan) };
};

describe('a plan that can be built', () => {
  it('has no problems', () => {
    for (const plan of [
      ringPlan(),
      ringPlan({ pier: true }),
      rowsPlan(),
      pointsPlan([
        ['1', 0, 0],
        ['2', 3, 0],
      ]),
    ])
      expect(checkPlan(plan)).toEqual([]);
  });

  it('lacks its frost depth at first, and nothing else', () => {
    for (const units of ['ft-in-16', 'ft-in-32', 'ft', 'm', 'mm'] as const)
      expectOnly(defaultPlan(units), FIELDS.frostDepth, false, /ask the local building office/);
  });
});

describe('sizes that cannot be built', () => {
  it.each([
    ['zero', 0, /nothing to build; type more than zero/],
    ['below zero', -3, /−3\.000 m is nothing to build/],
    ['a slip by powers of ten', 1e6, /more than can be built; type 300\.000 m or less/],
  ])('a ring of %s', (_, size, text) => {
    const plan = ringPlan();
    const length = { m: size, typed: String(size), units: 'm' } as const;
    expectOnly({ ...plan, shape: { ...plan.shape, size: length } as Plan['shape'] }, FIELDS.size, true, text);
  });

  it('outer faces within half a post', () => {
    const plan = ringPlan({ sizeBy: 'outer-faces', size: metres(0.06) });
    expectOnly(plan, FIELDS.size, true, /within half a post of the centre/);
  });

  it('rows whose posts alone are wider than the whole', () => {
    const plan = rowsPlan(
      { measuredTo: 'out-to-out', columnSpacing: metres(0.1) },
      { each: postTurned('grid') },
    );
    expectOnly(plan, FIELDS.wholeWidth, true, /wider than the whole/);
  });

  it('a spacing of zero is nothing where there is but one column', () => {
    expect(checkPlan(rowsPlan({ columns: 1, columnSpacing: metres(0) }))).toEqual([]);
    expectOnly(rowsPlan({ columnSpacing: metres(0) }), FIELDS.columnSpacing, true, /nothing to build/);
  });

  it('each other size, by the name of its field', () => {
    const cases: [string, (plan: Plan) => Partial<Plan>][] = [
      [FIELDS.width, () => ({ each: postTurned('grid', 0, 0.1) })],
      [FIELDS.depth, () => ({ each: postTurned('grid', 0.1, -1) })],
      [FIELDS.diameter, ({ pier }) => ({ pier: { ...pier, holds: { kind: 'pier', diameter: metres(0) } } })],
      [FIELDS.holeDiameter, ({ each }) => ({ each: { ...each, holeDiameter: metres(20) } })],
      [FIELDS.top, ({ each }) => ({ each: { ...each, top: metres(11) } })],
      [FIELDS.gravel, ({ rules }) => ({ rules: { ...rules, gravel: metres(-0.1) } })],
      [FIELDS.gravel, ({ rules }) => ({ rules: { ...rules, gravel: metres(5) } })],
      [FIELDS.embedment, ({ rules }) => ({ rules: { ...rules, embedment: metres(11) } })],
      [FIELDS.frostDepth, ({ rules }) => ({ rules: { ...rules, frostDepth: metres(-1) } })],
      [FIELDS.position, ({ tolerances }) => ({ tolerances: { ...tolerances, position: metres(0) } })],
      [FIELDS.spacing, ({ tolerances }) => ({ tolerances: { ...tolerances, spacing: metres(0) } })],
      [FIELDS.level, ({ tolerances }) => ({ tolerances: { ...tolerances, level: metres(-1) } })],
      [FIELDS.tapeLength, ({ instruments }) => ({ instruments: { ...instruments, tapeLength: metres(0) } })],
      [
        FIELDS.tapeLength,
        ({ instruments }) => ({ instruments: { ...instruments, tapeLength: metres(0.0024) } }),
      ],
      [FIELDS.tapeError, ({ instruments }) => ({ instruments: { ...instruments, tapeError: metres(0) } })],
      [FIELDS.rodError, ({ instruments }) => ({ instruments: { ...instruments, rodError: metres(0.6) } })],
      [FIELDS.top, () => ({ overrides: { '2': { top: metres(-11) } } })],
    ];
    for (const [field, change] of cases) {
      const problems = checkPlan(ringOf(change)).filter(({ stops }) => stops);
      expect(
        problems.map((problem) => problem.field),
        field,
      ).toEqual([field]);
    }
  });
});

describe('holes that get in each other’s way', () => {
  it('a post that is too wide for its hole, corner to corner', () => {
    const each = { ...postTurned('grid', 0.14, 0.14), holeDiameter: metres(0.19) };
    expectOnly(
      ringPlan({}, { each }),
      FIELDS.holeDiameter,
      true,
      /hole 1 is 0\.190 m wide, but its post is 0\.198 m from corner to corner \(and 7 more are like it\)/,
    );
    const wide = { ...each, holeDiameter: metres(0.2) };
    expect(checkPlan(ringPlan({}, { each: wide }))).toEqual([]);
  });

  it('a pier that just fills its hole is right, one wider is not', () => {
    const overrides = (m: number) => ({ '2': { holds: { kind: 'pier', diameter: metres(m) } } }) as const;
    expect(checkPlan(ringPlan({}, { overrides: overrides(0.4) }))).toEqual([]);
    expectOnly(
      ringPlan({}, { overrides: overrides(0.41) }),
      FIELDS.holeDiameter,
      true,
      /hole 2 .* its pier is 0\.410 m wide;/,
    );
  });

  it('holes that run into each other are said; posts that do stop the work', () => {
    expectOnly(
      pointsPlan([
        ['a', 0, 0],
        ['b', 0.39, 0],
      ]),
      FIELDS.holeDiameter,
      false,
      /holes a and b run into each other;/,
    );
    expect(
      checkPlan(
        pointsPlan([
          ['a', 0, 0],
          ['b', 0.4, 0],
        ]),
      ),
    ).toEqual([]);
    expectOnly(
      pointsPlan([
        ['a', 0, 0],
        ['b', 0.13, 0],
      ]),
      FIELDS.points,
      true,
      /a and b are 0\.130 m apart/,
    );
  });

  it('a ring so small that its posts stand in one another', () => {
    const plan = ringPlan({ count: 12, sizeBy: 'side', size: metres(0.1) });
    expectOnly(plan, FIELDS.size, true, /holes 1 and 2 are 0\.100 m apart, .* \(and 11 more are like it\)/);
  });

  it('a list without points, and labels that are taken', () => {
    expectOnly(pointsPlan([]), FIELDS.points, true, /there are none yet/);
    expectOnly(
      pointsPlan([
        ['7', 0, 0],
        ['7', 3, 0],
      ]),
      FIELDS.points,
      true,
      /two have the label “7”/,
    );
    expectOnly(
      pointsPlan([
        ['A', 0, 0],
        ['7', 3, 0],
      ]),
      FIELDS.points,
      true,
      /name of a reference stake/,
    );
  });

  it('sizes of a hole that is not there', () => {
    expectOnly(ringPlan({}, { overrides: { '9': { top: metres(1) } } }), 'Hole 9', false, /no such hole/);
  });

  it('outer faces of rows whose posts are turned to the centre', () => {
    const plan = rowsPlan({ measuredTo: 'out-to-out', columnSpacing: metres(4), rowSpacing: metres(4) });
    expectOnly(plan, FIELDS.wholeWidth, false, /turned to the grid/);
  });
});

describe('tolerances finer than the instruments', () => {
  it.each([
    ['position', FIELDS.position, /1 mm is finer than your tape can prove/],
    ['level', FIELDS.level, /1 mm is finer than your rod can prove/],
    ['tops', FIELDS.tops, /1 mm is finer than your rod can prove/],
  ] as const)('%s', (key, field, text) => {
    const plan = ringOf(({ tolerances }) => ({ tolerances: { ...tolerances, [key]: metres(0.001) } }));
    expectOnly(plan, field, false, text);
  });

  it('plumb', () => {
    const plan = ringOf(({ tolerances }) => ({ tolerances: { ...tolerances, plumb: 0.001 } }));
    expectOnly(plan, FIELDS.plumb, false, /1\.0 mm in a metre is finer than your level can prove/);
  });

  it('asks for 2.45 sigma of a place: the 95 % radius of a round normal (chi-square, two degrees of freedom)', () => {
    const exact = (factor: number) =>
      ringOf(({ tolerances, instruments }) => ({
        tolerances: { ...tolerances, position: metres(0.001 * factor) },
        instruments: { ...instruments, tapeError: metres(0.001), tapeErrorPerMetre: 0 },
      }));
    expect(checkPlan(exact(3))).toEqual([]);
    expect(checkPlan(exact(2))).toHaveLength(1);
  });

  it('a tape shorter than the plan', () => {
    const plan = ringOf(({ instruments }) => ({ instruments: { ...instruments, tapeLength: metres(5) } }));
    expectOnly(plan, FIELDS.tapeLength, false, /6\.000 m across, and the tape 5\.000 m/);
  });
});

it('puts what stops the work first, and counts a plan of a thousand holes', () => {
  const big = rowsPlan({ columns: 40, rows: 25, columnSpacing: metres(0.3), rowSpacing: metres(0.3) });
  expect(holesOf(big)).toHaveLength(1000);
  const problems = checkPlan({
    ...big,
    rules: { ...big.rules, frostDepth: null },
    each: { ...big.each, holeDiameter: metres(0.1) },
  });
  expect(problems.map(({ stops }) => stops)).toEqual([true, false]);
});
