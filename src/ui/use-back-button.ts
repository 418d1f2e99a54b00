import { useLayoutEffect, useRef } from 'preact/hooks';

/** Marks the history entry that stands for an open sheet: `open`, or `left` once the sheet was closed another way. */
interface SheetState {
  readonly sheet: 'open' | 'left';
}

const isSheetState = (state: unknown): state is SheetState =>
  typeof state === 'object' && state !== null && 'sheet' in state;

/**
 * Lets the phone's back button close what is open, instead of leaving the page behind it. The entry it adds to the
 * history has the page's own address. Closed another way, that entry is kept and used again by the next sheet: going
 * back on one's own is asynchronous and could undo the step that the page takes right after.
 */
export function useBackButton(onBack: () => void): void {
  const latest = useRef(onBack);
  latest.current = onBack;
  // A layout effect, so that the clean-up is done before the page that comes next takes its own step.
  useLayoutEffect(() => {
    if (isSheetState(history.state)) history.replaceState({ sheet: 'open' }, '');
    else history.pushState({ sheet: 'open' }, '');
    const back = () => latest.current();
    addEventListener('popstate', back);
    return () => {
      removeEventListener('popstate', back);
      if (isSheetState(history.state)) history.replaceState({ sheet: 'left' }, '');
    };
  }, []);
}
