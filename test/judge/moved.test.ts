import { describe, expect, it } from 'vitest';
import { distance } from '../../src/geometry/point.ts';
import type { Thing } from '../../src/job/entry-schema.ts';
import { assess } from '../../src/judge/assess.ts';
import type { Assessment } from '../../src/judge/types.ts';
import { Field, holeStake, mm, noise, post, stake } from './field.ts';

const A = stake('A');
const B = stake('B');
const C = stake('C');
const HOLES = ['1', '2', '3', '4', '5', '6'] as const;
const NEXT = HOLES.map((hole, i) => [hole, HOLES[(i + 1) % 6]!] as const);
/** C stands on the far side of the ring, in the plan frame. */
const C_AT = { right: mm(500), front: mm(6500) };

interface Job {
  readonly seed?: number;
  readonly withC?: boolean;
}

/** Stakes driven at every hole and pulled from A and B, and from C where there is one; the tape with its own noise. */
function stakedJob({ seed = 1, withC = true }: Job = {}) {
  const field = new Field().site();
  const n = noise(seed);
  const pull = (from: Thing, to: Thing, error = 0) => field.pull(from, to, { error: n(0.002) + error });
  field.tick('utilities');
  pull(A, B);
  if (withC) {
    field.add({ kind: 'reference', thing: { kind: 'stake', label: 'C' }, at: C_AT });
    // The plan's centre is 4 m to the right of A and 5 m in front of it.
    field.truth.set(JSON.stringify(C), { x: 4.5, y: 11.5 });
    field.add({ kind: 'stand', thing: C, event: 'driven' });
    pull(A, C);
    pull(B, C);
  }
  const from = withC ? [A, B, C] : [A, B];
  for (const hole of HOLES) {
    field.add({ kind: 'stand', thing: holeStake(hole), event: 'driven' });
    for (const each of from) pull(each, holeStake(hole));
  }
  for (const [p, q] of NEXT) pull(holeStake(p), holeStake(q));
  field.tick('ties').wait(16);
  return { field, pull };
}

const codes = ({ findings }: Assessment) => findings.map(({ code }) => code);
const knock = (field: Field, thing: Thing, x: number, y: number) => {
  const at = field.placeOf(thing);
  field.truth.set(JSON.stringify(thing), { x: at.x + x, y: at.y + y });
};

type Pull = ReturnType<typeof stakedJob>['pull'];

/** The triangle once more, and two tapes to something that stood still: by these a stake that moved is told. */
function pullAgain(pull: Pull, stood: string): void {
  pull(A, B);
  pull(A, C);
  pull(B, C);
  pull(A, holeStake(stood));
  pull(B, holeStake(stood));
}

