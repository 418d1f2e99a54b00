import { mkdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Result as AxeResult, AxeResults } from 'axe-core';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, expect, onTestFinished } from 'vitest';
import { ROOT } from '../../src/desk/ready.mjs';
import { type Served, serve } from '../../src/desk/serve.mjs';
import { builtApp, launch, PHONE, phone } from './browser.ts';

/** Not the root of its host, so that every test also shows that the app works from any sub-path. */
const SUB_PATH = '/some/where/';
const SCREENS = join(ROOT, 'out', 'screens');
const axeSource = readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface OpenOptions {
  /** What follows the app's address, such as `#/job/…`. */
  readonly path?: string;
  /** Cuts the signal once the app is installed, then starts it anew from its cache. */
  readonly offline?: boolean;
  readonly viewport?: { readonly width: number; readonly height: number };
  /** Another folder than dist/, for tests that change what is served. */
  readonly folder?: string;
}

export interface App {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Address of the app, with a slash at the end. */
  readonly url: string;
  /** What must not happen and did: console errors and warnings, uncaught errors, requests to another origin. */
  readonly problems: string[];
  /** Waits until the service worker runs this page and every file that it must keep is in its cache. */
  readonly installed: () => Promise<void>;
  /** Flight mode. The app must be installed first if it is to start again. */
  readonly cutSignal: () => Promise<void>;
  /** A new page on the same phone; the old one is closed first, as when the app is swiped away. */
  readonly coldStart: (path?: string) => Promise<Page>;
  /** Puts a picture of the page into out/screens/. */
  readonly picture: (name: string) => Promise<void>;
  /** Every serious or critical fault that axe finds on the page as it stands, one line each. */
  readonly graveFaults: () => Promise<string[]>;
  /** Fails on any of them. */
  readonly expectAccessible: () => Promise<void>;
}

let browser: Promise<Browser> | null = null;
const servers = new Map<string, Promise<Served>>();

afterAll(async () => {
  await (await browser)?.close();
  for (const server of servers.values()) await (await server).close();
  browser = null;
  servers.clear();
});

/**
 * Opens the built app on a phone of its own (empty storage) and waits until it has started. When the test ends the
 * phone is thrown away, and the test fails if there was a problem.
 */
export async function openApp(options: OpenOptions = {}): Promise<App> {
  const { url } = await served(options.folder ?? builtApp());
  browser ??= launch();
  const context = await (await browser).newContext(phone(options.viewport ?? PHONE));
  const problems = watchProblems(context, url);
  onTestFinished(async () => {
    await context.close();
    expect(problems, 'problems in the browser').toEqual([]);
  });
  const app = new OpenedApp(context, await context.newPage(), url, problems);
  await app.start(options.path ?? '');
  if (options.offline) {
    await app.installed();
    await app.cutSignal();
    await app.coldStart(options.path);
  }
  return app;
}

class OpenedApp implements App {
  constructor(
    readonly context: BrowserContext,
    public page: Page,
    readonly url: string,
    readonly problems: string[],
  ) {}

  async start(path: string) {
    await this.page.goto(this.url + path);
    await this.page.waitForFunction(() => {
      const app = document.querySelector('#app');
      return app !== null && app.childElementCount > 0 && !app.querySelector('[data-starting]');
    });
  }

  async installed() {
    await this.page.evaluate(async () => {
      await navigator.serviceWorker.ready;
      if (navigator.serviceWorker.controller) return;
      await new Promise((resolve) => {
        navigator.serviceWorker.addEventListener('controllerchange', resolve, { once: true });
      });
    });
  }

  cutSignal = () => this.context.setOffline(true);

  async coldStart(path = '') {
    await this.page.close();
    this.page = await this.context.newPage();
    await this.start(path);
    return this.page;
  }

  async picture(name: string) {
    mkdirSync(SCREENS, { recursive: true });
    await this.page.screenshot({ path: join(SCREENS, `${name}.png`) });
  }

  async graveFaults() {
    // Both go through the debugger, which the page's own security policy does not bind.
    await this.page.evaluate(await axeSource);
    const results: AxeResults = await this.page.evaluate('axe.run()');
    const grave = results.violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
    return grave.map(inOneLine);
  }

  async expectAccessible() {
    expect(await this.graveFaults()).toEqual([]);
  }
}

const inOneLine = (fault: AxeResult) =>
  `${fault.id}: ${fault.help}: ${fault.nodes.map((node) => node.target.join(' ')).join(', ')}`;

function served(folder: string): Promise<Served> {
  const running = servers.get(folder) ?? serve(folder, { base: SUB_PATH });
  servers.set(folder, running);
  return running;
}

function watchProblems(context: BrowserContext, url: string): string[] {
  const problems: string[] = [];
  context.on('console', (message) => {
    const type = message.type();
    if (type === 'error' || type === 'warning') problems.push(`console ${type}: ${message.text()}`);
  });
  context.on('weberror', (event) => problems.push(`uncaught: ${event.error().message}`));
  context.on('request', (request) => {
    const address = new URL(request.url());
    const own = address.origin === new URL(url).origin || ['data:', 'blob:'].includes(address.protocol);
    if (!own) problems.push(`request to another origin: ${request.url()}`);
  });
  return problems;
}
