import { describe, expect, it } from 'vitest';
import type { Body, Side } from '../../src/job/entry-schema.ts';
import { assess } from '../../src/judge/assess.ts';
import { levelErrorWords, plumbReaderOf } from '../../src/judge/level-error.ts';
import { plumbDoubt } from '../../src/judge/plumb-belief.ts';
import { situate } from '../../src/judge/situation.ts';
import { viewOf } from '../../src/judge/view.ts';
import { Field, mm, post, stake } from './field.ts';
import { holeOf } from './ring-job.ts';

function placed(...reads: readonly [Side, number][]): Field {
  const field = new Field().site();
  for (let i = 0; i < 2; i++) field.pull(stake('A'), stake('B'));
  field.set('1');
  for (let i = 0; i < 2; i++) field.pullsTo(post('1'), [stake('A'), stake('B')]);
  for (const [side, offset] of reads) field.plumb('1', side, offset);
  return field;
}

/** Both readings of one face, past it in millimetres over a metre: the marked end up, then down. */
function both(field: Field, side: Side, up: number, down: number): Field {
  const one = (offset: number) => ({
    offset: mm(Math.abs(offset)),
    leans: offset === 0 ? ('none' as const) : offset > 0 ? ('out' as const) : ('in' as const),
  });
  const body: Body = { kind: 'plumb', hole: '1', side, over: mm(1000), ...one(up), turned: one(down) };
  field.add(body);
  return field;
}

const plumbOf = (field: Field) => holeOf(assess(field.log), '1').set.plumb;
const viewIn = (field: Field) => viewOf(situate(field.log))!;

describe('a post read with the level turned', () => {
  it('is as plumb as the two ways tell together, and two such faces guard each other', () => {
    const plumb = plumbOf(both(both(placed(), 'front', 4, -4), 'left', 4, -4));
    expect(plumb).toMatchObject({ verdict: 'in', checked: true, error: expect.closeTo(0, 9) });
  });
  it('one face alone guards nothing: what was misread would look like the level’s own error', () => {
    const plumb = plumbOf(both(placed(['left', 0]), 'front', 4, -4));
    expect(plumb.checked).toBe(false);
    expect(plumb.why).toMatch(
      /^A misread level would go unseen: hold it on the inner and clockwise faces too/,
    );
  });
  it('two faces that tell of different errors do not agree', () => {
    const plumb = plumbOf(both(both(placed(), 'front', 4, -4), 'left', 9, -9));
    expect(plumb.checked).toBe(false);
    expect(plumb.why).toMatch(/do not agree/);
  });
  it('no level is so far out of true: one of the two was misread', () => {
    expect(plumbOf(both(placed(['left', 0]), 'front', 15, -15)).why).toMatch(/do not agree/);
  });
});

describe('a lean read by the bubble', () => {
  const marks = (of: number) =>
    ({ read: { by: 'bubble', marks: of, perMark: 0.02 }, offset: mm(of * 20), leans: 'out' }) as const;

  it('agrees with another a quarter of a mark off, for it is told no finer', () => {
    const field = placed(['left', 0], ['right', 0]);
    const log = (of: number) =>
      field.add({ kind: 'plumb', hole: '1', side: 'front', over: mm(1000), ...marks(of) });
    log(0.25);
    const asked = { hole: '1', side: 'front', shown: 0.01, read: marks(0.5).read } as const;
    expect(plumbDoubt(viewIn(field), asked)).toBeNull();
    log(0.5);
    expect(plumbOf(field).why).not.toMatch(/do not agree/);
  });
});

describe('what is said of the level itself', () => {
  it('how far it is out and that this is taken off; or that it shows no error', () => {
    const off = viewIn(both(placed(), 'front', 4, -4));
    expect(levelErrorWords(off, plumbReaderOf(off).errorOf(1)!)).toBe(
      'By itself this level shows a top 4 mm in 1 m too far out with its marked end up, as turning it once tells: that is taken off.',
    );
    const true_ = viewIn(both(placed(), 'front', 1, 0));
    expect(levelErrorWords(true_, plumbReaderOf(true_).errorOf(1)!)).toBe(
      'Turned end for end once, this level shows no error of its own.',
    );
  });
  it('what it reads on a post that is right is its own error', () => {
    const field = both(both(placed(), 'front', 24, 16), 'left', 4, -4);
    const { plumbNudge } = holeOf(assess(field.log), '1').set;
    expect(plumbNudge!.levels[0]).toMatchObject({ gap: expect.closeTo(0.004, 9) });
    expect(plumbNudge!.levels[0]!.words).toBe(
      'Level on the outer face, its marked end up: it shows the top 4 mm out over 1000 mm, by its own error; now the top leans 20 mm out',
    );
  });
});

describe('a plumb reading that is hard to believe', () => {
  const view = viewIn(placed(['front', 8], ['left', -3]));
  const doubt = (side: Side, lean: number) => plumbDoubt(view, { hole: '1', side, shown: lean / 1000 });

  it('is believed where it fits', () => {
    expect(doubt('back', -8)).toBeNull();
    expect(doubt('back', -10)).toBeNull();
    expect(doubt('right', 3)).toBeNull();
  });
  it('with the level’s own error in it, by what the level ought to show', () => {
    const asked = { hole: '1', side: 'back', own: 0.006 } as const;
    expect(plumbDoubt(view, { ...asked, shown: -0.002 })).toBeNull();
    expect(plumbDoubt(view, { ...asked, shown: -0.008 })).toMatch(/ought to show the top 2 mm in 1 m in/);
  });
  it('out and in swapped is named', () => {
    expect(doubt('back', 8)).toBe(
      'By what was read before, this face ought to show the top 8 mm in 1 m in. Out and in swapped would explain it. Read it again, or keep it as read.',
    );
  });
  it('the wrong face is named', () => {
    expect(doubt('back', 3)).toMatch(/It fits the clockwise face of post 1: is the level on that one\?/);
  });
  it('without a reading that way only what no post does is asked about', () => {
    const fresh = viewIn(placed());
    expect(plumbDoubt(fresh, { hole: '1', side: 'front', shown: 0.03 })).toBeNull();
    expect(plumbDoubt(fresh, { hole: '1', side: 'front', shown: 0.2 })).toMatch(
      /^A top 200 mm in 1 m off plumb is more than a post that stands by eye\./,
    );
  });
});