describe('a stake that moved', () => {
  it('by 25 mm is named, with how far, which way, and since which pull', () => {
    const { field, pull } = stakedJob();
    knock(field, A, 0.025, 0);
    const since = pull(A, B);
    pull(A, C);
    pull(B, C);
    pull(A, holeStake('2'));
    pull(B, holeStake('2'));
    const { moved, findings } = assess(field.log);
    expect(moved!.suspects.map(({ stake: one }) => one)).toEqual([A]);
    expect(moved!.orMisread).toBe(false);
    expect(moved!.suspects[0]!.since).toBe(since);
    const { by, uncertainty, words } = moved!.suspects[0]!.shift!;
    expect(distance(by, { x: 0.025, y: 0 })).toBeLessThan(uncertainty);
    expect(words).toMatch(/^2\d mm toward B/);
    const [finding] = findings.filter(({ code }) => code === 'moved-stake');
    expect(finding!.entries).toEqual([since]);
    expect(finding!.text).toMatch(
      /^Stake A has moved: since “A to B, .*” it stands elsewhere, 2\d mm toward B.*, known to ± \d+ mm\. Sure: more than (100|1,000|10,000|a million) to 1 against any other stake or one misread pull\.$/,
    );
    expect(codes(assess(field.log))).not.toContain('misreading');
    expect(codes(assess(field.log))).not.toContain('baseline');
    expect(codes(assess(field.log))).not.toContain('global-test');
  });

  it('is named in nearly every of many jobs, whichever stake and way', () => {
    let named = 0;
    let tried = 0;
    for (const label of ['A', 'B', 'C'])
      for (let seed = 1; seed <= 8; seed++) {
        const { field, pull } = stakedJob({ seed });
        const way = (2 * Math.PI * seed) / 8;
        knock(field, stake(label), 0.025 * Math.cos(way), 0.025 * Math.sin(way));
        pullAgain(pull, '2');
        const { moved } = assess(field.log);
        tried++;
        if (
          moved?.suspects.length === 1 &&
          JSON.stringify(moved.suspects[0]!.stake) === JSON.stringify(stake(label))
        )
          named++;
      }
    expect(tried).toBe(24);
    expect(named).toBeGreaterThanOrEqual(22);
  });

  it('is told how to be driven back: which way, and what the tapes from two that stood still then read', () => {
    const { field, pull } = stakedJob();
    const stood = field.placeOf(A);
    knock(field, A, 0.025, 0.01);
    for (const other of [B, C]) pull(A, other);
    pull(B, C);
    for (const hole of ['1', '2']) pull(A, holeStake(hole));
    const { putBack } = assess(field.log).moved!.suspects[0]!;
    expect(putBack!.words).toMatch(
      /^Drive it back \d+ mm away from B.*: it stands where it stood when level tapes read \d+ mm from .* and \d+ mm from .*\.$/,
    );
    expect(putBack!.readings).toHaveLength(2);
    for (const { from, to, reading } of putBack!.readings) {
      expect(to.thing).toEqual(A);
      expect(Math.abs(reading - distance(field.placeOf(from.thing), stood))).toBeLessThan(0.006);
    }
  });

  it('that the pulls do not tell from another: both are named, and two pulls to something that stood still', () => {
    const { field, pull } = stakedJob({ withC: false });
    knock(field, B, 0.03, 0);
    pull(A, B);
    const { moved, next } = assess(field.log);
    expect(moved!.suspects.map(({ stake: one }) => one)).toEqual(expect.arrayContaining([A, B]));
    expect(moved!.text).toMatch(
      /^A to B now reads \d+ mm longer than before: either stake [AB] or stake [AB] has moved, or a pull is misread, and the pulls do not tell which\. Pull [AB] to stake \d and [AB] to stake \d: they tell\.$/,
    );
    expect(moved!.tells).toHaveLength(2);
    expect(moved!.tells[0]!.to.thing).toEqual(moved!.tells[1]!.to.thing);
    expect(next).toEqual(moved!.tells[0]);
    for (const { from, to } of moved!.tells) pull(from.thing, to.thing);
    const then = assess(field.log).moved;
    expect(then!.suspects.map(({ stake: one }) => one)).toEqual([B]);
  });

  it('leaves nothing that hangs on it checked, and no hole may be dug, until it is settled', () => {
    const { field, pull } = stakedJob();
    expect(
      assess(field.log)
        .holes.slice(0, 6)
        .every(({ digGate }) => digGate.open),
    ).toBe(true);
    knock(field, A, 0.025, 0);
    pullAgain(pull, '5');
    const { holes, moved } = assess(field.log);
    for (const { staked, digGate } of holes.slice(0, 6)) {
      expect(staked.position.checked).toBe(false);
      expect(digGate.open).toBe(false);
      expect(digGate.items.find(({ item }) => item === 'baseline')!.green).toBe(false);
    }
    expect(holes[0]!.staked.position.why).toBe(
      'Stake 1 was measured from stake A, which seems to have moved: see to that first.',
    );
    // It moved, and that is said: the pulls since then belong to where it stands now.
    const { stake: thing, since } = moved!.suspects[0]!;
    field.add({ kind: 'stand', thing, event: 'moved', since });
    const after = assess(field.log);
    expect(after.moved).toBeNull();
    // That A–B is not as planned any more, and little guards its length, is said.
    expect(codes(after)).toEqual(['baseline']);
    expect(after.findings[0]!.text).toMatch(/^A to B is 797\d mm, 2\d mm shorter than planned/);
    expect(after.holes.slice(0, 6).every(({ digGate }) => digGate.open)).toBe(true);
  });

  it('leaves set posts unchecked that were pulled from it, and their gates shut', () => {
    const { field, pull } = stakedJob();
    for (const hole of HOLES) {
      field.dig(hole).set(hole);
      for (const from of [A, B, C]) field.pull(from, post(hole), { side: 'back' });
    }
    for (const [p, q] of NEXT) field.pull(post(p), post(q), { side: 'left' });
    expect(assess(field.log).holes[0]!.set.position.checked).toBe(true);
    knock(field, B, -0.03, 0.02);
    for (const [p, q] of [
      [A, B],
      [A, C],
      [B, C],
    ] as const)
      pull(p, q);
    field.pull(B, post('1'), { side: 'back' });
    field.pull(B, post('3'), { side: 'back' });
    const { moved, holes } = assess(field.log);
    expect(moved!.suspects.map(({ stake: one }) => one)).toEqual([B]);
    expect(holes.slice(0, 6).every(({ set }) => !set.position.checked)).toBe(true);
    expect(holes[0]!.pourGate.items.find(({ item }) => item === 'checked')!.green).toBe(false);
  });
});

