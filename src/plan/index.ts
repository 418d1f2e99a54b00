export { checkPlan } from './check.ts';
export { pointsFromCsv } from './csv.ts';
export { defaultPlan, defaultsFor } from './defaults.ts';
export { FIELDS, rowsFields } from './fields.ts';
export {
  type GroundLines,
  groundLines,
  type LaidLine,
  type LineInPlace,
  layLine,
  leftOf,
  type StandingStakes,
} from './ground-lines.ts';
export type { Hole, Section, SitedHole } from './hole.ts';
export { holesOf, PIER_LABEL, sectionOf } from './holes.ts';
export { type LaidPlan, LEAST_BASELINE, layPlan, placeOf } from './lay.ts';
export {
  fiveTapes,
  foundBy,
  type LaidOn,
  type LaidOnPegs,
  type LaidOnStakes,
  type LaidOnTwo,
  layOnPegs,
  layOnStakes,
} from './lay-on.ts';
export { ringRadius } from './ring.ts';
export { sectionsFor } from './sections.ts';
export { tapeSigma } from './tape.ts';
export { sideBearing, sideToward, touchOffset } from './touch.ts';
export { TWIST } from './twist.ts';
