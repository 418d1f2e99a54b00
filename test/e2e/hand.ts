import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import type { Length } from '../../src/job/length.ts';
import { REPEAT_TAP_MS } from '../../src/ui/repeat-tap.ts';

/** How a length gets into the keypad: by its own keys, or from a keyboard that is plugged in. */
export type Way = 'taps' | 'keyboard';

/** A repeat tap, and a little more. */
const DELIBERATE_MS = REPEAT_TAP_MS + 50;

/** Nearer than this the app takes two taps for one thumb; and a little more. */
const SAME_SPOT_PX = 60;
/** A spot that was not looked up: it may be any, so the next key waits. */
const SOMEWHERE = { x: Number.NaN, y: Number.NaN };

export interface Count {
  taps: number;
  keys: number;
}

/** One person at the phone. Every tap and every key is counted, under whatever name was given last. */
export class Hand {
  readonly counts = new Map<string, Count>();
  /** Readings that the keypad asked back about. */
  readonly askedBack: string[] = [];
  #count: Count = { taps: 0, keys: 0 };
  #lastTap = { ...SOMEWHERE, at: 0 };

  constructor(readonly page: Page) {}

  countFor(name: string): void {
    this.#count = this.counts.get(name) ?? { taps: 0, keys: 0 };
    this.counts.set(name, this.#count);
  }

  /** Slower than a hand that is nudged, which the app would take for one tap. */
  async tap(target: Locator): Promise<void> {
    this.#count.taps += 1;
    await this.#waitSince(this.#lastTap.at);
    await target.tap();
    this.#lastTap = { ...SOMEWHERE, at: Date.now() };
  }

  /** A tap that waits only where it falls on the spot of the last one. */
  async #tapAside(target: Locator): Promise<void> {
    await target.waitFor();
    const box = await target.boundingBox();
    if (!box) throw new Error('Nothing to tap');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const { x: lastX, y: lastY, at } = this.#lastTap;
    if (!(Math.hypot(x - lastX, y - lastY) >= SAME_SPOT_PX)) await this.#waitSince(at);
    await target.tap();
    this.#lastTap = { x, y, at: Date.now() };
  }

