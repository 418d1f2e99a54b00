/**
 * How far the adjustment's claims hold, on jobs whose truth is known. Run: npx tsx test/study/measure.ts [jobs] [seed]
 *
 * Each job is a ring of ten posts round a pier, staked and set a few millimetres off, on level ground, with tapes of 2 mm
 * and plumb readings of 1 mm/m; every reading carries normal noise. Prints what was claimed beside what came out.
 */
import { chanceWithinDisc } from '../../src/judge/chance.ts';
import { normalCdf } from '../../src/judge/normal.ts';
import { CRITICAL, type Measured, measure } from '../../src/measure/index.ts';
import { INSTRUMENTS, random } from '../measure/build.ts';
import { nameOf } from '../measure/networks.ts';
import { ringJob, type StudyJob } from './ring-job.ts';

const jobs = Number(process.argv[2] ?? 400);
const seed = Number(process.argv[3] ?? 1);
const TOLERANCE_M = 0.012;
const INCH_M = 0.0254;
/** Quantile of chi-square with 2 degrees of freedom: 95 % of places lie within √5.99 sigmas. */
const CHI_SQUARE_95 = 5.991464547107979;
const GUARDED_FROM = 0.1;

const run = (job: StudyJob): Measured => measure(job.entries, job.holes, job.baseline, INSTRUMENTS);

class Share {
  hits = 0;
  of = 0;

  count(hit: boolean): void {
    this.of++;
    if (hit) this.hits++;
  }

  toString(): string {
    if (this.of === 0) return 'none';
    const p = this.hits / this.of;
    const error = 1.96 * Math.sqrt((p * (1 - p)) / this.of);
    return `${(100 * p).toFixed(2)} % ± ${(100 * error).toFixed(2)} (${this.hits} of ${this.of})`;
  }
}

const inside = new Share();
const calledInIsOut = new Share();
const calledOutIsIn = new Share();
const falseAlarm = new Share();
const globalAlarm = new Share();
let pulls = 0;
let expectedAlarms = 0;

function judgePlaces(job: StudyJob, measured: Measured): void {
  for (const { thing, fix } of measured.points) {
    if (thing.kind !== 'post' && thing.kind !== 'hole-stake') continue;
    if (!fix) throw new Error(`${nameOf(thing)} was not determined`);
    const truth = job.truth.get(nameOf(thing))!;
    const planned = job.holes.find(({ label }) => label === thing.hole)!.site;
    const error = { x: fix.place.x - truth.x, y: fix.place.y - truth.y };
    const { xx, xy, yy } = fix.covariance;
    const squared =
      (yy * error.x ** 2 - 2 * xy * error.x * error.y + xx * error.y ** 2) / (xx * yy - xy * xy);
    inside.count(squared <= CHI_SQUARE_95);
    const off = { x: fix.place.x - planned.x, y: fix.place.y - planned.y };
    const chance = chanceWithinDisc(off, fix.covariance, TOLERANCE_M);
    const isIn = Math.hypot(truth.x - planned.x, truth.y - planned.y) <= TOLERANCE_M;
    if (chance >= 0.95) calledInIsOut.count(!isIn);
    if (chance <= 0.05) calledOutIsIn.count(isIn);
  }
}

for (let i = 0; i < jobs; i++) {
  const job = ringJob(seed * 1_000_000 + i);
  const measured = run(job);
  judgePlaces(job, measured);
  falseAlarm.count(measured.suspicions.length > 0);
  globalAlarm.count(measured.globalTest.chance < 0.05);
  pulls += measured.pulls.length;
  expectedAlarms += measured.pulls.filter(({ redundancy }) => redundancy > GUARDED_FROM).length * 0.001;
}

const noticed = new Share();
const namedFirst = new Share();
const namedAtAll = new Share();
const expectedNoticed = { sum: 0, of: 0 };
const uniform = random(seed + 77);
for (let i = 0; i < jobs; i++) {
  const job = ringJob(seed * 1_000_000 + 500_000 + i);
  const guarded = run(job).pulls.filter(({ redundancy }) => redundancy >= GUARDED_FROM);
  const wrong = guarded[Math.floor(uniform() * guarded.length)]!;
  const by = uniform() < 0.5 ? INCH_M : -INCH_M;
  const measured = run(job.misread(wrong.entry, by));
  noticed.count(measured.suspicions.length > 0);
  namedFirst.count(measured.suspicions[0]?.entries[0] === wrong.entry);
  namedAtAll.count(measured.suspicions.some(({ entries }) => entries.includes(wrong.entry)));
  // Power of one test of one reading: the standardised residual is normal about misreading √r/σ.
  expectedNoticed.sum += power((INCH_M * Math.sqrt(wrong.redundancy)) / wrong.sigma);
  expectedNoticed.of++;
}

/** Chance that a standardised residual about `shift` passes 3.29 (the other tail is nothing). */
function power(shift: number): number {
  return normalCdf(shift - CRITICAL);
}

const perJob = pulls / jobs;
console.log(`${jobs} jobs from seed ${seed}, ${perJob} pulls each; tolerance ${TOLERANCE_M * 1000} mm`);
console.log(`true place inside the 95 % ellipse      ${inside}   claimed 95 %`);
console.log(`called in (p ≥ 0.95) but out            ${calledInIsOut}   claimed at most 5 %`);
console.log(`called out (p ≤ 0.05) but in            ${calledOutIsIn}   claimed at most 5 %`);
console.log(
  `clean jobs with a suspicion             ${falseAlarm}   about ${(100 * (1 - Math.exp(-expectedAlarms / jobs))).toFixed(1)} % if tests were independent`,
);
console.log(`clean jobs with a global test below 5 % ${globalAlarm}   claimed 5 %`);
console.log(
  `one inch misread, noticed               ${noticed}   expected ${((100 * expectedNoticed.sum) / expectedNoticed.of).toFixed(2)} % or more`,
);
console.log(`  the right pull named first            ${namedFirst}`);
console.log(`  the right pull among those named      ${namedAtAll}`);
