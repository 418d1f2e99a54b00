/**
 * How long it takes to say all that there is to say of the example job, as the phone does after every reading; and of that
 * the adjustment alone, on jobs of several sizes and beside a general-purpose solver on the same readings.
 * Run: npm run bench
 *
 * Seeded jobs; medians of wall-clock times and of processor time after a warm-up (on a busy machine only the second says
 * much). Prints a checksum of the answers, so that a faster wrong answer shows.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { EXAMPLE_FILE } from '../../src/desk/make-example.ts';
import { standing } from '../../src/job/log.ts';
import { firstDatum } from '../../src/measure/datum.ts';
import { measure } from '../../src/measure/index.ts';
import { networkOf } from '../../src/measure/network.ts';
import { readBackup } from '../../src/store/read-backup.ts';
import { INSTRUMENTS } from '../measure/build.ts';
import { denseProblem } from '../measure/dense.ts';
import { ringPlan } from '../plan/plans.ts';
import { builtAssess } from './built.ts';
import { type BenchJob, gridJob, pullsIn, ringJob } from './measure-job.ts';
import { adviseOn, againstHabit, THIRTY } from './stakes.ts';

interface Timing {
  readonly wall: number;
  readonly processor: number;
}

function medianOf(values: number[]): number {
  return values.sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

function time(work: () => void, rounds: number, warmUp: number): Timing {
  for (let i = 0; i < warmUp; i++) work();
  const wall: number[] = [];
  const processor: number[] = [];
  for (let i = 0; i < rounds; i++) {
    const began = performance.now();
    const used = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(used);
    wall.push(performance.now() - began);
    processor.push((user + system) / 1000);
  }
  return { wall: medianOf(wall), processor: medianOf(processor) };
}

function exampleLog() {
  const backup = readBackup(readFileSync(EXAMPLE_FILE, 'utf8'));
  if (!backup.ok) throw new Error(backup.problem.text);
  return backup.value.log;
}

/** From the log to every verdict and sentence. The checksum adds the characters of the answer's JSON. */
async function timeAssess(rounds: number, warmUp: number) {
  const assess = await builtAssess();
  const log = exampleLog();
  const pulls = log.filter(({ body }) => body.kind === 'pull').length;
  let assessment = assess(log);
  const timing = time(
    () => {
      assessment = assess(log);
    },
    rounds,
    warmUp,
  );
  const checksum = [...JSON.stringify(assessment)].reduce((sum, each) => sum + each.charCodeAt(0), 0);
  return { ...timing, pulls, checksum };
}

function timeMeasure(job: BenchJob, rounds: number, warmUp: number) {
  let checksum = 0;
  const timing = time(
    () => {
      const { points } = measure(job.entries, job.holes, job.baseline, INSTRUMENTS);
      checksum = points.reduce((sum, { fix }) => sum + (fix ? fix.place.x + fix.ellipse.semiMajor : 0), 0);
    },
    rounds,
    warmUp,
  );
  return { ...timing, checksum };
}

/** Rounds of the general solver: what it takes from the planned places to a tenth of a millimetre. */
const GENERAL_ROUNDS = 4;

function timeGeneral(job: BenchJob): Timing {
  const network = networkOf(standing(job.entries), job.holes, [], INSTRUMENTS);
  const { a, b } = firstDatum(network);
  const { problem, first } = denseProblem(network, a, b);
  const start = new Array<number>(problem.unknowns).fill(0);
  network.nodes.forEach(({ designed }, i) => {
    if (i === b) start[first[i]!] = job.baseline;
    if (!designed) return;
    start[first[i]!] = designed.x;
    start[first[i]! + 1] = designed.y;
  });
  const rows = problem.readings.map((_, k) => k);
  return time(
    () =>
      levenbergMarquardt(
        { x: rows, y: rows.map((k) => problem.readings[k]! / problem.sigmas[k]!) },
        (values) => (k) => problem.predict(values, k) / problem.sigmas[k]!,
        {
          initialValues: start,
          gradientDifference: 1e-5,
          centralDifference: true,
          damping: 1,
          maxIterations: GENERAL_ROUNDS,
          errorTolerance: 0,
        },
      ),
    1,
    0,
  );
}

