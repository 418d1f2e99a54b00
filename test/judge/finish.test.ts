import { describe, expect, it } from 'vitest';
import { assess } from '../../src/judge/assess.ts';
import { Field, holeStake, noise, post, stake } from './field.ts';

const HOLES = ['1', '2', '3', '4', '5', '6'] as const;
const A = stake('A');
const B = stake('B');

/** A whole job done as it should be, in the trade's order, with the noise of its instruments. */
class Job {
  readonly field = new Field();
  readonly n: (sigma: number) => number;

  constructor(seed: number) {
    this.n = noise(seed);
  }

  ring(thing: (hole: string) => ReturnType<typeof post>, side: 'left' | undefined): void {
    HOLES.forEach((hole, i) => {
      const next = thing(HOLES[(i + 1) % HOLES.length]!);
      this.field.pull(thing(hole), next, { error: this.n(0.002), ...(side ? { side } : {}) });
    });
  }

  stake(): void {
    this.field.site();
    this.field.pull(A, B, { error: this.n(0.002) });
    this.field.pull(A, B, { error: this.n(0.002) });
    for (const hole of HOLES) {
      this.field.add({ kind: 'stand', thing: holeStake(hole), event: 'driven' });
      this.field.pullsTo(holeStake(hole), [A, B], [this.n(0.002), this.n(0.002)]);
    }
    this.ring(holeStake, undefined);
    for (const [from, to] of [
      ['1', '3'],
      ['3', '5'],
      ['5', '1'],
      ['2', '4'],
      ['4', '6'],
      ['6', '2'],
    ] as const)
      this.field.pull(holeStake(from), holeStake(to), { error: this.n(0.002) });
    this.field.tick('utilities');
    for (const hole of HOLES) this.field.tick('ties', hole);
  }

  dig(): void {
    for (const hole of HOLES) this.field.dig(hole).dig(hole);
    this.field.tick('clean').tick('gravel').tick('inspection');
  }

  set(): void {
    for (const hole of HOLES) {
      this.field.set(hole);
      for (const from of [A, B]) this.field.pull(from, post(hole), { error: this.n(0.002), side: 'back' });
    }
    this.ring(post, 'left');
    this.field.benchmark();
    for (const hole of HOLES) {
      for (const side of ['front', 'left', 'back', 'right'] as const)
        this.field.plumb(hole, side, this.n(0.7));
      this.field.top(hole, 800 + this.n(1));
      this.field.top(hole, 800 + this.n(1));
    }
    this.field.benchmark();
    this.field.tick('clean').tick('room').tick('braced').tick('weather');
  }
}

describe('a whole job done right', () => {
  for (const seed of [11, 12, 13]) {
    it(`opens every gate in its turn (seed ${seed})`, () => {
      const job = new Job(seed);
      const gates = (which: 'digGate' | 'pourGate') =>
        assess(job.field.log)
          .holes.filter(({ hole }) => hole !== 'P')
          .map((hole) =>
            `${hole.hole} ${hole[which].items.filter(({ green }) => !green).map(({ item }) => item)}`.trim(),
          );
      job.stake();
      expect(gates('digGate')).toEqual([...HOLES]);
      expect(assess(job.field.log).holes.every(({ pourGate }) => !pourGate.open)).toBe(true);
      job.dig();
      job.set();
      expect(gates('pourGate')).toEqual([...HOLES]);
      const { holes, findings } = assess(job.field.log);
      expect(findings).toEqual([]);
      for (const { hole, set } of holes)
        if (hole !== 'P')
          expect([set.verdict, set.headline]).toEqual([
            'in',
            `Post ${hole} is in: place, plumb, height and spacing.`,
          ]);
    });
  }

  it('claims no spacing before there is one: of the first post that stands, and of a pier that has no neighbours', () => {
    const { field } = new Job(11);
    field.site().pull(A, B);
    field.pull(A, B);
    for (const [hole, side, height] of [
      ['1', 'back', 800],
      ['P', undefined, 500],
    ] as const) {
      field.set(hole);
      for (const from of [A, B, A, B]) field.pull(from, post(hole), side ? { side } : {});
      for (const face of ['front', 'left', 'back', 'right'] as const) field.plumb(hole, face);
      field.benchmark();
      for (let i = 0; i < 2; i++) field.top(hole, height);
      field.benchmark();
    }
    const { holes } = assess(field.log);
    const said = (hole: string) => holes.find((one) => one.hole === hole)!;
    expect(said('1').set.headline).toBe(
      'Post 1 is in: place, plumb and height. Its spacing to post 6 and post 2 is not measured yet.',
    );
    expect(said('P').set.headline).toBe('Pier P is in: place, plumb and height.');
    expect(said('P').pourGate.items.find(({ item }) => item === 'spacing')).toEqual({
      item: 'spacing',
      green: true,
      text: 'It has no neighbours whose spacing counts.',
    });
  });

  it('a nudge shuts the gate until all that it may have moved is measured again', () => {
    const job = new Job(11);
    job.stake();
    job.dig();
    job.set();
    job.field.add({ kind: 'stand', thing: post('2'), event: 'nudged' });
    const gate = assess(job.field.log).holes.find(({ hole }) => hole === '2')!.pourGate;
    expect(gate.open).toBe(false);
    expect(gate.items.filter(({ green }) => !green).map(({ item }) => item)).toEqual([
      'position',
      'checked',
      'spacing',
      'plumb',
      'level',
      'room',
      'braced',
    ]);
  });
});
