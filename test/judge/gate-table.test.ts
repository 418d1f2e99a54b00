import { describe, expect, it } from 'vitest';
import type { Decision } from '../../src/job/entry-schema.ts';
import { gateReason } from '../../src/judge/gate-reasons.ts';
import type { GateItem } from '../../src/judge/types.ts';
import { fixAt, leanOf, pointAt } from './fake-view.ts';
import { dugHole, type Field, mm, post, ringPlan, stake } from './field.ts';
import { itemOf, reds } from './gate-items.ts';
import { type Change, dug, gate, postAt, secondPost } from './pour-book.ts';

/** What makes one item red while all the others are as they were, and what makes it green again. */
interface Row {
  readonly red: Change;
  readonly green?: Change;
  /** Items that cannot but go with it. */
  readonly also?: readonly GateItem['item'][];
}

const LACKS = { by: 0.1, text: 'Hole 1 is 100 mm less deep than the rules ask.' };
const asking = (what: string, holes?: string[]) =>
  ringPlan('mm', { asks: [{ what, ...(holes ? { holes } : {}) }] });
const SLEEVE = 'conduit sleeve';
const askFor =
  (ticked: boolean): NonNullable<Change['after']> =>
  (f) => {
    f.add({ kind: 'plan', plan: asking(SLEEVE) });
    if (ticked) f.add({ kind: 'check', hole: '1', item: 'asked', asked: SLEEVE, done: true });
  };
const bought =
  (length: number): NonNullable<Change['after']> =>
  (f) => {
    f.add({ kind: 'plan', plan: ringPlan('mm', { supplies: { bought: mm(length) } }) });
  };
const skipping = (...skip: string[]): Change => ({ skip });

const ROWS: Partial<Record<GateItem['item'], Row>> = {
  baseline: { red: { baselineTrouble: 'Stake A has moved.' } },
  dug: { red: skipping('dug'), also: ['depth', 'width', 'obstruction'] },
  depth: { red: { after: dug(950) } },
  width: { red: { after: dug(1020, 370) } },
  shallower: {
    red: { lacks: LACKS },
    green: { lacks: LACKS, after: (f) => void f.decide('shallower', '1') },
  },
  obstruction: {
    red: {
      after: (f) =>
        void f.dig('1', 1020, 400, 'rock').tick('clean', '1').tick('gravel', '1').tick('room', '1'),
    },
    green: { after: dug(1020, 400, 'rock') },
    also: ['inspection'],
  },
  clean: { red: skipping('clean', 'clean still') },
  gravel: { red: skipping('gravel') },
  set: {
    red: {
      skip: ['set', 'front', 'back', 'left', 'right', 'top', 'top again'],
      measured: { points: [], heights: [] },
    },
    also: ['position', 'checked', 'spacing', 'plumb', 'level', 'room'],
  },
  position: { red: { measured: postAt(0.03) } },
  checked: { red: { measured: postAt(0, {}, 0.002, Number.POSITIVE_INFINITY) } },
  spacing: { red: { before: (f) => void f.set('2'), measured: secondPost(0.05) } },
  plumb: { red: { measured: postAt(0, { lean: leanOf(0.01, 0) }) } },
  level: { red: skipping('top again') },
  room: { red: skipping('room') },
  bought: { red: { after: bought(1700) }, green: { after: bought(1800) } },
  braced: { red: skipping('braced') },
  inspection: { red: skipping('inspection') },
  weather: { red: skipping('weather') },
  asked: { red: { after: askFor(false) }, green: { after: askFor(true) } },
};
const rows = Object.entries(ROWS) as [GateItem['item'], Row][];

describe('every item of the pour’s gate', () => {
  it.each(rows)('%s can be red, and then nothing opens', (item, { red, also = [] }) => {
    const shut = gate(red);
    expect(shut.open).toBe(false);
    expect([...reds(shut)].sort()).toEqual([item, ...also].sort());
    expect(itemOf(shut, item).text).toMatch(/^[A-Z].*\.$/s);
  });

  it.each(rows)('%s can be green, and then it all opens', (item, { green = {} }) => {
    const open = gate(green);
    expect(reds(open)).toEqual([]);
    expect(open.open).toBe(true);
    if (item !== 'baseline') expect(itemOf(open, item).green).toBe(true);
  });

  it('is in the table, whatever is wrong', () => {
    const all = new Set(
      rows.flatMap(([, { red, green = {} }]) =>
        [red, green].flatMap((c) => gate(c).items.map(({ item }) => item)),
      ),
    );
    expect([...all].sort()).toEqual([...rows.map(([item]) => item)].sort());
  });

  it.each(rows)('%s has its reason and its source', (item) => {
    const { reason, source } = gateReason(item);
    expect(reason).toMatch(/^[A-Z].*\.$/s);
    expect(source).toMatch(/\S/);
  });

  it('stays red while what it goes by is unmeasured or unchecked', () => {
    const UNMEASURED: Change[] = [
      { measured: { points: [pointAt(post('1'), null, { lean: leanOf(0, 0) })] } },
      { measured: postAt(0, {}, 0.002, Number.POSITIVE_INFINITY) },
      { measured: postAt(0, { lean: null }), skip: ['left', 'right'] },
      { skip: ['back', 'right'] },
      { skip: ['top', 'top again'], measured: { heights: [] } },
      { skip: ['benchmark again'] },
      { skip: ['clean', 'clean still'] },
    ];
    for (const change of UNMEASURED) expect(gate(change).open).toBe(false);
  });
});

