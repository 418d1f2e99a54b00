import type { Page } from 'playwright-core';

/** As promised to gloved and dirty fingers, CSS pixels. */
const TARGET = 64;
/** The narrowest phone in use. */
const NARROW = 320;

/** What can be tapped. A choice is tapped on its label, which holds the input. */
const TARGETS = 'button, a[href], summary, label.choice, label.button, .field-box';

/** Whatever a sheet covers cannot be tapped and is left out; so is what only a screen reader meets. */
const inFront = `
  const root = document.querySelector('dialog[open]') ?? document;
  const shown = [...root.querySelectorAll('${TARGETS}')].filter((each) => each.checkVisibility() && !each.classList.contains('visually-hidden'));
  const nameOf = (each) => (each.getAttribute('aria-label') ?? each.textContent ?? '').trim().slice(0, 40) + ' <' + each.className + '>';
`;

/** Targets that are neither as tall nor as wide as promised, each with its size. */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(`(() => {
    ${inFront}
    return shown.flatMap((each) => {
      const { width, height } = each.getBoundingClientRect();
      const large = Math.round(width) >= ${TARGET} && Math.round(height) >= ${TARGET} / 2 || Math.round(height) >= ${TARGET};
      return large ? [] : [nameOf(each) + ' is ' + Math.round(width) + ' × ' + Math.round(height)];
    });
  })()`);

/** How far the page can be pushed sideways, CSS pixels; 0 on a page that fits. */
const overflow = (page: Page): Promise<number> =>
  page.evaluate(`(() => {
    const scrolled = [document.documentElement, ...document.querySelectorAll('dialog[open], dialog[open] .sheet-main')];
    return Math.max(...scrolled.map((each) => each.scrollWidth - each.clientWidth));
  })()`);

/** The drawing takes its size from the page's, and is drawn anew a few frames later. */
const settle = (page: Page): Promise<unknown> =>
  page.evaluate(`new Promise((done) => {
    let frames = 6;
    const next = () => (frames-- === 0 ? done() : requestAnimationFrame(next));
    next();
  })`);

/** Widths at which the page can be pushed sideways. */
export async function sidewaysScroll(page: Page): Promise<string[]> {
  const usual = page.viewportSize();
  if (!usual) throw new Error('The page has no size');
  const found: string[] = [];
  for (const width of [usual.width, NARROW]) {
    await page.setViewportSize({ ...usual, width });
    await settle(page);
    const over = await overflow(page);
    if (over > 0) found.push(`${over} px too wide at ${width} px`);
  }
  await page.setViewportSize(usual);
  await settle(page);
  return found;
}

/** The main button or link, where it is not wholly on the screen before anything is scrolled. */
export const hiddenMain = (page: Page): Promise<string[]> =>
  page.evaluate(`(() => {
    ${inFront}
    scrollTo(0, 0);
    const main = shown.filter((each) => each.classList.contains('button-main'));
    if (main.length !== 1) return [main.length + ' main buttons: ' + main.map(nameOf).join(', ')];
    return main.flatMap((each) => {
      const { top, bottom } = each.getBoundingClientRect();
      return top >= 0 && bottom <= innerHeight ? [] : [nameOf(each) + ' is at ' + Math.round(top) + ' to ' + Math.round(bottom)];
    });
  })()`);
