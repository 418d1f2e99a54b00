import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Served, serve } from '../../src/desk/serve.mjs';

let served: Served;

beforeAll(async () => {
  const outside = mkdtempSync(join(tmpdir(), 'swingtape-'));
  const folder = join(outside, 'app');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(outside, 'secret.txt'), 'secret');
  mkdirSync(`${folder}-beside`);
  writeFileSync(join(`${folder}-beside`, 'secret.txt'), 'secret');
  writeFileSync(join(folder, 'index.html'), '<h1>home</h1>');
  writeFileSync(join(folder, 'sw.js'), '// worker');
  writeFileSync(join(folder, 'assets', 'a b.svg'), '<svg/>');
  served = await serve(folder, { base: '/some/where/' });
});

afterAll(() => served.close());

/** The path goes out as it is: fetch would tidy up the dots first. */
const get = (path: string, method = 'GET') =>
  new Promise<{
    status: number | undefined;
    type: string | undefined;
    cache: string | undefined;
    text: string;
  }>((resolve, reject) => {
    const { port } = new URL(served.url);
    request({ host: '127.0.0.1', port, path, method }, (response) => {
      let text = '';
      response.on('data', (part) => {
        text += String(part);
      });
      response.on('end', () => {
        const { 'content-type': type, 'cache-control': cache } = response.headers;
        resolve({ status: response.statusCode, type, cache, text });
      });
    })
      .on('error', reject)
      .end();
  });

describe('serve', () => {
  it.each([
    ['/some/where/', 'text/html; charset=utf-8', '<h1>home</h1>'],
    ['/some/where/index.html?x=1', 'text/html; charset=utf-8', '<h1>home</h1>'],
    ['/some/where/sw.js', 'text/javascript; charset=utf-8', '// worker'],
    ['/some/where/assets/a%20b.svg', 'image/svg+xml', '<svg/>'],
  ])('gives %s as %s, never to be kept unasked', async (path, type, text) => {
    expect(await get(path)).toEqual({ status: 200, type, cache: 'no-cache', text });
  });

  it.each([
    '/some/where/missing.js',
    '/some/where/assets',
    '/some/where/../secret.txt',
    '/some/where/..%2fsecret.txt',
    '/some/where/../app-beside/secret.txt',
    '/some/where/%00',
    '/some/where/%',
    '/index.html',
  ])('has nothing at %s', async (path) => {
    expect((await get(path)).status).toBe(404);
  });

  it('leads to the slash, answers HEAD without a body, and takes nothing', async () => {
    expect((await get('/some/where')).status).toBe(308);
    expect(await get('/some/where/', 'HEAD')).toMatchObject({ status: 200, text: '' });
    expect((await get('/some/where/', 'POST')).status).toBe(405);
  });

  it('goes on to the next port when the first is taken', async () => {
    const { port } = new URL(served.url);
    const other = await serve(tmpdir(), { port: Number(port) });
    expect(Number(new URL(other.url).port)).toBeGreaterThan(Number(port));
    await other.close();
  });
});
