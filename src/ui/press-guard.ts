import { REPEAT_TAP_MS } from './repeat-tap.ts';

/** How far a thumb that taps twice strays between the taps, CSS pixels: 6 mm. */
const SAME_SPOT_PX = 40;

/** The part of a document that is listened to. */
type Page = Pick<Document, 'addEventListener'>;

/**
 * Keeps the second half of a double tap from pressing what the first half brought up under the thumb: a press that comes
 * within `REPEAT_TAP_MS` of the last one, on the same spot and on another thing, is dropped. The same thing pressed twice,
 * such as a digit, is its own business; so is a press from a keyboard, which has no spot.
 */
export function guardPresses(page: Page): void {
  let last: MouseEvent | null = null;
  page.addEventListener(
    'click',
    (event) => {
      if (event.detail === 0) return;
      if (last && isEcho(last, event)) {
        event.preventDefault();
        event.stopImmediatePropagation();
        return;
      }
      last = event;
    },
    { capture: true },
  );
}

function isEcho(last: MouseEvent, event: MouseEvent): boolean {
  const apart = Math.hypot(event.clientX - last.clientX, event.clientY - last.clientY);
  const soon = event.timeStamp - last.timeStamp < REPEAT_TAP_MS;
  return soon && apart < SAME_SPOT_PX && pressed(event) !== pressed(last) && !isWithin(event, last);
}

/** The button, link or box that was meant, rather than the words on it. */
const pressed = ({ target }: Event): EventTarget | null =>
  target instanceof Element ? (target.closest('button, a, label, summary, input') ?? target) : target;

/** A tap on a label reaches its box as a second click of its own. */
function isWithin({ target }: Event, { target: before }: Event): boolean {
  if (!(target instanceof HTMLElement) || !(before instanceof Element)) return false;
  const label = before.closest('label');
  return label instanceof HTMLLabelElement && label.control === target;
}
