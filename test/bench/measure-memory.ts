/**
 * Greatest memory of a process that does nothing but settle a grid of 1000 holes, over and over as the phone does after
 * every reading. Run by `npm run bench`, in a process of its own; prints two numbers, megabytes: before the job, and at most.
 */
import { measure } from '../../src/measure/index.ts';
import { INSTRUMENTS } from '../measure/build.ts';
import { gridJob } from './measure-job.ts';

const greatest = () => Math.round(process.resourceUsage().maxRSS / 1024);

/** As many as are timed beside it. */
const ROUNDS = 12;

const before = greatest();
const job = gridJob(1000, 1);
for (let i = 0; i < ROUNDS; i++) measure(job.entries, job.holes, job.baseline, INSTRUMENTS);
console.log(JSON.stringify({ before, most: greatest() }));
