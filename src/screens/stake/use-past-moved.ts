import { useState } from 'preact/hooks';
import type { MovedAssessment } from '../../judge/types.ts';
import { useJobBook } from '../job-book.ts';

/**
 * Moves that the user went past on this page, by job and by the pull that found them: it lasts from hole to hole, each of which
 * starts its screen afresh. A page that is loaded again asks again, for nothing that hangs on the stake counts meanwhile.
 */
const pastMoves = new Set<string>();

/** Whether the move that is believed now was gone past, and the way to go past it. */
export function usePastMoved(): readonly [boolean, () => void] {
  const { jobId, assessment } = useJobBook();
  const [, redraw] = useState(0);
  const key = `${jobId} ${sinceOf(assessment.moved)}`;
  const goPast = () => {
    pastMoves.add(key);
    redraw((count) => count + 1);
  };
  return [pastMoves.has(key), goPast];
}

const sinceOf = (moved: MovedAssessment | null): string =>
  moved?.suspects.map(({ since }) => since).join(' ') ?? '';
