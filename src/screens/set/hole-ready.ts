import type { HoleAssessment } from '../../judge/types.ts';

/** Whether a post may go in: its hole is logged as dug, deep and wide enough. */
export const isReady = ({ dug }: HoleAssessment): boolean =>
  dug.at !== null && dug.depth.verdict === 'in' && dug.width.verdict === 'in';
