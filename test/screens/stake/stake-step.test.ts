import { describe, expect, test } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { putOffNote } from '../../../src/screens/stake/put-off.ts';
import { holeAfter } from '../../../src/screens/stake/stake-step.ts';
import { inches } from '../../job/sample.ts';
import {
  BASELINE,
  CHECKS,
  checked,
  DIGGABLE,
  dug,
  fromA,
  fromB,
  holeStake,
  MARKED,
  ORDER,
  PLACED,
  PLAN,
  PROVED,
  pull,
  READY,
  STAKED,
  stake,
  stakeAfter,
  staked,
  stand,
  unsure,
} from './field-day.ts';

const step = (bodies: readonly Body[], focused: string | null = null, goOn = false) =>
  stakeAfter(bodies, focused, goOn).step;
const [FIRST, SECOND] = ORDER as [string, string];

describe('what everything hangs on comes first', () => {
  test.each([
    ['no plan', [], { at: 'plan' }],
    ['a plan', PLAN, { at: 'place' }],
    ['A and B placed', PLACED, { at: 'utilities' }],
    ['utilities marked', MARKED, { at: 'reference', stake: 'A' }],
    ['A driven', [...MARKED, stand(stake('A'))], { at: 'reference', stake: 'B' }],
    ['A and B driven', [...MARKED, stand(stake('A')), stand(stake('B'))], { at: 'baseline' }],
  ] as const)('after %s, whatever hole is asked for', (_when, bodies, wanted) => {
    expect(step(bodies)).toEqual(wanted);
    expect(step(bodies, FIRST)).toEqual(wanted);
  });

  test('services that are unticked again stop the staking', () => {
    expect(step([...STAKED, { kind: 'check', item: 'utilities', done: false }])).toEqual({ at: 'utilities' });
  });

  test('a stake driven anew has A–B pulled anew', () => {
    expect(step([...STAKED, stand(stake('B'), 'moved')])).toEqual({ at: 'baseline' });
  });

  test('places that are moved undo every stake, A and B too', () => {
    const moved = [...STAKED, { ...PLACED[1]!, chosenBy: 'user' } as Body];
    expect(step(moved)).toEqual({ at: 'reference', stake: 'A' });
    const driven = [...moved, stand(stake('A')), stand(stake('B')), pull(stake('A'), stake('B'), BASELINE)];
    expect(step(driven)).toEqual({ at: 'hole', hole: FIRST, task: 'drive' });
  });
});

describe('each hole in turn', () => {
  test.each([
    ['nothing', [], 'drive'],
    ['a stake', [stand(holeStake(FIRST))], 'from-a'],
    ['a reading from A', [stand(holeStake(FIRST)), fromA(FIRST)], 'from-b'],
    ['only a reading from B', [stand(holeStake(FIRST)), fromB(FIRST)], 'from-a'],
  ] as const)('after %s', (_when, bodies, task) => {
    expect(step([...READY, ...bodies])).toEqual({ at: 'hole', hole: FIRST, task });
  });

  test('a stake that is out is shifted before the next is driven', () => {
    const out = [...READY, stand(holeStake(FIRST)), fromA(FIRST, 0.08), fromB(FIRST)];
    expect(step(out)).toEqual({ at: 'hole', hole: FIRST, task: 'shift' });
    expect(step([...out, stand(holeStake(FIRST), 'moved')])).toEqual({
      at: 'hole',
      hole: FIRST,
      task: 'from-a',
    });
  });

  test('an unsure stake stops before the next is driven, until it is put off or a check pull is made to it', () => {
    const bodies = [...READY, ...unsure(FIRST)];
    expect(step(bodies)).toEqual({ at: 'hole', hole: FIRST, task: 'unsure' });
    const put = [...bodies, putOffNote(FIRST)];
    expect(step(put)).toEqual({ at: 'hole', hole: SECOND, task: 'drive' });
    const sloping: Body = { ...fromA(FIRST, 0.001), hold: { how: 'slope' } } as Body;
    expect(step([...put, sloping])).toEqual({ at: 'hole', hole: FIRST, task: 'unsure' });
    const rest = ORDER.slice(1).flatMap(staked);
    const ends = stakeAfter([...put, ...rest]);
    expect(ends.step.at).toBe('check');
    expect(holeAfter(ends.state, SECOND)).toBeNull();
    const { from, to, expected } = CHECKS.find((pulled) =>
      [pulled.from, pulled.to].some(({ thing }) => thing.kind === 'hole-stake' && thing.hole === FIRST),
    )!;
    expect(step([...bodies, ...rest, pull(from.thing, to.thing, expected)]).at).toBe('check');
  });

  test('a stake that is in leads on to the next hole in the order of work', () => {
    expect(step([...READY, ...staked(FIRST)])).toEqual({ at: 'hole', hole: SECOND, task: 'drive' });
  });

  test('the hole in the address is shown whatever is next', () => {
    expect(step(READY, '5')).toEqual({ at: 'hole', hole: '5', task: 'drive' });
    expect(step(STAKED, '5')).toEqual({ at: 'hole', hole: '5', task: 'done' });
    expect(step([...STAKED, dug('5', '4 0')], '5')).toEqual({ at: 'hole', hole: '5', task: 'done' });
  });

  test('a hole that is not in the plan is as good as none', () => {
    expect(step(READY, 'nowhere')).toEqual({ at: 'hole', hole: FIRST, task: 'drive' });
  });

  test('Later goes round the holes that want something', () => {
    const { state } = stakeAfter([...READY, ...staked(SECOND)]);
    expect(holeAfter(state, FIRST)).toBe(ORDER[2]);
    expect(holeAfter(state, ORDER.at(-1)!)).toBe(FIRST);
    expect(holeAfter(stakeAfter(STAKED).state, FIRST)).toBeNull();
  });
});

