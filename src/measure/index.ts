export { CRITICAL } from '../plan/luck.ts';
export { heightKey } from './height-rows.ts';
export { heights } from './heights.ts';
export { measure, measureWays } from './measure.ts';
export type { LevelLoop } from './misclosure.ts';
export { movedStakes } from './moved.ts';
export { DRIVEN_WITHIN_M, type Prediction, predict } from './predict.ts';
export { type PredictedOffset, predictOffset } from './predict-offset.ts';
export { GUARDED_FROM, NONCENTRALITY } from './reliability.ts';
export { riseBetween } from './rise.ts';
export { rodSlips } from './rod-slips.ts';
export { tapeSigma } from './sigma.ts';
export { isBeyondBelief, type Reading, type SlipCode, slips } from './slips.ts';
export { tapeInHand } from './tape-in-hand.ts';
export {
  lengthBy,
  lengthRead,
  readingOn,
  STANDARD_TEMPERATURE_C,
  type TapeInHand,
  tapeDoubt,
  tapeOf,
} from './taped.ts';
export { type PostsTogether, postsTogether } from './together.ts';
export { halfSection, reachOf } from './touch.ts';
export { type Collimation, collimationOf } from './two-peg.ts';
export * from './types.ts';
