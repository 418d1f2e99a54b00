// Makes a fresh clone ready to run with nothing but Node and git: plain JavaScript, no packages.
import { spawnSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
export const DIST = join(ROOT, 'dist');

/** What the built app is made from; the build is stale once any of it is younger than the build. */
const SOURCES = ['src', 'public', 'vite.config.ts', 'package-lock.json'];

/** A step that could not be done; its message is a sentence for the person at the desk. */
export class NotReady extends Error {}

/**
 * Runs a program in the project's folder with this terminal's input and output.
 *
 * @param {string} command
 * @param {string[]} args
 * @param {Record<string, string>} [env] added to the environment
 * @returns {number} its exit code; 1 where a signal ended it
 */
export function run(command, args, env = {}) {
  const shell = process.platform === 'win32' && command === 'npm';
  const done = spawnSync(command, args, {
    cwd: ROOT,
    stdio: 'inherit',
    env: { ...process.env, ...env },
    shell,
  });
  if (done.error) throw new NotReady(`"${command}" could not be started: ${done.error.message}.`);
  return done.status ?? 1;
}

/**
 * Runs a package's own program with this very Node, so that no shell and no PATH is needed.
 *
 * @param {string} script path inside node_modules
 * @param {string[]} args
 * @param {Record<string, string>} [env]
 * @returns {number} its exit code
 */
export function runPackage(script, args, env = {}) {
  return run(process.execPath, [join(ROOT, 'node_modules', script), ...args], env);
}

/** Installs the packages of the lock file, unless they were installed since it last changed. */
export function installPackages() {
  const installed = modified(join(ROOT, 'node_modules', '.package-lock.json'));
  if (installed >= modified(join(ROOT, 'package-lock.json'))) return;
  console.log('Installing the packages of package-lock.json …');
  const args = ['ci', '--no-audit', '--no-fund'];
  // Under `npm start`, npm says where it is itself; called by hand, it must be on the PATH.
  const npm = process.env['npm_execpath'];
  const code = npm ? run(process.execPath, [npm, ...args]) : run('npm', args);
  if (code !== 0) {
    throw new NotReady(
      'The packages could not be installed: see the lines above, then run the command again.',
    );
  }
}

/** Builds the app into dist/, unless nothing it is made from has changed since. */
export function buildApp() {
  // Not sw.js: that one is written even after a build that failed.
  const built = modified(join(DIST, 'index.html'));
  if (SOURCES.every((source) => newest(join(ROOT, source)) <= built)) return;
  console.log('Building the app …');
  if (runPackage('vite/bin/vite.js', ['build', '--logLevel', 'warn']) !== 0) {
    throw new NotReady('The app could not be built: see the lines above.');
  }
}

/**
 * Runs a command's steps; a step that could not be done ends it with its sentence instead of a stack of calls.
 *
 * @param {() => Promise<void> | void} steps
 */
export async function main(steps) {
  try {
    await steps();
  } catch (error) {
    if (!(error instanceof NotReady)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}

/** @param {string} path @returns {number} milliseconds; 0 where there is no such file */
function modified(path) {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0;
}

/**
 * A folder's own time counts too: it changes when a file in it is removed.
 *
 * @param {string} path file or folder
 * @returns {number} milliseconds, of the youngest thing there
 */
function newest(path) {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (!stat) return 0;
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))));
}
