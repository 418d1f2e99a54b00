import { add, distance, type Vec } from '../../src/geometry/point.ts';
import { toSite } from '../../src/geometry/rigid.ts';
import type { Body, Check, Decision, Entry, PullEnd, Side, Thing } from '../../src/job/entry-schema.ts';
import type { Length } from '../../src/job/length.ts';
import type { Plan } from '../../src/job/plan-schema.ts';
import { holesOf } from '../../src/plan/holes.ts';
import { layPlan } from '../../src/plan/lay.ts';
import { touchOffset } from '../../src/plan/touch.ts';
import { parseLength, type Units } from '../../src/units/index.ts';

/** A length written as a person would; the text decides. */
export function len(typed: string, units: Units = 'mm'): Length {
  const parsed = parseLength(typed, units, 'Length', { min: Number.NEGATIVE_INFINITY });
  if (!parsed.ok) throw new Error(parsed.problem.text);
  return { m: parsed.value, typed, units };
}

/** Millimetres, kept to a tenth of a micrometre so that a test may set its truth exactly. */
export const mm = (value: number): Length => ({ m: value / 1000, typed: String(value), units: 'mm' });

/** Six posts on a ring of 3 m radius round a pier; tolerances of half an inch and the like, in millimetres. */
export function ringPlan(units: Units = 'mm', change: Partial<Plan> = {}): Plan {
  return {
    name: 'Test ring',
    units,
    shape: { kind: 'ring', count: 6, sizeBy: 'radius', size: mm(3000), front: 'post', pier: true },
    each: {
      holds: { kind: 'post', nominal: '6×6', width: mm(140), depth: mm(140), turned: 'centre' },
      top: mm(800),
      holeDiameter: mm(400),
    },
    pier: { holds: { kind: 'pier', diameter: mm(300) }, top: mm(500), holeDiameter: mm(500) },
    overrides: {},
    rules: { frostDepth: mm(900), gravel: mm(100), embedment: mm(600) },
    tolerances: { position: mm(12), spacing: mm(15), plumb: 0.005, level: mm(6) },
    instruments: {
      tapeLength: mm(30000),
      tapeError: mm(2),
      tapeErrorPerMetre: 0,
      plumbError: 0.001,
      rodError: mm(1),
    },
    ...change,
  };
}

/** Where A and B stand in the plan frame: behind the ring, 8 m apart. */
const SITE = {
  kind: 'site',
  a: { right: mm(-4000), front: mm(-5000) },
  b: { right: mm(4000), front: mm(-5000) },
  chosenBy: 'user',
} as const;

export const stake = (label: string): Thing => ({ kind: 'stake', label });
export const post = (hole: string): Thing => ({ kind: 'post', hole });
export const holeStake = (hole: string): Thing => ({ kind: 'hole-stake', hole });
export const dugHole = (hole: string): Thing => ({ kind: 'dug-hole', hole });

/**
 * A field book written against a known truth. Places default to the plan's; tapes read the truth to the micrometre
 * unless a test adds an error, so that every doubt in a result comes from the stated sigmas.
 */
export class Field {
  readonly log: Entry[] = [];
  readonly plan: Plan;
  readonly truth = new Map<string, Vec>();
  #at = Date.UTC(2026, 4, 1, 8);

  constructor(plan: Plan = ringPlan()) {
    this.plan = plan;
    this.add({ kind: 'plan', plan });
  }

  /** The plan as it lies on `SITE`. */
  get laid() {
    const laid = layPlan(SITE, holesOf(this.plan));
    if (!laid.ok) throw new Error(laid.problem.text);
    return laid.value;
  }

