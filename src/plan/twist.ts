const DEGREE = Math.PI / 180;

/** How far a post may be turned about itself where the plan does not say, radians, and whose figure that is. */
export const TWIST = {
  usual: 1.5 * DEGREE,
  from: 'our choice, 1/8″ (3 mm) from edge to edge of a 5 1/2″ (140 mm) face',
} as const;
