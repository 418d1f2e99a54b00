// `npm run size`: what a phone must load before the app starts, in gzipped JavaScript, against its bound.
import { readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { gzipSync } from 'node:zlib';
import { parseSync } from 'vite';
import { builtApp } from '../e2e/browser.ts';

/** Kilobytes of 1000 bytes, as download sizes are told. A choice of this project: about a second on a weak signal. */
const BOUND_KB = 70;
const BYTES_PER_KB = 1000;

/** The file and everything that it imports before it can run, each once. */
function withStaticImports(folder: string, file: string, seen = new Set<string>()): Set<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  const { module } = parseSync(file, readFileSync(join(folder, file), 'utf8'));
  for (const { moduleRequest } of module.staticImports) {
    withStaticImports(folder, normalize(join(dirname(file), moduleRequest.value)), seen);
  }
  return seen;
}

const folder = builtApp();
const page = readFileSync(join(folder, 'index.html'), 'utf8');
const entries = [...page.matchAll(/<script[^>]*\ssrc="\.\/([^"]+)"/g)].map((match) => match[1] ?? '');
if (entries.length === 0) throw new Error('dist/index.html starts no script.');
const files = new Set(entries.flatMap((entry) => [...withStaticImports(folder, entry)]));

let total = 0;
for (const file of files) {
  const kB = gzipSync(readFileSync(join(folder, file))).length / BYTES_PER_KB;
  total += kB;
  console.log(`${kB.toFixed(1).padStart(7)} kB  ${file}`);
}
console.log(`${total.toFixed(1).padStart(7)} kB  initial JavaScript, gzipped; the bound is ${BOUND_KB} kB`);
if (total > BOUND_KB) process.exitCode = 1;
