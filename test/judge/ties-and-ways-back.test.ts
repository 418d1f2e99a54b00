import { describe, expect, it } from 'vitest';
import { distance, type Vec } from '../../src/geometry/point.ts';
import { toPlan } from '../../src/geometry/rigid.ts';
import type { Body, Thing } from '../../src/job/entry-schema.ts';
import { roundedLength } from '../../src/job/length.ts';
import { thingKey } from '../../src/job/log.ts';
import { assessSituation } from '../../src/judge/assess.ts';
import { recordedTies, tiesWords } from '../../src/judge/recorded-ties.ts';
import { situate } from '../../src/judge/situation.ts';
import { type JobView, viewOf } from '../../src/judge/view.ts';
import { waysBack } from '../../src/judge/ways-back.ts';
import { stringsOf } from '../../src/screens/stake/strings/strings-of.ts';
import { tiesOf } from '../../src/stakeout/ties.ts';
import { holeStake, logOf, ORDER, pull, READY, stake, staked, stand } from '../screens/stake/field-day.ts';

const HOLE = ORDER[0]!;
const LOG: Body[] = [...READY, ...staked(HOLE)];
const situation = situate(logOf(LOG));
const { asked, plan } = stringsOf(situation)!;
const site = asked.holes.find(({ label }) => label === HOLE)!;
const ties = tiesOf(site, asked, plan);
const viewAfter = (more: readonly Body[]): JobView => viewOf(situate(logOf([...LOG, ...more])))!;

const meant = (thing: Extract<Thing, { kind: 'stake' | 'nail' }>, at: Vec): Body => {
  const place = toPlan(situation.laid!.motion, at);
  return {
    kind: 'reference',
    thing,
    at: { right: roundedLength(place.x, 'mm'), front: roundedLength(place.y, 'mm') },
  };
};

/** Driven where it is meant to stand. */
const driven = (thing: Extract<Thing, { kind: 'stake' | 'nail' }>, at: Vec): Body[] => [
  meant(thing, at),
  stand(thing),
];
const tied = (thing: Thing, at: Vec): Body[] => [
  pull(stake('A'), thing, distance(asked.a, at)),
  pull(stake('B'), thing, distance(asked.b, at)),
];

const [pair] = ties.offsets;
const [one, other] = pair!.stakes.map(({ label }) => ({ kind: 'stake', label }) as const);
const OFFSETS: Body[] = [...driven(one!, pair!.stakes[0].site), ...driven(other!, pair!.stakes[1].site)];
const read = (from: Thing, to: Thing, station: number): Body => ({
  kind: 'offset',
  from,
  to,
  of: { thing: holeStake(HOLE), touch: { at: 'nail' } },
  station: roundedLength(station, 'mm'),
  side: 'on',
});
const OFFSET_TIE: Body[] = [...OFFSETS, read(one!, other!, pair!.away)];

