/**
 * What comes of following the cards of the Set screen, on simulated builds whose truth is known.
 *
 * Run: npm run builds [-- --builds 500 --seed 1 --save]. Prints the tables; `--save` writes them to BUILDS.md beside this file.
 * Ends with exit code 1 when a bar is missed. Two processes share the work; what comes out does not depend on which did what.
 */
import { fork } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { Builds, type BuildTally, buildsOf } from './builds.ts';
import { buildBars, buildsPage, buildTables, isMissed } from './builds-page.ts';
import { whole } from './whole.ts';

const PAGE = new URL('./BUILDS.md', import.meta.url);
const TELL_EVERY = 10;
const PROCESSES = 2;

/** What one process is asked for, and what it answers, build by build. */
interface Task {
  readonly seed: number;
  readonly indices: readonly number[];
}
interface Done {
  readonly index: number;
  readonly tally: BuildTally;
}

if (process.send) {
  process.once('message', ({ seed, indices }: Task) => {
    const build = buildsOf(seed);
    for (const index of indices) process.send!({ index, tally: build(index) } satisfies Done);
  });
} else await main();

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: {
      builds: { type: 'string', default: '500' },
      seed: { type: 'string', default: '1' },
      save: { type: 'boolean', default: false },
    },
  });
  const count = whole('builds', values.builds);
  const seed = whole('seed', values.seed);
  const builds = new Builds(seed);
  for (const tally of await tallies(seed, count)) builds.add(tally);
  console.log(`${count} builds from seed ${seed}\n\n${buildTables(builds)}`);
  if (values.save) {
    const command = `npm run builds -- --builds ${count} --seed ${seed} --save`;
    writeFileSync(PAGE, buildsPage(builds, command));
  }
  const missed = buildBars(builds).filter(isMissed);
  for (const { what } of missed) console.log(`Missed: ${what}`);
  process.exitCode = missed.length === 0 ? 0 : 1;
}

/** In the order of their indices, whichever process made them. */
async function tallies(seed: number, count: number): Promise<BuildTally[]> {
  const found: BuildTally[] = [];
  let done = 0;
  const worker = (nth: number) =>
    new Promise<void>((resolve, reject) => {
      const indices = Array.from({ length: count }, (_, i) => i).filter((i) => i % PROCESSES === nth);
      const child = fork(fileURLToPath(import.meta.url), { execArgv: process.execArgv });
      child.on('message', ({ index, tally }: Done) => {
        found[index] = tally;
        if (++done % TELL_EVERY === 0) process.stderr.write(`${done} of ${count} builds\n`);
      });
      child.once('error', reject);
      child.once('exit', (code) =>
        code === 0 ? resolve() : reject(new Error(`A process ended with ${code}`)),
      );
      child.send({ seed, indices } satisfies Task);
    });
  await Promise.all(Array.from({ length: PROCESSES }, (_, nth) => worker(nth)));
  return found;
}
