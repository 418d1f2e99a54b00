import { describe, expect, it } from 'vitest';
import { distance, type Vec } from '../../src/geometry/point.ts';
import { thingKey } from '../../src/job/log.ts';
import { movedStakes } from '../../src/measure/index.ts';
import { A, B, Book, hole, holeStake, INSTRUMENTS, normal, random, stake } from './build.ts';

const C = stake('C');
const plan = [hole('1', 2, 4), hole('2', 4, 6), hole('3', 6, 4), hole('4', 4, 3)];

/** A staked job, then one stake knocked, then A–B–C and two pulls to hole stake 2 once more. */
function job(seed: number, moved: 'A' | 'B' | 'C' | null, by: Vec, witness = true) {
  const gauss = normal(random(seed));
  const places = new Map<string, Vec>([
    ['stake:A', { x: 0, y: 0 }],
    ['stake:B', { x: 8, y: 0 }],
    ['stake:C', { x: 9, y: 7 }],
    ...plan.map(({ label, site }) => [`hole-stake:${label}`, site] as const),
  ]);
  const book = new Book();
  const pull = (p: ReturnType<typeof stake>, q: ReturnType<typeof stake>) => {
    const reading = distance(places.get(thingKey(p))!, places.get(thingKey(q))!);
    return book.pull(p, q, reading + 0.002 * gauss());
  };
  pull(A, B);
  pull(A, C);
  pull(B, C);
  for (const { label } of plan) for (const from of [A, B, C]) pull(from, holeStake(label));
  if (moved) {
    const at = places.get(`stake:${moved}`)!;
    places.set(`stake:${moved}`, { x: at.x + by.x, y: at.y + by.y });
  }
  const again = [pull(A, B), pull(A, C), pull(B, C)];
  if (witness) again.push(pull(A, holeStake('2')), pull(B, holeStake('2')));
  return { entries: book.entries, again };
}

const find = (entries: Book['entries']) => movedStakes(entries, plan, 8, INSTRUMENTS);

describe('a stake that moved', () => {
  it('is none when none did', () => {
    let alarms = 0;
    for (let seed = 1; seed <= 60; seed++) if (find(job(seed, null, { x: 0, y: 0 }).entries)) alarms++;
    // Ten or so moments looked at, each at 0.1 %.
    expect(alarms).toBeLessThanOrEqual(2);
  });

  it('by 25 mm in any direction is noticed, and named', () => {
    let noticed = 0;
    let named = 0;
    let tried = 0;
    for (const label of ['A', 'B', 'C'] as const) {
      for (let seed = 1; seed <= 40; seed++) {
        const way = (2 * Math.PI * seed) / 40;
        const by = { x: 0.025 * Math.cos(way), y: 0.025 * Math.sin(way) };
        const found = find(job(seed, label, by).entries);
        tried++;
        if (found) noticed++;
        if (found?.moves[0]?.stake.kind === 'stake' && found.moves[0].stake.label === label) named++;
      }
    }
    console.info(`of ${tried} moves of 25 mm ${noticed} were noticed, ${named} named right`);
    expect(noticed).toBeGreaterThanOrEqual(0.98 * tried);
    expect(named).toBeGreaterThanOrEqual(0.98 * tried);
  });

  it('is found to have moved by so much', () => {
    const { entries, again } = job(5, 'A', { x: 0.06, y: -0.04 });
    const found = find(entries)!;
    expect(found.moves.map((move) => thingKey(move.stake))).toEqual(['stake:A']);
    expect(found.orMisread).toBe(false);
    expect(again).toContain(found.moves[0]!.since);
    expect(distance(found.moves[0]!.by!, { x: 0.06, y: -0.04 })).toBeLessThan(0.012);
  });

  it('though the first pull that could find it was made with a tape that the plan does not list', () => {
    const { entries, again } = job(5, 'B', { x: 0.06, y: -0.04 });
    const lost = entries.map((entry) =>
      entry.id === again[0] && entry.body.kind === 'pull'
        ? { ...entry, body: { ...entry.body, tape: 'lost' } }
        : entry,
    );
    const found = find(lost)!;
    expect(thingKey(found.moves[0]!.stake)).toBe('stake:B');
    expect(distance(found.moves[0]!.by!, { x: 0.06, y: -0.04 })).toBeLessThan(0.012);
  });

  it('cannot be told from another by A–B alone, nor from a misreading', () => {
    const book = new Book();
    const earlier = job(7, null, { x: 0, y: 0 }).entries;
    book.entries.push(...earlier);
    book.pull(A, B, 8.03);
    const found = find(book.entries)!;
    expect(found.moves.map((move) => thingKey(move.stake)).sort()).toEqual(['stake:A', 'stake:B']);
    expect(found.moves.every(({ by }) => by === null)).toBe(true);
    expect(found.orMisread).toBe(true);
  });

  it('is not what one pull misread by a foot shows', () => {
    const { entries } = job(9, null, { x: 0, y: 0 });
    const book = new Book();
    book.entries.push(...entries);
    book.pull(A, holeStake('1'), Math.hypot(2, 4) + 0.3048);
    book.pull(A, B, 8);
    book.pull(A, C, Math.hypot(9, 7));
    book.pull(A, holeStake('3'), Math.hypot(6, 4));
    const found = find(book.entries);
    expect(found === null || found.orMisread).toBe(true);
  });

  it('is nothing in an empty log', () => {
    expect(movedStakes([], plan, null, INSTRUMENTS)).toBeNull();
  });
});
