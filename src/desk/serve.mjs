// A static server for the built app: Node alone, on this machine only.
import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';

/** @type {Record<string, string>} */
const TYPES = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
};

const HOST = '127.0.0.1';
/** How many ports are tried, one after the other, before giving up. */
const PORTS_TRIED = 100;
const HIGHEST_PORT = 65_535;

/**
 * @typedef {object} Served
 * @property {string} url address of the app, with a slash at the end
 * @property {() => Promise<void>} close
 */

/**
 * Serves a folder's files, from the first free port on.
 *
 * @param {string} folder
 * @param {object} [options]
 * @param {number} [options.port] first port to try; 0 takes any free one
 * @param {string} [options.base] path that the files are served under, with a slash at both ends
 * @returns {Promise<Served>}
 * @throws {Error} where no port is free
 */
export async function serve(folder, { port = 0, base = '/' } = {}) {
  const server = createServer((request, response) => answer(folder, base, request, response));
  const taken = await listen(server, port);
  return {
    url: `http://localhost:${taken}${base}`,
    close: () =>
      new Promise((resolve, reject) => {
        server.close((error) => (error ? reject(error) : resolve()));
        server.closeAllConnections();
      }),
  };
}

/**
 * @param {import('node:http').Server} server
 * @param {number} first
 * @returns {Promise<number>} the port it listens on
 */
async function listen(server, first) {
  const last = Math.min(first + PORTS_TRIED - 1, HIGHEST_PORT);
  for (let port = first; port <= last; port += 1) {
    const outcome = await new Promise((resolve) => {
      server.once('error', resolve);
      server.listen(port, HOST, () => resolve(null));
    });
    server.removeAllListeners('error');
    const address = server.address();
    if (outcome === null && address !== null && typeof address === 'object') return address.port;
    if (outcome.code !== 'EADDRINUSE') throw outcome;
  }
  throw new Error(`No port from ${first} to ${last} is free.`);
}

/**
 * @param {string} folder
 * @param {string} base
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 */
function answer(folder, base, request, response) {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { allow: 'GET, HEAD' }).end();
    return;
  }
  const path = (request.url ?? '/').split(/[?#]/, 1)[0] ?? '/';
  if (`${path}/` === base) {
    response.writeHead(308, { location: base }).end();
    return;
  }
  const file = path.startsWith(base) ? fileAt(folder, path.slice(base.length)) : null;
  if (file === null) {
    response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('Nothing is served here.');
    return;
  }
  response.writeHead(200, {
    'content-type': TYPES[extname(file.path)] ?? 'application/octet-stream',
    'content-length': file.size,
    // The browser must ask again each time, most of all for sw.js: a kept old one would hide every update.
    'cache-control': 'no-cache',
    'x-content-type-options': 'nosniff',
  });
  if (request.method === 'HEAD') response.end();
  else createReadStream(file.path).pipe(response);
}

/**
 * @param {string} folder
 * @param {string} address path below the base, as sent
 * @returns {{ path: string, size: number } | null} null where there is no such file inside the folder
 */
function fileAt(folder, address) {
  const name = decoded(address === '' || address.endsWith('/') ? `${address}index.html` : address);
  if (name === null) return null;
  const path = normalize(join(folder, name));
  if (!path.startsWith(normalize(folder + sep))) return null;
  const stat = statSync(path, { throwIfNoEntry: false });
  return stat?.isFile() ? { path, size: stat.size } : null;
}

/** @param {string} text @returns {string | null} null where an escape is broken or hides a zero byte */
function decoded(text) {
  try {
    const name = decodeURIComponent(text);
    return name.includes('\0') ? null : name;
  } catch (error) {
    if (error instanceof URIError) return null;
    throw error;
  }
}
