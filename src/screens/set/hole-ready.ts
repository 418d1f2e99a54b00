import type { HoleAssessment } from '../../judge/types.ts';

/** Whether a post may go in: its hole is logged as dug, deep and wide enough, and not found too tight on one side. */
export const isReady = ({ dug }: HoleAssessment): boolean =>
  dug.at !== null && dug.depth.verdict === 'in' && dug.width.verdict === 'in' && dug.room.verdict !== 'out';
