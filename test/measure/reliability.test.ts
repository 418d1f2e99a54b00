import { describe, expect, it } from 'vitest';
import { standing } from '../../src/job/log.ts';
import { firstDatum } from '../../src/measure/datum.ts';
import { GUARDED_FROM, measure, NONCENTRALITY } from '../../src/measure/index.ts';
import { Influences } from '../../src/measure/influence.ts';
import { modelOf } from '../../src/measure/model.ts';
import { networkOf } from '../../src/measure/network.ts';
import { smallestCaught, unseenShifts } from '../../src/measure/reliability.ts';
import { solve } from '../../src/measure/solution.ts';
import { startState } from '../../src/measure/start.ts';
import { gridJob } from '../bench/measure-job.ts';
import { A, apart, B, Book, hole, holeStake, INSTRUMENTS, random } from './build.ts';
import { denseJacobian, denseProblem, invert, normalMatrix } from './dense.ts';
import { madeJob, nameOf } from './networks.ts';

/** Redundancies and the worst unseen shift of every place, by dense matrices from their definitions. */
function byDefinition(seed: number, drop: number) {
  const job = madeJob(seed, { noise: 0, misplaced: 0 });
  const uniform = random(seed);
  const entries = job.entries.filter(({ body }) => body.kind !== 'pull' || uniform() >= drop);
  const network = networkOf(standing(entries), job.holes, [], job.instruments);
  const datum = firstDatum(network);
  const { problem, first } = denseProblem(network, datum.a, datum.b);
  const truth = new Array<number>(problem.unknowns).fill(0);
  network.nodes.forEach(({ thing }, i) => {
    if (i === datum.a) return;
    const place = job.truth.get(nameOf(thing))!;
    truth[first[i]!] = place.x;
    if (i !== datum.b) truth[first[i]! + 1] = place.y;
  });
  const model = modelOf(network, datum);
  const { state } = solve(model, startState(network, datum, job.baseline), model.weights);
  network.nodes.forEach(({ leans, index }) => {
    if (!leans || index === datum.a) return;
    truth[first[index]! + 2] = state[index * 4 + 2]!;
    truth[first[index]! + 3] = state[index * 4 + 3]!;
  });
  const jacobian = denseJacobian(problem, truth);
  const inverse = invert(normalMatrix(jacobian, problem.sigmas));
  const response = jacobian.map((row, k) =>
    inverse.map((line) => line.reduce((sum, q, j) => sum + q * row[j]!, 0) / problem.sigmas[k]! ** 2),
  );
  const redundancy = jacobian.map(
    (row, k) => 1 - row.reduce((sum, value, j) => sum + value * response[k]![j]!, 0),
  );
  const measured = measure(entries, job.holes, job.baseline, job.instruments);
  return { network, datum, first, response, redundancy, measured, problem };
}

describe('redundancy and unseen shift against their definitions, dense', () => {
  for (const [seed, drop] of [
    [1, 0],
    [2, 0.1],
    [3, 0.2],
    [4, 0.3],
    [5, 0.2],
    [6, 0.2],
  ] as const) {
    it(`job ${seed} with ${drop * 100} % of its pulls left out`, () => {
      const { network, datum, first, response, redundancy, measured, problem } = byDefinition(seed, drop);
      [...measured.pulls, ...measured.offsets].forEach((pull, k) => {
        expect(apart(pull.redundancy, redundancy[k]!)).toBeLessThan(0.001);
        if (redundancy[k]! < 0.01) return;
        const caught = (NONCENTRALITY * problem.sigmas[k]!) / Math.sqrt(redundancy[k]!);
        expect(apart(pull.smallestCaught / caught, 1)).toBeLessThan(1e-4);
      });
      let compared = 0;
      network.nodes.forEach((_, i) => {
        const { fix } = measured.points[i]!;
        if (!fix || i === datum.a || i === datum.b) return;
        const [x, y] = [first[i]!, first[i]! + 1];
        const shifts = [...network.pulls, ...network.offsets].map((_reading, k) => {
          const influence = Math.hypot(response[k]![x]!, response[k]![y]!);
          const r = redundancy[k]!;
          if (r < GUARDED_FROM && influence > 0.1) return Number.POSITIVE_INFINITY;
          return (influence * NONCENTRALITY * problem.sigmas[k]!) / Math.sqrt(Math.max(r, 0.001));
        });
        const worst = Math.max(...shifts);
        if (worst === Number.POSITIVE_INFINITY) expect(fix.unseenShift).toBe(worst);
        else expect(apart(fix.unseenShift / worst, 1)).toBeLessThan(1e-4);
        compared++;
      });
      expect(compared).toBeGreaterThan(5);
    });
  }
});