describe('the room item', () => {
  const middle = (right: number, more: { unseen?: number; width?: number; tick?: boolean } = {}): Change => ({
    ...(more.tick ? {} : { skip: ['room'] }),
    before: (f) => {
      f.off(dugHole('1'), right, 0);
      f.dig('1', 1020, more.width);
      f.pull(stake('A'), dugHole('1'));
    },
    after: (f) => {
      f.dig('1', 1020, more.width).tick('clean', '1').tick('gravel', '1').tick('inspection', '1');
      if (more.tick) f.tick('room', '1');
    },
    measured: {
      points: [
        ...(postAt(0).points ?? []),
        pointAt(dugHole('1'), fixAt(postAt(right).points![0]!.fix!.place, 0.002, more.unseen)),
      ],
    },
  });

  it('is green by the middle as measured, without a tick', () => {
    expect(itemOf(gate(middle(0.01)), 'room')).toEqual({
      item: 'room',
      green: true,
      text: 'Room all round post 1: 94 mm where it is tightest.',
    });
  });
  it('asks for the gap at the post while nothing guards the middle, and takes the tick', () => {
    const unseen = Number.POSITIVE_INFINITY;
    expect(itemOf(gate(middle(0.01, { unseen })), 'room')).toMatchObject({ green: false });
    expect(itemOf(gate(middle(0.01, { unseen, tick: true })), 'room')).toMatchObject({ green: true });
  });
  it('is not ticked away where the side measures too tight', () => {
    const tight = middle(0.075, { width: 390, tick: true });
    const after = (f: Field) => {
      tight.after?.(f);
      f.decide('room', '1');
    };
    const item = itemOf(gate({ ...tight, after }), 'room');
    expect(item.green).toBe(false);
    expect(item.text).toMatch(/Shave \d+ mm off the side that lies anticlockwise seen from above\./);
  });
  it('waits for a decision off the core of the footing, whatever the gap, and is green once it is decided', () => {
    const off: Change = { ...middle(0.075, { width: 460, tick: true }), skip: ['dug'] };
    // The routine inspection is none, and neither is a decision on something else.
    const decidedOn = (decides: Decision): Change => ({
      ...off,
      after: (f) => {
        off.after?.(f);
        f.decide(decides, '1');
      },
    });
    expect(itemOf(gate(off), 'room')).toMatchObject({ green: false, decision: true });
    for (const other of ['obstruction', 'shallower', 'moved'] as const)
      expect(itemOf(gate(decidedOn(other)), 'room')).toMatchObject({ green: false, decision: true });
    expect(itemOf(gate(decidedOn('room')), 'room')).toMatchObject({ green: true });
  });
  it('a decision on anything but what was met is no inspection', () => {
    const after = (f: Field) => void f.decide('room', '1');
    expect(itemOf(gate({ skip: ['inspection'], after }), 'inspection').green).toBe(false);
  });
  it.each<[string, (f: Field) => void]>([
    ['the post was nudged', (f) => void f.add({ kind: 'stand', thing: post('1'), event: 'nudged' })],
    ['the post was read again', (f) => void f.pull(stake('A'), post('1'))],
    ['the middle was read again by tape', (f) => void f.pull(stake('A'), dugHole('1'))],
  ])('asks for the decision again once %s', (_what, later) => {
    const off = middle(0.075, { width: 460, tick: true });
    const before = (f: Field) => {
      off.before?.(f);
      const of = { thing: dugHole('1'), touch: { at: 'centre' } } as const;
      const [station, offset] = [mm(1000), mm(1000)];
      f.add({ kind: 'offset', from: stake('A'), to: stake('B'), of, station, offset, side: 'left' });
    };
    const decided = (more: (f: Field) => void): Change => ({
      ...off,
      skip: ['dug'],
      before,
      after: (f) => {
        off.after?.(f);
        f.decide('room', '1');
        more(f);
      },
    });
    expect(itemOf(gate(decided(() => {})), 'room')).toMatchObject({ green: true });
    expect(itemOf(gate(decided(later)), 'room')).toMatchObject({ decision: true });
  });
});

describe('an item of the job’s own', () => {
  const change = (after: NonNullable<Change['after']>): Change => ({ after });
  it('says that the job asks for it, is asked of its holes alone, and is ticked by its name', () => {
    const shut = gate(change(askFor(false)));
    expect(itemOf(shut, 'asked')).toEqual({
      item: 'asked',
      green: false,
      text: 'Conduit sleeve: asked for by this job. See to it at hole 1, and tick it.',
      asked: SLEEVE,
    });
    const elsewhere = gate(change((f) => void f.add({ kind: 'plan', plan: asking(SLEEVE, ['2']) })));
    expect(elsewhere.items.map(({ item }) => item)).not.toContain('asked');
    const other = gate(
      change((f) => {
        askFor(false)(f);
        f.add({ kind: 'check', hole: '1', item: 'asked', asked: 'anchor bolts', done: true });
      }),
    );
    expect(itemOf(other, 'asked').green).toBe(false);
  });
  it('is stale once the hole is dug again', () => {
    const again = gate(
      change((f) => {
        askFor(true)(f);
        dug(1030)(f);
      }),
    );
    expect(reds(again)).toEqual(['asked']);
    expect(itemOf(again, 'asked')).toMatchObject({ stale: true });
  });
});