describe('what hangs on a stake that moved', () => {
  it('is also what was measured off a string that it held, since it last stood still', () => {
    const { field, pull } = stakedJob();
    const offString = (hole: string) =>
      field.add({
        kind: 'offset',
        from: A,
        to: B,
        of: { thing: post(hole), touch: { at: 'centre' } },
        station: mm(field.placeOf(post(hole)).x * 1000),
        offset: mm(field.placeOf(post(hole)).y * 1000),
        side: 'left',
      });
    field.set('4');
    offString('4');
    knock(field, A, 0.04, 0);
    pullAgain(pull, '2');
    const four = assess(field.log).holes.find(({ hole }) => hole === '4')!;
    expect(four.set.position.checked).toBe(false);
    expect(four.set.position.why).toContain(
      'Post 4 was measured from stake A, which seems to have moved: see to that first.',
    );
  });
});

describe('a tape that does not read true', () => {
  /** A torn end: the tape reads 100 mm more than is there. */
  const TORN = { label: 'torn', nominal: mm(30000), actual: mm(30000), zero: mm(-100) };

  it('is told what it reads itself, where stakes are told apart and where one is driven back', () => {
    const { field, pull } = stakedJob();
    knock(field, A, 0.025, 0.01);
    pull(A, B);
    const torn = (log: Field['log']) => {
      const plan = {
        ...field.plan,
        instruments: { ...field.plan.instruments, tapes: [TORN] },
      };
      const at = log.at(-1)!;
      return [
        ...log,
        { ...at, id: 'torn-plan', seq: at.seq + 1, body: { kind: 'plan' as const, plan } },
        {
          ...at,
          id: 'torn-pull',
          seq: at.seq + 2,
          body: {
            kind: 'pull' as const,
            from: { thing: B, touch: { at: 'nail' as const } },
            to: { thing: C, touch: { at: 'nail' as const } },
            reading: mm(distance(field.placeOf(B), field.placeOf(C)) * 1000 + 100),
            hold: { how: 'level' as const },
            tape: 'torn',
          },
        },
      ];
    };
    const open = assess(torn(field.log)).moved!;
    expect(open.tells.length).toBeGreaterThan(0);
    for (const { expected, text } of open.tells)
      expect(text).toContain(`about ${Math.round(expected * 1000 + 100)} mm`);
    for (const other of [C, holeStake('1'), holeStake('2')]) pull(A, other);
    const { putBack } = assess(torn(field.log)).moved!.suspects[0]!;
    for (const { reading } of putBack!.readings)
      expect(putBack!.words).toContain(`${Math.round(reading * 1000 + 100)} mm from`);
  });
});

describe('no stake moved', () => {
  it('where one pull to a hole, made again, reads a foot otherwise: a slip, for the reading itself to be named', () => {
    const { field, pull } = stakedJob({ withC: false });
    pull(A, holeStake('1'), 0.3048);
    const { moved, findings } = assess(field.log);
    expect(moved).toBeNull();
    expect(findings.map(({ code }) => code)).toEqual(['misreading']);
  });

  it('where all is pulled again and fits: nothing is said', () => {
    let alarms = 0;
    for (let seed = 1; seed <= 20; seed++) {
      const { field, pull } = stakedJob({ seed });
      for (const [p, q] of [
        [A, B],
        [A, C],
        [B, C],
      ] as const)
        pull(p, q);
      if (assess(field.log).moved) alarms++;
    }
    // 0.1 % at each of a few moments.
    expect(alarms).toBeLessThanOrEqual(1);
  });

  it('where one pull to a hole is misread by a foot: that pull is named, no stake', () => {
    const { field, pull } = stakedJob();
    pull(A, B);
    pull(A, C);
    const slip = pull(A, holeStake('3'), 0.3048);
    pull(B, holeStake('3'));
    const { moved, findings } = assess(field.log);
    expect(moved).toBeNull();
    expect(findings.filter(({ code }) => code === 'misreading').map(({ entries }) => entries)).toEqual([
      [slip],
    ]);
  });

  it('in a job without a plan, or before anything is pulled', () => {
    expect(assess([]).moved).toBeNull();
    expect(assess(new Field().site().log).moved).toBeNull();
  });
});
