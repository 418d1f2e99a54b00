import { fireEvent, screen } from '@testing-library/preact';

/** Taps the button or link of that name. Sheets hide what is behind them, so hidden parts are found too. */
export function tap(name: string | RegExp, role: 'button' | 'link' = 'button'): void {
  fireEvent.click(screen.getByRole(role, { name, hidden: true }));
}

/** As `tap`, once it is there. */
export async function tapWhenThere(name: string | RegExp): Promise<void> {
  fireEvent.click(await screen.findByRole('button', { name, hidden: true }));
}

/** Types a reading into the open keypad, as from a hardware keyboard. */
export function typeReading(text: string): void {
  for (const key of text) fireEvent.keyDown(document.body, { key });
}

export const heading = (): string =>
  screen.getAllByRole('heading', { level: 2, hidden: true })[0]!.textContent ?? '';
