import { fireEvent, screen } from '@testing-library/preact';
import type { Body } from '../../../src/job/entry-schema.ts';
import { DigScreen } from '../../../src/screens/dig/dig-screen.tsx';
import { openScreen } from '../plan/open-screen.tsx';
import { tap, typeReading } from '../taps.ts';

/** Dig with a log so far, at a hole or at whatever comes next. */
export const openDig = (bodies: readonly Body[], hole: string | null = null) =>
  openScreen(DigScreen, bodies, hole);

/** Says what was met in a hole. */
export const choose = (label: string) =>
  fireEvent.click(screen.getByRole('radio', { name: label, hidden: true }));

/** Where a link leads. */
export const link = (name: string) => screen.getByRole('link', { name }).getAttribute('href');

/** Depth, then width, as the keypad asks for them. */
export function typeDug(depth: string, width: string): void {
  typeReading(depth);
  tap(/^Read it/);
  typeReading(width);
  tap(/^Read it/);
}