describe('a further stake', () => {
  const C = stake('C');
  const asked: Body = {
    kind: 'reference',
    thing: { kind: 'stake', label: 'C' },
    at: { right: inches('0'), front: inches('20 0') },
  };
  const at = stakeAfter([...READY, asked]).state.situation.laid!.references[0]!.site;
  const tied = [
    stand(C),
    pull(stake('A'), C, Math.hypot(at.x, at.y)),
    pull(stake('B'), C, Math.hypot(at.x - BASELINE, at.y)),
  ];

  test('that is wanted is driven, then tied to A and to B, before the next hole is staked', () => {
    const task = (n: number) => step([...READY, asked, ...tied.slice(0, n)]);
    expect(task(0)).toMatchObject({ at: 'further', task: 'drive' });
    expect(task(1)).toMatchObject({ at: 'further', task: 'from-a' });
    expect(task(2)).toMatchObject({ at: 'further', task: 'from-b' });
    expect(task(3)).toEqual({ at: 'hole', hole: FIRST, task: 'drive' });
  });

  test('does not stand in the way of a hole that was asked for', () => {
    expect(step([...READY, asked], SECOND)).toMatchObject({ at: 'hole', hole: SECOND });
  });

  test('that moved comes before all else, and is settled by one entry that says since when', () => {
    const far = pull(stake('A'), stake('B'), BASELINE + 0.03);
    const bodies = [...READY, asked, ...tied, ...ORDER.flatMap(staked), far];
    const found = stakeAfter(bodies).step;
    expect(found).toMatchObject({ at: 'moved' });
    const since = found.at === 'moved' ? found.moved.suspects[0]!.since : '';
    const said: Body = { kind: 'stand', thing: stake('B'), event: 'moved', since };
    const tie = pull(stake('B'), C, Math.hypot(at.x - BASELINE, at.y));
    expect(step([...bodies, said])).toMatchObject({ at: 'further', task: 'from-b' });
    expect(step([...bodies, said, tie]).at).not.toBe('moved');
  });
});

describe('proof, ties, done', () => {
  test('check pulls follow, in their order', () => {
    expect(step(STAKED)).toEqual({ at: 'check', pull: CHECKS[0] });
    expect(step([...STAKED, ...checked(1)])).toEqual({ at: 'check', pull: CHECKS[1] });
  });

  test('stakes that are all in and guarded need no further check pull', () => {
    expect(step(PROVED)).toEqual({ at: 'ties', holes: ORDER.toSorted(byLabel) });
  });

  test('the user may go on without', () => {
    expect(step(STAKED, null, true)).toMatchObject({ at: 'ties' });
  });

  test('ties of every hole end the staking; a stake moved since asks for its own again', () => {
    expect(step(DIGGABLE)).toEqual({ at: 'done' });
    const moved = [...DIGGABLE, stand(holeStake('4'), 'moved'), fromA('4'), fromB('4')];
    expect(step(moved, null, true)).toEqual({ at: 'ties', holes: ['4'] });
  });

  test('a misread check pull is pulled again, and then struck', () => {
    const [first] = CHECKS;
    const { from, to, expected } = first!;
    const wrong = [
      ...STAKED,
      ...checked(CHECKS.length).slice(1),
      pull(from.thing, to.thing, expected + 0.3048),
    ];
    const asked = step(wrong);
    expect(asked.at).toBe('settle');
    const again = [...wrong, pull(from.thing, to.thing, expected)];
    const strike = step(again);
    expect(strike).toMatchObject({ at: 'strike', entry: { body: wrong.at(-1) } });
  });
});

/** Numbers in their order, then the pier. */
const byLabel = (p: string, q: string) => (p === 'P' ? 1 : q === 'P' ? -1 : Number(p) - Number(q));
