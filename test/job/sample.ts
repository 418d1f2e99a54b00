import type { Body, Entry, EntryKind } from '../../src/job/entry-schema.ts';
import { type Length, typedLength } from '../../src/job/length.ts';
import type { Plan } from '../../src/job/plan-schema.ts';

/** A length as typed in a job in feet, inches and sixteenths. */
export function inches(typed: string): Length {
  const length = typedLength(typed, 'ft-in-16', 'Sample', { min: -300 });
  if (!length.ok) throw new Error(length.problem.text);
  return length.value;
}

/** Eight posts on a ring round a pier. */
export const samplePlan: Plan = {
  name: 'Garden room',
  units: 'ft-in-16',
  shape: { kind: 'ring', count: 8, sizeBy: 'radius', size: inches('9 0'), front: 'post', pier: true },
  each: {
    holds: { kind: 'post', nominal: '6×6', width: inches('5 1/2'), depth: inches('5 1/2'), turned: 'centre' },
    top: inches('3 0'),
    holeDiameter: inches('1 4'),
  },
  pier: {
    holds: { kind: 'pier', diameter: inches('1 0') },
    top: inches('0 6'),
    holeDiameter: inches('1 6'),
  },
  overrides: { '3': { top: inches('3 0 1/2') } },
  rules: { frostDepth: inches('3 0'), gravel: inches('0 6'), embedment: inches('3 6') },
  tolerances: { position: inches('1/2'), spacing: inches('3/8'), plumb: 0.002, level: inches('1/8') },
  instruments: {
    tapeLength: inches('100 0'),
    tapeError: inches('1/16'),
    tapeErrorPerMetre: 0.0001,
    plumbError: 0.001,
    rodError: inches('1/16'),
  },
};

const post = (hole: string) => ({ kind: 'post', hole }) as const;
const stake = (label: string) => ({ kind: 'stake', label }) as const;

/** One body of every kind but the strike, which needs a target. */
export const sampleBodies: { readonly [K in Exclude<EntryKind, 'strike'>]: Extract<Body, { kind: K }> } = {
  plan: { kind: 'plan', plan: samplePlan },
  site: {
    kind: 'site',
    a: { right: inches('-12 0'), front: inches('-15 6') },
    b: { right: inches('12 0'), front: inches('-15 6') },
    chosenBy: 'tool',
  },
  stand: { kind: 'stand', thing: stake('A'), event: 'driven' },
  pull: {
    kind: 'pull',
    from: { thing: stake('A'), touch: { at: 'nail' } },
    to: { thing: post('4'), touch: { at: 'face', side: 'front' } },
    reading: inches('18 6 5/16'),
    hold: { how: 'level' },
  },
  plumb: {
    kind: 'plumb',
    hole: '4',
    side: 'right',
    offset: inches('1/8'),
    over: inches('4 0'),
    leans: 'out',
  },
  rod: { kind: 'rod', setup: '1', on: { point: 'top', hole: 'P' }, reading: inches('4 6') },
  dug: {
    kind: 'dug',
    hole: '4',
    depth: inches('3 8'),
    width: inches('1 4'),
    obstruction: 'rock',
    note: 'shelf on the north side',
  },
  check: { kind: 'check', item: 'utilities', done: true },
  pour: { kind: 'pour', hole: '4', bags: 4 },
  note: { kind: 'note', hole: '4', text: 'spoil heap moved' },
  reference: {
    kind: 'reference',
    thing: stake('C'),
    at: { right: inches('0 0'), front: inches('20 0') },
  },
  offset: {
    kind: 'offset',
    from: stake('A'),
    to: stake('C'),
    of: { thing: post('4'), touch: { at: 'centre' } },
    station: inches('12 3 1/2'),
    offset: inches('0 2 3/4'),
    side: 'left',
  },
  difference: {
    kind: 'difference',
    by: 'water-level',
    from: { point: 'ground', hole: '4' },
    to: { point: 'benchmark' },
    height: inches('1 2 1/4'),
    higher: 'to',
  },
  'two-peg': {
    kind: 'two-peg',
    middle: { a: inches('4 3'), b: inches('5 1') },
    near: { a: inches('4 8'), b: inches('5 6 1/4') },
    sights: { a: inches('6 0'), b: inches('106 0') },
  },
  twist: {
    kind: 'twist',
    hole: '4',
    side: 'front',
    from: { by: 'string', from: post('3'), to: post('5') },
    anticlockwise: inches('0 2 1/4'),
    clockwise: inches('0 2'),
  },
};

/** An entry with an id made from its place, for logs that are written out by hand. */
export const entry = (seq: number, body: Body, id = `entry-${String(seq).padStart(4, '0')}`): Entry => ({
  id,
  seq,
  at: '2026-05-02T14:03:07.000Z',
  body,
});

/** A log with every kind in it. */
export function sampleLog(): Entry[] {
  const bodies: Body[] = Object.values(sampleBodies);
  const log = bodies.map((body, i) => entry(i + 1, body));
  return [...log, entry(log.length + 1, { kind: 'strike', entry: log[3]!.id, reason: 'misread' })];
}
