// `npm test`: installs what is missing, builds, runs every test, and ends with how many passed and failed.
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureChromium } from './chromium.mjs';
import { buildApp, installPackages, main, ROOT, runPackage } from './ready.mjs';

const OUT = join(ROOT, 'out');

/** Unit, component and reference tests need no browser; the end-to-end tests drive the built app in one. */
const PROJECTS = ['unit', 'e2e'];

/**
 * @typedef {{ passed: number, failed: number }} Count
 * @typedef {{ numPassedTests: number, numFailedTests: number, testResults: { status: string, assertionResults: unknown[] }[] }} Report
 */

/**
 * @param {string} project
 * @param {string} chromium
 * @returns {Count} a run that died without a report, or whose failure no test shows, counts as one failed
 */
function runTests(project, chromium) {
  const file = join(OUT, `${project}.json`);
  rmSync(file, { force: true });
  const code = runPackage(
    'vitest/vitest.mjs',
    [
      'run',
      '--config=test/vitest.config.ts',
      `--project=${project}`,
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${file}`,
    ],
    { CHROMIUM: chromium },
  );
  const count = existsSync(file) ? countOf(JSON.parse(readFileSync(file, 'utf8'))) : { passed: 0, failed: 0 };
  const unseen = code !== 0 && count.failed === 0;
  if (unseen)
    console.error(`The ${project} tests ended with exit code ${code}, yet none of them is marked failed.`);
  if (count.passed + count.failed === 0) console.error(`The ${project} tests ran no test.`);
  return unseen || count.passed + count.failed === 0 ? { passed: count.passed, failed: 1 } : count;
}

/**
 * @param {Report} report
 * @returns {Count} a file that could not even be loaded has no tests to count, so it counts as one failed
 */
function countOf(report) {
  const unloaded = report.testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  );
  return { passed: report.numPassedTests, failed: report.numFailedTests + unloaded.length };
}

await main(() => {
  installPackages();
  const chromium = ensureChromium();
  buildApp();
  mkdirSync(OUT, { recursive: true });
  const counts = PROJECTS.map((project) => runTests(project, chromium));
  const passed = counts.reduce((sum, count) => sum + count.passed, 0);
  const failed = counts.reduce((sum, count) => sum + count.failed, 0);
  if (failed > 0) process.exitCode = 1;
  console.log(`${passed} passed, ${failed} failed`);
});