describe('in a large network', () => {
  it('what looks only at pulls nearby finds what a look at all pulls finds', () => {
    const job = gridJob(100, 1);
    const network = networkOf(standing(job.entries), job.holes, [], INSTRUMENTS);
    const datum = firstDatum(network);
    const model = modelOf(network, datum);
    const solution = solve(model, startState(network, datum, job.baseline), model.weights);
    const influences = new Influences(solution);
    const rows = network.pulls.map((_, k) => k);
    const shifts = unseenShifts(solution);
    const worsts = new Float64Array(network.nodes.length);
    for (const row of rows) {
      influences.of([{ row, nodes: [...worsts.keys()] }], (k, node, influence) => {
        const r = solution.redundancy[k]!;
        const isLost = r < GUARDED_FROM && influence > 0.1;
        const caught = smallestCaught(network.pulls[k]!.sigma, Math.max(r, 0.001));
        const shift = isLost ? Number.POSITIVE_INFINITY : influence * caught;
        worsts[node] = Math.max(worsts[node]!, shift);
      });
    }
    let finite = 0;
    worsts.forEach((worst, index) => {
      if (worst === Number.POSITIVE_INFINITY) expect(shifts[index]).toBe(worst);
      else {
        expect(apart(shifts[index]!, worst)).toBeLessThan(1e-9);
        finite++;
      }
    });
    expect(finite).toBeGreaterThan(50);
  });
});

describe('a misreading that is just not caught', () => {
  it('moves no place by more than its unseen shift, and the least caught shows as 4.13', () => {
    const corners = [
      ['1', 2, 3],
      ['2', 6, 3],
      ['3', 6, 7],
      ['4', 2, 7],
    ] as const;
    const plan = corners.map(([name, x, y]) => hole(name, x, y));
    const run = (wrong: number, by: number) => {
      const book = new Book();
      let k = 0;
      const read = (plain: number) => plain + (k++ === wrong ? by : 0);
      book.pull(A, B, read(8));
      corners.forEach(([name, x, y], i) => {
        book.pull(A, holeStake(name), read(Math.hypot(x, y)));
        book.pull(B, holeStake(name), read(Math.hypot(8 - x, y)));
        for (const [other, u, v] of corners.slice(0, i)) {
          book.pull(holeStake(other), holeStake(name), read(Math.hypot(x - u, y - v)));
        }
      });
      return measure(book.entries, plan, 8, INSTRUMENTS);
    };
    const clean = run(-1, 0);
    let greatest = 0;
    clean.pulls.forEach((pull, k) => {
      expect(pull.redundancy).toBeGreaterThan(0.1);
      const wrong = run(k, pull.smallestCaught);
      expect(apart(wrong.pulls[k]!.standardised, NONCENTRALITY)).toBeLessThan(0.05);
      clean.points.forEach(({ fix }, i) => {
        const moved = wrong.points[i]!.fix!.place;
        const shift = Math.hypot(moved.x - fix!.place.x, moved.y - fix!.place.y);
        // The equations bend a little over such a misreading.
        expect(shift).toBeLessThan(fix!.unseenShift * 1.01 + 1e-9);
        greatest = Math.max(greatest, shift / fix!.unseenShift || 0);
      });
    });
    expect(greatest).toBeGreaterThan(0.99);
  });
});
