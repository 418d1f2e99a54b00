import { expect } from 'vitest';
import type { Phase } from '../../src/screens/route.ts';
import { readExample, restoreLog, upTo } from './example.ts';
import { show } from './go.ts';
import { Hand } from './hand.ts';
import { type App, openApp } from './harness.ts';
import { hiddenMain, sidewaysScroll, smallTargets } from './look.ts';

export const EXAMPLE = readExample().log;

/** Gathers what is wrong with each screen, so that one run shows all of it. */
export class Inspection {
  readonly faults: string[] = [];
  readonly hand: Hand;

  constructor(readonly app: App) {
    this.hand = new Hand(app.page);
  }

  /** @param main whether the one thing to do must be on the screen before anything is scrolled */
  async look(screen: string, main: 'main' | 'no main' = 'no main'): Promise<void> {
    const { page } = this.app;
    const found = [
      ...(await this.app.graveFaults()),
      ...(await sidewaysScroll(page)),
      ...(await smallTargets(page)),
      ...(main === 'main' ? await hiddenMain(page) : []),
    ];
    this.faults.push(...found.map((fault) => `${screen}: ${fault}`));
  }

  /** A phase's card for a job that has come so far. */
  async lookAt(words: string, phase: Phase, hole: string | null = null): Promise<void> {
    await restoreLog(this.app.page, upTo(words, EXAMPLE));
    await show(this.app.page, phase, hole);
    await this.look(`${phase} after “${words}”`, 'main');
  }
}

export async function inspect(work: (inspection: Inspection) => Promise<void>): Promise<void> {
  const inspection = new Inspection(await openApp());
  await work(inspection);
  expect(inspection.faults).toEqual([]);
}