function memory(): { before: number; most: number } {
  const program = fileURLToPath(new URL('measure-memory.ts', import.meta.url));
  return JSON.parse(execFileSync(process.execPath, [...process.execArgv, program], { encoding: 'utf8' }));
}

const show = ({ wall, processor }: Timing) =>
  `${wall.toFixed(2).padStart(10)} ms wall ${processor.toFixed(2).padStart(10)} ms processor`;

const ASSESSED_WITHIN_MS = 2;
const assessed = await timeAssess(300, 1000);
console.log(
  `${'assess, example job'.padEnd(24)}${`${assessed.pulls} pulls`.padStart(12)}${show(assessed)}   (at most ${ASSESSED_WITHIN_MS} ms)  checksum ${assessed.checksum}`,
);

const cases = [
  { name: 'ring and a pier', job: ringJob(1), rounds: 300, warmUp: 300, most: 2 },
  { name: 'grid of 100', job: gridJob(100, 1), rounds: 60, warmUp: 30, most: 20 },
  { name: 'grid of 1000', job: gridJob(1000, 1), rounds: 9, warmUp: 3, most: 600 },
];
const timings = cases.map(({ name, job, rounds, warmUp, most }) => {
  const timing = timeMeasure(job, rounds, warmUp);
  const size = `${pullsIn(job)} pulls`.padStart(12);
  console.log(
    `${`measure, ${name}`.padEnd(24)}${size}${show(timing)}   (at most ${most} ms)  checksum ${timing.checksum.toFixed(6)}`,
  );
  return timing;
});

const exponent = (of: (timing: Timing) => number) => Math.log10(of(timings[2]!) / of(timings[1]!)).toFixed(2);
console.log(
  `growth from 100 to 1000 holes: n^${exponent((t) => t.wall)} wall, n^${exponent((t) => t.processor)} processor (at most n^1.4)`,
);
const { before, most } = memory();
console.log(
  `greatest memory, grid of 1000 in a process of its own: ${most} MB (at most 200 MB); Node, tsx and the program take ${before} MB of it`,
);

const general = timeGeneral(gridJob(100, 1));
const ratio = (of: (timing: Timing) => number) => Math.round(of(general) / of(timings[1]!));
console.log(`ml-levenberg-marquardt, grid of 100, ${GENERAL_ROUNDS} rounds, places only: ${show(general)}`);
console.log(
  `  ${ratio((t) => t.wall)} times as long by the wall clock, ${ratio((t) => t.processor)} by the processor`,
);

const ADVISED_WITHIN_MS = 50;
const stakesPlan = ringPlan();
for (const { name, holes } of THIRTY) {
  let worst = 0;
  const timing = time(
    () => {
      worst = adviseOn(holes, stakesPlan);
    },
    15,
    5,
  );
  console.log(
    `${`where A and B go, ${name}`.padEnd(36)}${show(timing)}   (at most ${ADVISED_WITHIN_MS} ms)  worst hole ${(worst * 1000).toFixed(3)} mm`,
  );
}
console.log(
  'A and B as advised against two corners of the ring’s own square (rings of 3 m radius, DRMS of the worst hole):',
);
for (const { count, advice, square, clear } of againstHabit()) {
  const mm = (m: number) => (Number.isFinite(m) ? `${(m * 1000).toFixed(1)} mm` : 'not fixed at all');
  console.log(
    `  ${String(count).padStart(2)} posts: ${mm(advice)}; on the square that touches the ring ${mm(square)}; on the same moved clear of the holes ${mm(clear)}, ${(clear / advice).toFixed(2)} times as much`,
  );
}
