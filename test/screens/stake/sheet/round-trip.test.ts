import { h } from 'preact';
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../../src/job/plan-schema.ts';
import { type Situation, situate } from '../../../../src/judge/situation.ts';
import { viewOf } from '../../../../src/judge/view.ts';
import { heldTape } from '../../../../src/screens/rise-words.ts';
import { pullOfTape, pullRows } from '../../../../src/screens/stake/sheet/pull-rows.ts';
import { pullListPart } from '../../../../src/screens/stake/sheet/sheet-pulls.ts';
import { StakingPaper } from '../../../../src/screens/stake/sheet/staking-paper.tsx';
import { staticHtml } from '../../../../src/screens/stake/sheet/static-html.ts';
import type { ListedHole } from '../../../../src/stakeout/index.ts';
import { PullRow } from '../../../../src/ui/index.ts';
import { UNITS, type Units } from '../../../../src/units/index.ts';
import { metres, pointsPlan, ringPlan, rowsPlan } from '../../../plan/plans.ts';
import { expectPlaces, type Printed } from './read-back.ts';
import { entriesOf, type Slope, slopingLog, stakesBefore } from './sloping-job.ts';

type Readings = Record<'level' | 'slope', Printed[]>;

/** The pull list's figures as its rows show them on the screen, by the very components of the screen. */
function onScreen(situation: Situation, rows: readonly ListedHole[]): Readings {
  const { units } = situation.plan!;
  const shown = (how: 'level' | 'slope') =>
    rows.map(({ hole, tapes }) => {
      const [fromA, fromB] = tapes.map((tape) => {
        const held = heldTape(situation, pullOfTape(hole, tape), how);
        const row = staticHtml(h(PullRow, { from: 'from a nail', ...held, units }));
        return row.slice(row.indexOf('<span class="figure')).replace(/<[^>]*>/g, '');
      });
      return { hole, fromA: fromA!, fromB: fromB! };
    });
  return { level: shown('level'), slope: shown('slope') };
}

/** The same out of the HTML of the staking sheet. */
function onSheet(situation: Situation, rows: readonly ListedHole[]): Readings {
  const part = pullListPart(viewOf(situation)!, rows, true);
  const sheet = { job: 'Any', head: [], cautions: [], parts: [part] };
  const html = staticHtml(h(StakingPaper, { sheet, units: situation.plan!.units }));
  const printed = (how: string) =>
    html
      .split('<tr>')
      .slice(2)
      .map((row) => {
        const cell = (name: string) => new RegExp(`data-head="${name}"[^>]*>([^<]*)<`).exec(row)![1]!;
        const hole = /<th scope="row">([^<]*)</.exec(row)![1]!;
        return { hole, fromA: cell(`From A, ${how}`), fromB: cell(`From B, ${how}`) };
      });
  return { level: printed('level'), slope: printed('along the slope') };
}

const inUnits = (situation: Situation, units: Units): Situation => ({
  ...situation,
  plan: { ...situation.plan!, units },
});

const onSlope = (plan: Plan, slope: Slope): Situation =>
  situate(entriesOf(slopingLog(plan, stakesBefore(plan), slope)));

/** Level and along the slope, off the screen and off the sheet; for two people and for one. */
function holds(situation: Situation, units: readonly Units[]): void {
  const [walk, alone] = [pullRows(situation, false), pullRows(situation, true)];
  for (const each of units) {
    const job = inUnits(situation, each);
    const [screen, sheet] = [onScreen(job, walk), onSheet(job, alone)];
    for (const how of ['level', 'slope'] as const) {
      expectPlaces(job, screen[how], how);
      expectPlaces(job, sheet[how], how);
    }
  }
}

/** A tape that reaches everything. */
const LONG = { instruments: { ...ringPlan().instruments, tapeLength: metres(200) } };

/** Numbers that are the same on every run (Lehmer's generator with the constants of Park and Miller, 1988). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

const GRADES = [0, 0.05, 0.1, 0.2, 0.3];

describe.each(UNITS)(
  'stakes driven by the printed readings stand where they were planned, in %s',
  (units) => {
    test('rings of 3 to 24 posts, on ground that rises up to 3 in 10', () => {
      for (let count = 3; count <= 24; count++) {
        const plan = ringPlan({ count, pier: count % 2 === 0, size: metres(1.5 + count / 6) }, LONG);
        holds(onSlope(plan, { grade: GRADES[count % GRADES.length]!, way: count }), [units]);
      }
    });
  },
);

test.each([
  [1, 1],
  [2, 2],
  [5, 3],
  [9, 9],
  [14, 6],
  [20, 20],
] as const)('a grid of %i by %i, level and 3 in 10, in every unit', (columns, rows) => {
  const plan = rowsPlan({ columns, rows, columnSpacing: metres(2.4), rowSpacing: metres(1.8) }, LONG);
  const level = onSlope(plan, { grade: 0, way: 0 });
  const steep = onSlope(plan, { grade: 0.3, way: 0.7 });
  holds(level, UNITS);
  holds(steep, UNITS);
});

test('200 plans of scattered holes, on level ground and on slopes, in every unit', () => {
  const random = numbers(20_261_125);
  for (let k = 0; k < 200; k++) {
    const count = 1 + Math.floor(random() * 12);
    const holes = Array.from({ length: count }, (_, i) => {
      return [String(i + 1), random() * 24 - 12, random() * 18 - 9] as const;
    });
    const plan = { ...pointsPlan(holes), ...LONG };
    const slope = { grade: GRADES[k % GRADES.length]!, way: random() * 2 * Math.PI };
    holds(onSlope(plan, slope), UNITS);
  }
});

test('a tape that reads short and has a bent end finds the same places, told what it must read', () => {
  const red = { label: 'Red', nominal: metres(50), actual: metres(50.04), zero: metres(0.013) };
  const plan = ringPlan({ count: 9, pier: true }, { instruments: { ...LONG.instruments, tapes: [red] } });
  const situation = onSlope(plan, { grade: 0.2, way: 2 });
  expect(situation.inHand!.tape.label).toBe('Red');
  holds(situation, UNITS);
});

test('a reading that is off by one step is told from one that is right', () => {
  const situation = onSlope(ringPlan({}, LONG), { grade: 0.1, way: 1 });
  const [first, ...rest] = onScreen(situation, pullRows(situation, false)).level;
  const off = { ...first!, fromA: `${(Number.parseFloat(first!.fromA) + 0.002).toFixed(3)} m` };
  expect(() => expectPlaces(situation, [off, ...rest], 'level')).toThrow(/rounding explains/);
});
