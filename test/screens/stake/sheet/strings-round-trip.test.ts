import { describe, expect, test } from 'vitest';
import { distance, subtract } from '../../../../src/geometry/point.ts';
import { assessSituation } from '../../../../src/judge/assess.ts';
import { situate } from '../../../../src/judge/situation.ts';
import type { SheetTable } from '../../../../src/screens/stake/sheet/sheet-parts.ts';
import { stakingSheet } from '../../../../src/screens/stake/sheet/staking-sheet.ts';
import { stringsOf } from '../../../../src/screens/stake/strings/strings-of.ts';
import { parseLength, stepOf, UNITS, type Units } from '../../../../src/units/index.ts';
import { metres, ringPlan, rowsPlan } from '../../../plan/plans.ts';
import { entriesOf, slopingLog, stakesBefore } from './sloping-job.ts';

function read(text: string, units: Units): number {
  const m = parseLength(text, units, 'Printed', { min: 0 });
  if (!m.ok) throw new Error(m.problem.text);
  return m.value;
}

const cellsOf = (tables: readonly SheetTable[], caption: RegExp) =>
  tables.find((table) => caption.test(table.caption))!.rows;

describe.each(UNITS)('strings and check pulls as they are printed, in %s', (units) => {
  test.each([
    ['a ring', ringPlan({ count: 7, pier: true, size: metres(3.3) })],
    ['rows', rowsPlan({ columns: 4, rows: 3, columnSpacing: metres(2.7), rowSpacing: metres(2.1) })],
  ])('%s: nails, marks and pulls are where the plan has them', (_, shape) => {
    const plan = { ...shape, units };
    const situation = situate(entriesOf(slopingLog(plan, stakesBefore(plan), null)));
    const assessment = assessSituation(situation);
    const sheet = stakingSheet({ situation, assessment, alone: false, at: '', entries: 2 })!;
    const tables = sheet.parts.flatMap((part) => part.tables ?? []);
    const { strings } = stringsOf(situation)!.plan;
    const { holes } = situation.laid!;
    const half = stepOf(units) / 2 + 1e-9;
    const site = (label: string) => holes.find((hole) => hole.label === label)!.site;

    const nails = new Map(
      strings.flatMap((string) => string.nails.map((nail) => [nail.label, nail] as const)),
    );
    const nailRows = cellsOf(tables, /^Nails of the strings/);
    expect(nailRows.map(([label]) => label).sort()).toEqual([...nails.keys()].sort());
    for (const [label, fromA, fromB, side] of nailRows) {
      const { pulls } = nails.get(label!)!;
      expect(Math.abs(read(fromA!, units) - pulls.fromA)).toBeLessThanOrEqual(half);
      expect(Math.abs(read(fromB!, units) - pulls.fromB)).toBeLessThanOrEqual(half);
      expect(side).toBe(pulls.side);
    }

    const stringRows = cellsOf(tables, /^Marks along every string/);
    expect(stringRows).toHaveLength(strings.length);
    for (const [label, length, marks] of stringRows) {
      const { nails: ends } = strings.find((string) => string.label === label)!;
      const [one, other] = ends.map((nail) => nail.site);
      const run = distance(one!, other!);
      expect(Math.abs(read(length!, units) - run)).toBeLessThanOrEqual(half);
      const line = subtract(other!, one!);
      for (const mark of marks!.split('; ')) {
        const [, hole, at] = /^hole (\S+) at (.*)$/.exec(mark)!;
        const along = read(at!, units) / run;
        const place = { x: one!.x + line.x * along, y: one!.y + line.y * along };
        expect(distance(place, site(hole!))).toBeLessThanOrEqual(half);
      }
    }

    const pulls = tables.filter(({ nameHead }) => nameHead === 'Pull').flatMap(({ rows }) => rows);
    expect(pulls.length).toBeGreaterThan(holes.length / 2);
    for (const [name, level] of pulls) {
      const [, from, to] = /^stake (\S+) to stake (\S+)$/.exec(name!)!;
      expect(Math.abs(read(level!, units) - distance(site(from!), site(to!)))).toBeLessThanOrEqual(half);
    }
  });
});
