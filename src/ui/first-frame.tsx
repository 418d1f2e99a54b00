import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** What waits for the first frame of a cold start; null when none is awaited, which is all the rest of the time. */
let waiting: Set<() => void> | null = null;

/**
 * On a cold start: what is read first is drawn first, and all else in the frame after it. To be called right before the first
 * render; a page that is hidden draws no frames, and is shown whole as soon as it is seen.
 */
export function beginFirstFrame(): void {
  waiting = new Set();
  // A frame is on the glass once the next one begins.
  requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(end)));
}

function end(): void {
  const told = waiting;
  waiting = null;
  for (const tell of told ?? []) tell();
}

/** False only until the first frame of a cold start is on the screen. */
export function useFirstFrameShown(): boolean {
  const [shown, setShown] = useState(waiting === null);
  useEffect(() => {
    if (shown) return;
    const tell = () => setShown(true);
    // The frame may have come between the render and here.
    if (waiting === null) return tell();
    waiting.add(tell);
    return () => void waiting?.delete(tell);
  }, [shown]);
  return shown;
}

/** What stands below everything that is read first. */
export function AfterFirstFrame({ children }: { readonly children: ComponentChildren }) {
  const shown = useFirstFrameShown();
  return <>{shown && children}</>;
}
