// Finds a Chromium for the browser tests, or installs one where this machine's packages allow it.
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { NotReady, run } from './ready.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'];

/** Of itself Debian's Chromium brings no font; this one has the marks and fractions that the screens show. */
const PACKAGES = ['chromium', 'fonts-dejavu-core'];

/** Where installers put a browser without a name on the PATH. */
const PLACES = [
  '/usr/bin/chromium',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  ...['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) => {
    const folder = process.env[name];
    return folder ? [join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe')] : [];
  }),
];

/**
 * The CHROMIUM environment variable wins; then the PATH; then the usual places.
 *
 * @returns {string | null} path of the program
 * @throws {NotReady} where CHROMIUM names no file
 */
export function findChromium() {
  const named = process.env['CHROMIUM'];
  if (named) {
    if (existsSync(named)) return named;
    throw new NotReady(`CHROMIUM names "${named}", where there is no file: give the path of a Chromium.`);
  }
  const folders = (process.env['PATH'] ?? '').split(delimiter).filter(Boolean);
  const onPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...onPath, ...PLACES].find((path) => existsSync(path)) ?? null;
}

/**
 * @returns {string} path of a Chromium; installed first where none is found and this is Debian or Ubuntu, as root
 * @throws {NotReady} with the cure, where it cannot be installed from here
 */
export function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  if (existsSync('/usr/bin/apt-get') && process.getuid?.() === 0) {
    console.log('No Chromium found: installing the package chromium …');
    const quiet = { DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get', ['update', '-q'], quiet);
    run('apt-get', ['install', '-q', '-y', '--no-install-recommends', ...PACKAGES], quiet);
    const installed = findChromium();
    if (installed) return installed;
  }
  throw new NotReady(
    'The browser tests need a Chromium and none was found: install one (on Debian: "sudo apt-get install chromium"; ' +
      'elsewhere Chromium or Chrome from its maker), or set CHROMIUM to the path of one; then run the command again.',
  );
}
