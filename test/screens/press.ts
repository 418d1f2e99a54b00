import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { REPEAT_TAP_MS } from '../../src/ui/repeat-tap.ts';

let now = 0;

/**
 * Taps the button of that name as a person does who has waited: one button serves one step after another, and takes no
 * notice of a tap that comes too soon after the last. Sheets hide what is behind them, so hidden parts are found too.
 */
export function press(name: string | RegExp): void {
  const event = new MouseEvent('click', { bubbles: true, cancelable: true });
  now += REPEAT_TAP_MS;
  Object.defineProperty(event, 'timeStamp', { value: now });
  fireEvent(screen.getByRole('button', { name, hidden: true }), event);
}

/** Once what was pressed is there: a sheet may be in a file that is loaded when it is first wanted. */
export const whole = (): Promise<void> =>
  waitFor(() => {
    if (screen.queryByText('One moment…')) throw new Error('Still loading.');
  });
