/**
 * What comes of following the cards of the Set screen, on simulated builds whose truth is known.
 *
 * Run: npm run builds [-- --builds 500 --seed 1 --save]. Prints the tables; `--save` writes them to BUILDS.md beside this file.
 * Ends with exit code 1 when a bar is missed.
 */
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { Builds } from './builds.ts';
import { buildBars, buildsPage, buildTables, isMissed } from './builds-page.ts';
import { whole } from './whole.ts';

const PAGE = new URL('./BUILDS.md', import.meta.url);
const TELL_EVERY = 10;

const { values } = parseArgs({
  options: {
    builds: { type: 'string', default: '500' },
    seed: { type: 'string', default: '1' },
    save: { type: 'boolean', default: false },
  },
});

const count = whole('builds', values.builds);
const builds = new Builds(whole('seed', values.seed));
while (builds.count < count) {
  builds.addBuild();
  if (builds.count % TELL_EVERY === 0) process.stderr.write(`${builds.count} of ${count} builds\n`);
}

console.log(`${count} builds from seed ${builds.seed}\n\n${buildTables(builds)}`);
if (values.save) {
  const command = `npm run builds -- --builds ${count} --seed ${builds.seed} --save`;
  writeFileSync(PAGE, buildsPage(builds, command));
}
const missed = buildBars(builds).filter(isMissed);
for (const { what } of missed) console.log(`Missed: ${what}`);
process.exitCode = missed.length === 0 ? 0 : 1;
