import { useRef } from 'preact/hooks';

/**
 * A second tap on the same thing within this time is a nudged hand, not a decision, milliseconds. Deliberate second
 * taps come later; a bounced thumb or a double tap comes sooner.
 */
export const REPEAT_TAP_MS = 400;

/** Wraps an action so that a repeat tap does nothing. The time is the event's own, so no clock is asked. */
export function useSingleTap(action: () => void): (event: Event) => void {
  const last = useRef(Number.NEGATIVE_INFINITY);
  return (event) => {
    if (event.timeStamp - last.current < REPEAT_TAP_MS) return;
    last.current = event.timeStamp;
    action();
  };
}
