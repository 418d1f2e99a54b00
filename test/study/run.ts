/**
 * What verdicts, ellipses and alarms are worth, on simulated jobs whose truth is known.
 *
 * Run: npm run study [-- --jobs 20000 --seed 1 --save]. Prints the table; `--save` writes it to STUDY.md beside this file.
 * Ends with exit code 1 when a bar is missed.
 */
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { pageOf, tablesOf } from './page.ts';
import { rowsOf } from './rows.ts';
import { Study } from './study.ts';
import { whole } from './whole.ts';

const PAGE = new URL('./STUDY.md', import.meta.url);
const TELL_EVERY = 1000;

const { values } = parseArgs({
  options: {
    jobs: { type: 'string', default: '20000' },
    seed: { type: 'string', default: '1' },
    save: { type: 'boolean', default: false },
  },
});

const jobs = whole('jobs', values.jobs);
const study = new Study(whole('seed', values.seed));
while (study.jobs < jobs) {
  study.addJob();
  if (study.jobs % TELL_EVERY === 0) process.stderr.write(`${study.jobs} of ${jobs} jobs\n`);
}

console.log(`${jobs} jobs from seed ${study.seed}\n\n${tablesOf(study)}`);
if (values.save) {
  writeFileSync(PAGE, pageOf(study, `npm run study -- --jobs ${jobs} --seed ${study.seed} --save`));
}
const missed = rowsOf(study).filter(({ bar }) => bar?.holds === false);
for (const { question, bar } of missed) console.log(`Missed: ${question}, ${bar?.text}`);
process.exitCode = missed.length === 0 ? 0 : 1;