  async #waitSince(before: number): Promise<void> {
    const since = Date.now() - before;
    if (since < DELIBERATE_MS) await this.page.waitForTimeout(DELIBERATE_MS - since);
  }

  button = (name: string | RegExp, within: Page | Locator = this.page): Locator =>
    within.getByRole('button', { name, exact: true });

  link = (name: string | RegExp): Locator => this.page.getByRole('link', { name });

  tapButton = (name: string | RegExp, within?: Page | Locator): Promise<void> =>
    this.tap(this.button(name, within));

  /** Taps one of a few choices under a question. */
  choose = (question: string, answer: string): Promise<void> =>
    this.tap(
      this.page
        .getByRole('group', { name: question, exact: true })
        .locator('label')
        .filter({ hasText: new RegExp(`^${answer}`) }),
    );

  /** Types into a field in place of what stands in it, and leaves it by Enter. */
  async fill(label: string, text: string): Promise<void> {
    const field = this.page.getByLabel(label, { exact: true });
    await this.tap(field);
    await field.fill(text);
    await field.press('Enter');
    this.#count.keys += text.length + 1;
  }

  /** Goes to a phase by its tab, unless it is the one that is open. */
  async goTo(phase: string): Promise<void> {
    const tab = this.page.getByRole('navigation', { name: 'Phases' }).getByRole('link', { name: phase });
    if ((await tab.getAttribute('aria-current')) === 'page') return;
    await this.tap(tab);
    await this.page.locator(`.tab[aria-current=page]`, { hasText: phase }).waitFor();
    await this.page.getByText('One moment…').waitFor({ state: 'detached' });
  }

  /** Goes to a hole by the strip of all holes, unless it is the one that the card is about. */
  async goToHole(hole: string): Promise<void> {
    const cell = this.page.locator('.hole-strip a').filter({ has: this.#label(hole) });
    if ((await cell.getAttribute('aria-current')) !== null) return;
    await this.tap(cell);
    await this.page
      .locator('.hole-strip a[aria-current]')
      .filter({ has: this.#label(hole) })
      .waitFor();
  }

  #label = (hole: string): Locator =>
    this.page.locator('.hole-strip-label', { hasText: new RegExp(`^Hole ${hole}$`) });

  /** Opens what is one tap further, unless it is open. */
  async open(name: string | RegExp): Promise<void> {
    const button = this.button(name);
    if ((await button.getAttribute('aria-expanded')) !== 'true') await this.tap(button);
  }

  /** The card's own words: the one thing to do next. */
  card = async (): Promise<string> =>
    ((await this.page.locator('main h2').first().textContent()) ?? '').replaceAll('\u00a0', ' ');

  sheet = (title: string): Locator => this.page.getByRole('dialog', { name: title, exact: true });

  /** Reads a length into the keypad of that title and hands it over. Where the keypad asks back, it was read right. */
  async read(title: string, length: Length, way: Way): Promise<void> {
    const pad = this.sheet(title);
    await pad.waitFor();
    if (way === 'taps') await this.#tapOut(pad, length);
    else await this.#type(length);
    await this.tapButton(/^Read it/, pad);
    await this.page.waitForFunction(
      (was) =>
        document.querySelector('dialog[open] h2')?.textContent !== was ||
        document.querySelector('.keypad-question') !== null,
      title,
    );
    if ((await pad.locator('.keypad-question').count()) === 0) return;
    this.askedBack.push(`${title}: ${await pad.locator('.keypad-question').textContent()}`);
    await this.tapButton('Keep it as read', pad);
  }

  /** Backs the job up on the Record, as a download. */
  async backUp(): Promise<string> {
    await this.goTo('Record');
    const download = this.page.waitForEvent('download');
    await this.tapButton('Back up');
    return readFileSync(await (await download).path(), 'utf8');
  }

  async #type(length: Length): Promise<void> {
    const { feet, inches, fraction } = piecesOf(length);
    const text = [feet, inches, fraction].filter((piece) => piece !== '').join(' ');
    this.#count.keys += text.length;
    await this.page.keyboard.type(text);
  }

  /** Keys of the pad take taps as fast as they come, but where one key came up under another. */
  async #tapKey(name: string, pad: Locator): Promise<void> {
    this.#count.taps += 1;
    await this.#tapAside(this.button(name, pad));
  }

  async #tapOut(pad: Locator, length: Length): Promise<void> {
    const { feet, inches, fraction } = piecesOf(length);
    // What is never a foot begins with the whole inches.
    if (feet === '' && (await pad.getByRole('group', { name: 'Whole inches' }).count()) > 0) {
      if (inches === '') await this.tap(pad.locator('.piece-fraction'));
      else await this.#tapKey(`${inches} ${inches === '1' ? 'inch' : 'inches'}`, pad);
      if (fraction) await this.#tapKey(fraction, pad);
      return;
    }
    for (const digit of feet || inches) await this.#tapKey(digit, pad);
    await this.#tapKey(feet ? '′ ft' : '″ in', pad);
    if (feet) await this.#tapKey(`${inches} ${inches === '1' ? 'inch' : 'inches'}`, pad);
    else if (inches === '') await this.tap(pad.locator('.piece-fraction'));
    if (fraction) await this.#tapKey(fraction, pad);
  }
}

/** `36′ 9 11/16″` in its three pieces; empty where it has none. */
function piecesOf({ typed }: Length): { feet: string; inches: string; fraction: string } {
  const pieces = /^(?:(?<feet>\d+)′ ?)?(?<inches>\d+)?(?: ?(?<fraction>\d+\/\d+))?″$/.exec(typed)?.groups;
  if (!pieces) throw new RangeError(`“${typed}” is not in feet, inches and fractions`);
  return { feet: pieces['feet'] ?? '', inches: pieces['inches'] ?? '', fraction: pieces['fraction'] ?? '' };
}