  add(body: Body): string {
    const seq = this.log.length + 1;
    const id = `entry-${String(seq).padStart(4, '0')}`;
    this.#at += 60_000;
    this.log.push({ id, seq, at: new Date(this.#at).toISOString(), body });
    return id;
  }

  wait(hours: number): this {
    this.#at += hours * 3600_000;
    return this;
  }

  site(): this {
    this.add(SITE);
    this.add({ kind: 'stand', thing: stake('A'), event: 'driven' });
    this.add({ kind: 'stand', thing: stake('B'), event: 'driven' });
    return this;
  }

  /** Moves the truth of a thing off its planned place, in the plan's own directions. */
  off(thing: Thing, right: number, front: number): this {
    const { motion } = this.laid;
    const zero = toSite(motion, { x: 0, y: 0 });
    const moved = toSite(motion, { x: right, y: front });
    const at = this.placeOf(thing);
    this.truth.set(keyOf(thing), { x: at.x + moved.x - zero.x, y: at.y + moved.y - zero.y });
    return this;
  }

  placeOf(thing: Thing): Vec {
    const known = this.truth.get(keyOf(thing));
    if (known) return known;
    if (thing.kind === 'stake' || thing.kind === 'nail')
      return thing.label === 'B' ? { x: this.laid.baseline, y: 0 } : { x: 0, y: 0 };
    return this.laid.holes.find(({ label }) => label === thing.hole)!.site;
  }

  /** Logs a level pull between two things, at the nail or at the middle of a post's named face. */
  pull(from: Thing, to: Thing, { error = 0, side }: { error?: number; side?: Side } = {}): string {
    const ends = [this.#end(from, undefined), this.#end(to, side)] as const;
    const reading = distance(this.#touch(ends[0], to), this.#touch(ends[1], from)) + error;
    return this.add({
      kind: 'pull',
      from: ends[0],
      to: ends[1],
      reading: mm(reading * 1000),
      hold: { how: 'level' },
    });
  }

  /** What a level tape would truly read between two things, each touched at its nail or at a named face. */
  distanceOf(from: Thing, fromSide: Side, to: Thing, toSide: Side): number {
    const [near, far] = [this.#end(from, fromSide), this.#end(to, toSide)];
    return distance(this.#touch(near, to), this.#touch(far, from));
  }

  #end(thing: Thing, side: Side = 'front'): PullEnd {
    if (thing.kind === 'dug-hole') return { thing, touch: { at: 'centre' } };
    if (thing.kind !== 'post') return { thing, touch: { at: 'nail' } };
    if (thing.hole === 'P') return { thing, touch: { at: 'near-side' } };
    return { thing, touch: { at: 'face', side } };
  }

  #touch({ thing, touch }: PullEnd, other: Thing): Vec {
    const at = this.placeOf(thing);
    const hole =
      thing.kind === 'post' ? this.laid.holes.find(({ label }) => label === thing.hole) : undefined;
    const there = this.placeOf(other);
    const toward = Math.atan2(there.y - at.y, there.x - at.x);
    const offset = touchOffset(hole?.section ?? null, hole?.facing ?? 0, touch, toward);
    return offset ? add(at, offset) : at;
  }

  set(hole: string): this {
    this.add({ kind: 'stand', thing: post(hole), event: 'set' });
    return this;
  }

  /** Pulls to a post from A, B and other posts. */
  pullsTo(thing: Thing, from: readonly Thing[], errors: readonly number[] = []): this {
    from.forEach((other, i) => {
      this.pull(other, thing, { error: errors[i] ?? 0 });
    });
    return this;
  }

  plumb(hole: string, side: Side, offset = 0): string {
    return this.add({
      kind: 'plumb',
      hole,
      side,
      offset: mm(Math.abs(offset)),
      over: mm(1000),
      leans: offset === 0 ? 'none' : offset > 0 ? 'out' : 'in',
    });
  }

  /** Reads the rod on the benchmark: the level then looks along a line 1500 mm above it. */
  benchmark(setup = '1'): string {
    return this.add({ kind: 'rod', setup, on: { point: 'benchmark' }, reading: mm(1500) });
  }

  /** Reads the rod on a top that stands `height` mm above the benchmark. */
  top(hole: string, height = 800, setup = '1'): string {
    return this.add({ kind: 'rod', setup, on: { point: 'top', hole }, reading: mm(1500 - height) });
  }

  dig(
    hole: string,
    depth = 1020,
    width = 400,
    obstruction: Extract<Body, { kind: 'dug' }>['obstruction'] = 'none',
  ) {
    this.add({ kind: 'dug', hole, depth: mm(depth), width: mm(width), obstruction });
    return this;
  }

  tick(item: Check, hole?: string, done = true): this {
    this.add({ kind: 'check', item, done, ...(hole === undefined ? {} : { hole }) });
    return this;
  }

  /** Whoever is responsible has decided on something about a hole. */
  decide(decides: Decision, hole: string): this {
    const note = 'Ms Lind: it will do';
    this.add({ kind: 'check', item: 'inspection', hole, done: true, decides, note });
    return this;
  }

  strike(entry: string): this {
    this.add({ kind: 'strike', entry, reason: 'misread' });
    return this;
  }
}

const keyOf = (thing: Thing): string => JSON.stringify(thing);

/** Mulberry32: a small seeded generator, so that a failing run can be run again. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Normal noise from a seeded generator (Box–Muller). */
export function noise(seed: number): (sigma: number) => number {
  const random = seeded(seed);
  return (sigma) => sigma * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
