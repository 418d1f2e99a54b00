import { withSmallStore } from './small-store.ts';
import { watched } from './watched.ts';

/** Whether the user works alone is kept on the phone, for every job, until it is said otherwise. */
const KEY = 'swingtape.alone';
const YES = 'yes';

/** Stands in for the store where the browser refuses it: for as long as the page lasts. */
let unkept = false;

const { useChanges, changed } = watched();

const isAlone = (): boolean => {
  const kept = withSmallStore((storage) => storage.getItem(KEY) ?? '');
  return kept === null ? unkept : kept === YES;
};

function setAlone(alone: boolean): void {
  unkept = alone;
  withSmallStore((storage) => (alone ? storage.setItem(KEY, YES) : storage.removeItem(KEY)));
  changed();
}

/** Whether one person does it all, with both tapes hooked on their nails. */
export function useAlone(): readonly [boolean, (alone: boolean) => void] {
  useChanges();
  return [isAlone(), setAlone];
}
