import type { Body, Entry, PullEnd, Side, Thing, Touch } from '../../src/job/entry-schema.ts';
import type { Length } from '../../src/job/length.ts';
import type { Instruments } from '../../src/job/plan-schema.ts';
import type { SitedHole } from '../../src/plan/hole.ts';

/** A length whose text is as exact as its metres. */
export const metres = (m: number): Length => ({ m, typed: String(m), units: 'm' });

export const INSTRUMENTS: Instruments = {
  tapeLength: metres(30),
  tapeError: metres(0.002),
  tapeErrorPerMetre: 0.0001,
  plumbError: 0.001,
  rodError: metres(0.002),
};

/** Seeded generator (mulberry32), so that every run sees the same numbers. */
export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Standard normal numbers by Box and Muller. */
export function normal(uniform: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

export const stake = (label: string): Thing => ({ kind: 'stake', label });
export const nail = (label: string): Thing => ({ kind: 'nail', label });
export const holeStake = (hole: string): Thing => ({ kind: 'hole-stake', hole });
export const post = (hole: string): Thing => ({ kind: 'post', hole });
export const A = stake('A');
export const B = stake('B');

export function end(thing: Thing, touch?: Touch, height?: number): PullEnd {
  const usual: Touch = thing.kind === 'post' ? { at: 'centre' } : { at: 'nail' };
  return { thing, touch: touch ?? usual, ...(height === undefined ? {} : { height: metres(height) }) };
}

export const face = (side: Side): Touch => ({ at: 'face', side });

/** Writes a log, one entry after another. */
export class Book {
  readonly entries: Entry[] = [];

  write(body: Body): string {
    const seq = this.entries.length + 1;
    const id = `entry-${String(seq).padStart(6, '0')}`;
    this.entries.push({ id, seq, at: '2026-05-01T08:00:00Z', body });
    return id;
  }

  pull(from: Thing | PullEnd, to: Thing | PullEnd, reading: number, slope?: number | 'unknown'): string {
    const hold =
      slope === undefined
        ? ({ how: 'level' } as const)
        : slope === 'unknown'
          ? ({ how: 'slope' } as const)
          : ({ how: 'slope', rise: metres(slope) } as const);
    const asEnd = (one: Thing | PullEnd) => ('thing' in one ? one : end(one));
    return this.write({ kind: 'pull', from: asEnd(from), to: asEnd(to), reading: metres(reading), hold });
  }

  plumb(hole: string, side: Side, lean: number, over = 1): string {
    const leans = lean > 0 ? 'out' : lean < 0 ? 'in' : 'none';
    return this.write({
      kind: 'plumb',
      hole,
      side,
      offset: metres(Math.abs(lean) * over),
      over: metres(over),
      leans,
    });
  }

  rod(setup: string, on: Extract<Body, { kind: 'rod' }>['on'], reading: number): string {
    return this.write({ kind: 'rod', setup, on, reading: metres(reading) });
  }

  stand(thing: Thing, event: 'driven' | 'set' | 'nudged' | 'moved'): string {
    return this.write({ kind: 'stand', thing, event });
  }

  strike(entry: string): string {
    return this.write({ kind: 'strike', entry, reason: 'misread' });
  }
}

export function hole(label: string, x: number, y: number, more: Partial<SitedHole> = {}): SitedHole {
  return {
    label,
    site: { x, y },
    section: { kind: 'post', width: 0.14, depth: 0.14 },
    facing: Math.PI / 2,
    top: 0,
    holeDiameter: 0.4,
    neighbours: [],
    ...more,
  };
}

export const apart = (a: number, b: number): number => Math.abs(a - b);