describe('ties that were read', () => {
  it('count the tapes from A and B as one, and neighbours not at all', () => {
    const found = recordedTies(viewAfter(ORDER.slice(1, 3).flatMap(staked)), HOLE);
    expect(tiesWords(found)).toBe('tapes from A and B');
  });

  it('do not count a string from a stake that stands where another hole will be dug', () => {
    const next = asked.holes.find(({ label }) => label !== HOLE)!;
    const beside = { x: next.site.x + next.holeDiameter / 2 + 0.1, y: next.site.y };
    const view = viewAfter([
      ...driven(one!, beside),
      ...driven(other!, pair!.stakes[1].site),
      read(one!, other!, pair!.away),
    ]);
    expect(recordedTies(view, HOLE).map(({ how }) => how)).toEqual(['tapes']);
  });

  it('count a place along a string between offset stakes as another, and then the gate asks for no tick', () => {
    const view = viewAfter(OFFSET_TIE);
    expect(recordedTies(view, HOLE).map(({ how }) => how)).toEqual(['string', 'tapes']);
    const gate = (more: readonly Body[]) => {
      const now = situate(logOf([...LOG, ...more]));
      const { digGate } = assessSituation(now).holes.find(({ hole }) => hole === HOLE)!;
      return digGate.items.find(({ item }) => item === 'ties')!;
    };
    expect(gate([]).green).toBe(false);
    expect(gate([]).text).toContain('One is read: tapes from A and B.');
    expect(gate(OFFSETS).green).toBe(false);
    expect(gate(OFFSET_TIE)).toMatchObject({ green: true });
    expect(gate(OFFSET_TIE).text).toContain(`string ${one!.label} to ${other!.label}`);
  });

  it('do not count what hangs on the same stake twice', () => {
    const [c, d] = [stake('C') as typeof one, stake('D') as typeof one];
    const far = { x: -4, y: 4 };
    const more = [...driven(c!, far), ...tied(c!, far), pull(c!, holeStake(HOLE), distance(far, site.site))];
    expect(recordedTies(viewAfter(more), HOLE)).toHaveLength(1);
    const there = { x: asked.b.x + 4, y: 4 };
    const both = [
      ...more,
      ...driven(d!, there),
      ...tied(d!, there),
      pull(d!, holeStake(HOLE), distance(there, site.site)),
    ];
    expect(recordedTies(viewAfter(both), HOLE)).toHaveLength(2);
  });

  it('fall with what they hang on: the hole’s stake, an offset stake', () => {
    const moved = (thing: Thing) => [...OFFSET_TIE, stand(thing, 'moved')];
    expect(recordedTies(viewAfter(moved(holeStake(HOLE))), HOLE)).toEqual([]);
    expect(recordedTies(viewAfter(moved(one!)), HOLE).map(({ how }) => how)).toEqual(['tapes']);
  });

  it('do not count what stands where the hole is dug', () => {
    const near = { x: site.site.x + site.holeDiameter / 2 + 0.1, y: site.site.y };
    const more = [...driven(one!, near), ...driven(other!, pair!.stakes[1].site), read(one!, other!, 0.5)];
    expect(recordedTies(viewAfter(more), HOLE).map(({ how }) => how)).toEqual(['tapes']);
  });

  it('leave what is measured as it was: an offset stake without tapes of its own moves nothing', () => {
    const at = (view: JobView) => view.points.get(thingKey(holeStake(HOLE)))!.fix!.place;
    expect(distance(at(viewAfter(OFFSET_TIE)), at(viewAfter([])))).toBeLessThan(1e-4);
    expect(viewAfter(OFFSET_TIE).measured.suspicions).toEqual([]);
  });
});

describe('ways back to a centre', () => {
  const dug: Body = {
    kind: 'dug',
    hole: HOLE,
    depth: roundedLength(1.2, 'mm'),
    width: roundedLength(0.4, 'mm'),
    obstruction: 'none',
  };

  it('by A and B, to the planned lengths, on the planned side', () => {
    const ways = waysBack(viewAfter([dug]), HOLE, new Set())!;
    expect(ways.tapes!.pulls.map(({ expected }) => expected).sort()).toEqual(
      [distance(asked.a, site.site), distance(asked.b, site.site)].sort(),
    );
    expect(ways.noTapes).toBeNull();
  });

  it('without A by what was tied to both before; by nothing where nothing was', () => {
    const gone = new Set([thingKey(stake('A'))]);
    expect(waysBack(viewAfter([dug]), HOLE, gone)!.tapes).toBeNull();
    expect(waysBack(viewAfter([dug]), HOLE, gone)!.noTapes).toBe('one-stands');
    const c = stake('C') as NonNullable<typeof one>;
    const at = { x: site.site.x + 3, y: site.site.y + 3 };
    const ways = waysBack(viewAfter([...driven(c, at), ...tied(c, at), dug]), HOLE, gone)!;
    const fromC = ways.tapes!.pulls.find(({ from }) => thingKey(from.thing) === thingKey(c))!;
    // To a sixteenth of an inch: the tapes to C were read so.
    expect(Math.abs(fromC.expected - Math.hypot(3, 3))).toBeLessThan(0.0016);
    expect(ways.tapes!.error).toBeGreaterThan(0.001);
    expect(ways.tapes!.error).toBeLessThan(0.02);
  });

  it('along a string that was read, put right by how far the stake stood from its mark', () => {
    const ways = waysBack(viewAfter([...OFFSET_TIE, dug]), HOLE, new Set(['stake:A', 'stake:B']))!;
    const [string] = ways.read;
    expect(string).toMatchObject({ from: one, to: other });
    // The stake was read to stand within a sixteenth of its mark.
    expect(Math.abs(string!.station - pair!.away)).toBeLessThan(0.002);
    expect(Math.abs(string!.offset)).toBeLessThan(0.002);
  });

  it('not by a string one of whose stakes is gone', () => {
    const ways = waysBack(viewAfter([...OFFSET_TIE, dug]), HOLE, new Set([thingKey(one!)]))!;
    expect(ways.read).toEqual([]);
  });
});
