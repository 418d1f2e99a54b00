/** A top may lie below the benchmark. Further than this from it is a slip, metres. */
const FARTHEST_TOP_M = 10;
export const ANY_HEIGHT = { min: -FARTHEST_TOP_M, max: FARTHEST_TOP_M } as const;

/** None at all is a choice, as of gravel. */
export const FROM_ZERO = { min: 0 } as const;

/** As `FROM_ZERO`, for what lies in the ground: no hole that a person digs goes deeper, metres. */
export const IN_THE_GROUND = { min: 0, max: 5 } as const;

/** More gravel under a footing is a slip of units, metres. */
export const GRAVEL = { min: 0, max: 1 } as const;

/** The shortest tape that is sold for such work, metres (common practice); less is a slip of units. */
export const TAPE_LENGTH = { min: 3 } as const;

/** Places lie on both sides of the plan's centre; no further than the longest length that is read, metres. */
const FARTHEST_PLACE_M = 300;
export const ANY_PLACE = { min: -FARTHEST_PLACE_M, max: FARTHEST_PLACE_M } as const;

/** Leans and plumb errors that the plan's schema takes, metres per metre. */
export const LEAN_LIMITS = { least: 0.0001, most: 0.2 } as const;

/** What a tape's error may grow by, as the plan's schema takes it, metres per metre. */
export const TAPE_GROWTH_LIMITS = { least: 0, most: 0.01 } as const;
