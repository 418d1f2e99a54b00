/**
 * Two-sided 0.1 % point of the normal distribution (Baarda's α₀, 1968): what is off by more of its own sigmas is not luck. All
 * tests of readings use it.
 */
export const CRITICAL = 3.2905;
