import { useEffect, useState } from 'preact/hooks';
import { withSmallStore } from './small-store.ts';

/** Whether the user works alone is kept on the phone, for every job, until it is said otherwise. */
const KEY = 'swingtape.alone';
const YES = 'yes';

/** What shows it, to be drawn again when it changes. */
const watchers = new Set<() => void>();

/** Stands in for the store where the browser refuses it: for as long as the page lasts. */
let unkept = false;

const isAlone = (): boolean => {
  const kept = withSmallStore((storage) => storage.getItem(KEY) ?? '');
  return kept === null ? unkept : kept === YES;
};

function setAlone(alone: boolean): void {
  unkept = alone;
  withSmallStore((storage) => (alone ? storage.setItem(KEY, YES) : storage.removeItem(KEY)));
  for (const redraw of watchers) redraw();
}

/** Whether one person does it all, with both tapes hooked on their nails. */
export function useAlone(): readonly [boolean, (alone: boolean) => void] {
  const [, count] = useState(0);
  useEffect(() => {
    const redraw = () => count((n) => n + 1);
    watchers.add(redraw);
    return () => void watchers.delete(redraw);
  }, []);
  return [isAlone(), setAlone];
}
