/** Deeper or wider than this no hole for a post is dug by hand or auger: a slip, metres. */
const MOST_DUG_M = 5;

export const DUG_BOUNDS = { max: MOST_DUG_M } as const;
