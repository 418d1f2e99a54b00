import type { PullEnds } from './retouched.ts';

export interface TouchProps {
  readonly ends: PullEnds;
  /** Called with the ends as they are touched now. */
  readonly onDone: (ends: PullEnds) => void;
  readonly onClose: () => void;
}
