import { useLayoutEffect, useRef } from 'preact/hooks';

/** A new card begins at its head, however far the last one was scrolled. @param card changes with the card */
export function useStartAtTop(card: string): void {
  const shown = useRef(card);
  useLayoutEffect(() => {
    if (shown.current === card) return;
    shown.current = card;
    scrollTo(0, 0);
  }, [card]);
}
