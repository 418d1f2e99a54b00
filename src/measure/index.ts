export { heights } from './heights.ts';
export { measure } from './measure.ts';
export { DRIVEN_WITHIN_M, type Prediction, predict } from './predict.ts';
export { GUARDED_FROM, NONCENTRALITY } from './reliability.ts';
export { tapeSigma } from './sigma.ts';
export { isBeyondBelief, type Reading, type SlipCode, slips } from './slips.ts';
export { CRITICAL } from './snooping.ts';
export { halfSection } from './touch.ts';
export * from './types.ts';
