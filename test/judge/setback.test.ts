import { describe, expect, it } from 'vitest';
import type { GroundLine } from '../../src/job/place-schema.ts';
import { assess } from '../../src/judge/assess.ts';
import { shortAsSetText } from '../../src/judge/setback-words.ts';
import { situate } from '../../src/judge/situation.ts';
import type { LineGap } from '../../src/judge/types.ts';
import { groundLines, holesOf } from '../../src/plan/index.ts';
import { Field, mm, post, ringPlan, stake } from './field.ts';

const at = (right: number, front: number) => ({ by: 'plan', right: mm(right), front: mm(front) }) as const;
const boundary = (away: number, keep?: number): GroundLine => ({
  name: 'Boundary',
  kind: 'boundary',
  from: at(away, -9000),
  to: at(away, 9000),
  ...(keep === undefined ? {} : { keep: mm(keep) }),
});
const plan = (lines: GroundLine[], edge?: number) =>
  ringPlan('mm', { lines, ...(edge === undefined ? {} : { deck: { edge: mm(edge) } }) });
const told = (field: Field) => assess(field.log);
const setbacks = (field: Field) =>
  told(field)
    .findings.filter(({ code }) => code === 'setback')
    .map(({ text }) => text);

describe('what the structure keeps from a line', () => {
  it('is told of the post that comes nearest, by the plan, with what is to spare', () => {
    const [line] = told(new Field(plan([boundary(6000, 2000)]))).lines;
    expect(line!.planned!.gap).toBeGreaterThan(2);
    expect(line!.text).toMatch(
      /^Boundary, by the plan: post \d, the nearest, keeps its outer face \d{4} mm from it\. 2000 mm must be kept: \d+ mm to spare\.$/,
    );
    expect(setbacks(new Field(plan([boundary(6000, 2000)])))).toEqual([]);
  });
  it('is a finding when it is short, by how much, and what to do', () => {
    expect(setbacks(new Field(plan([boundary(4000, 2000)])))).toEqual([
      expect.stringMatching(
        /^Post \d comes within 1\d{3} mm of Boundary, and 2000 mm must be kept; post \d is too near as well\. Move the plan or make it smaller, or ask whoever set that distance\.$/,
      ),
    ]);
  });
  it('names every post that is short by the plan, not the first alone', () => {
    const field = new Field(plan([boundary(4500, 5000)]));
    const [line] = told(field).lines;
    expect(line!.short).toMatch(/5000 mm must be kept; posts .+ and . are too near as well\. Move/);
    expect(line!.text).toMatch(/ mm short; posts .+ and . are short as well\.$/);
    expect(line!.short.match(/posts (.+) are/)![1]).not.toContain(line!.planned!.hole);
  });
  it('counts the deck’s edge where the plan has one', () => {
    const field = new Field(plan([boundary(6000, 2000)], 4500));
    const [line] = told(field).lines;
    expect(line!.edge).toBeCloseTo(1.5, 12);
    expect(line!.text).toContain(
      'The deck’s edge stays 1500 mm from it. 2000 mm must be kept: the deck’s edge is 500 mm short.',
    );
    expect(setbacks(field)).toHaveLength(1);
  });
  it('a hole under a house is said to be there, whether a distance is asked for or not', () => {
    const house: GroundLine = {
      name: 'House',
      kind: 'house',
      from: at(-4000, 2500),
      to: at(4000, 2500),
      noStakes: 'left',
    };
    expect(setbacks(new Field(plan([house])))).toEqual([
      expect.stringMatching(
        /^Post 1 would stand \d+ mm inside House\. Move the plan, or put right where that line runs\.$/,
      ),
    ]);
  });
  it('a slope that runs through the plan is for stakes to mind, not for posts, unless a distance is asked for', () => {
    const slope: GroundLine = { ...boundary(0), name: 'Downhill', kind: 'other', noStakes: 'right' };
    const field = new Field(plan([slope]));
    expect(told(field).lines[0]).toMatchObject({ text: '', short: '' });
    expect(setbacks(field)).toEqual([]);
    expect(setbacks(new Field(plan([{ ...slope, keep: mm(500) }])))).toHaveLength(1);
  });
  it('as set is said only of what is measured, and how many are', () => {
    const field = new Field(plan([boundary(6000, 2000)])).site();
    expect(told(field).lines[0]).toMatchObject({ asSet: null, measured: 0, asSetText: '' });
    field.pull(stake('A'), stake('B'));
    for (const hole of ['2', '3']) field.set(hole).pullsTo(post(hole), [stake('A'), stake('B')]);
    const [line] = told(field).lines;
    expect(line!.measured).toBe(2);
    expect(line!.asSetText).toMatch(
      /^As set: post \d, the nearest, keeps its outer face \d{4} mm from it, ± \d+ mm; 2 of 7 are measured\. No spare pull guards that post: one misread tape would hide more\. \d+ mm to spare\.$/,
    );
  });
  it('as set and too near is a finding, and within the doubt it is left open', () => {
    const measured = (keep: number) => {
      const field = new Field(plan([boundary(6000, keep)])).site();
      field.pull(stake('A'), stake('B'));
      return field.set('3').pullsTo(post('3'), [stake('A'), stake('B')]);
    };
    const gap = told(measured(100)).lines[0]!.asSet!.gap * 1000;
    expect(told(measured(Math.round(gap))).lines[0]!.asSetText).toMatch(
      /too near the \d+ mm asked for to call\.$/,
    );
    expect(setbacks(measured(Math.round(gap) + 100)).join('\n')).toMatch(
      /^As set, post 3 comes within 3306 mm of Boundary, and 3406 mm must be kept: ask whoever set that line before more is built\.$/m,
    );
  });
  it('every post that is surely too near is named, though one that comes nearer is known too badly to call', () => {
    const field = new Field(plan([boundary(6000, 4000)])).site();
    const short = (change: (gap: LineGap) => LineGap) => {
      const { plan: drawn, laid } = field;
      const line = groundLines(drawn, holesOf(drawn), laid).lines[0]!;
      const set = ['2', '3'].map((hole) => ({ hole, gap: 3.5, doubt: 0.02, checked: true }));
      return shortAsSetText(drawn, line, set.map(change));
    };
    expect(short((each) => each)).toMatch(/^As set, post 2 comes within .*; post 3 comes within /);
    expect(short((each) => (each.hole === '2' ? { ...each, gap: 3.2, doubt: 1 } : each))).toMatch(
      /^As set, post 3 comes within 3500 mm of Boundary, and 4000 mm must be kept/,
    );
  });
  it('a line that is told from A and B stays where it is when B is driven again elsewhere', () => {
    const fromStakes = (station: number) =>
      ({ by: 'pulls', ...tapesTo(station, -1000), side: 'right' }) as const;
    const tapesTo = (x: number, y: number) => ({
      fromA: mm(Math.hypot(x, y)),
      fromB: mm(Math.hypot(x - 8000, y)),
    });
    const line: GroundLine = {
      name: 'Boundary',
      kind: 'boundary',
      from: fromStakes(1000),
      to: fromStakes(7000),
    };
    const field = new Field(plan([line])).site();
    for (let i = 0; i < 2; i++) field.pull(stake('A'), stake('B'));
    for (const hole of ['2', '3']) field.set(hole).pullsTo(post(hole), [stake('A'), stake('B')]);
    const before = told(field).lines[0]!.planned!.gap;
    field.off(stake('B'), -0.3, 0);
    field.add({ kind: 'stand', thing: stake('B'), event: 'driven' });
    field.pull(stake('A'), stake('B'));
    for (const hole of ['2', '3']) field.pull(stake('B'), post(hole));
    expect(situate(field.log).measured!.baseline!.length).toBeCloseTo(7.7, 3);
    expect(told(field).lines[0]!.planned!.gap).toBeCloseTo(before, 6);
  });
});
