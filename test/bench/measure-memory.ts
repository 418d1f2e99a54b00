/**
 * Greatest memory of a process that does nothing but settle a grid of 1000 holes, over and over as the phone does after
 * every reading. Run by `npm run bench`, in a process of its own; prints two numbers, megabytes: before the job, and at most.
 */
import { existsSync, readFileSync } from 'node:fs';
import { measure } from '../../src/measure/index.ts';
import { INSTRUMENTS } from '../measure/build.ts';
import { gridJob } from './measure-job.ts';

/**
 * What the system counts for a process includes what the one that started it held at that moment; Linux also keeps the figure of
 * the program alone.
 */
function greatest(): number {
  const status = existsSync(STATUS) ? readFileSync(STATUS, 'utf8') : '';
  const own = /^VmHWM:\s+(\d+) kB$/m.exec(status)?.[1];
  return Math.round((own === undefined ? process.resourceUsage().maxRSS : Number(own)) / 1024);
}

const STATUS = '/proc/self/status';

/** As many as are timed beside it. */
const ROUNDS = 12;

const before = greatest();
const job = gridJob(1000, 1);
for (let i = 0; i < ROUNDS; i++) measure(job.entries, job.holes, job.baseline, INSTRUMENTS);
console.log(JSON.stringify({ before, most: greatest() }));
