import type { Length } from '../../job/length.ts';
import { typedLength } from '../../job/length.ts';
import type { Plan } from '../../job/plan-schema.ts';
import { defaultPlan } from '../../plan/index.ts';

/** Every figure of the example is invented, and ours. */
export const UNITS = 'ft-in-16';

export const SEED = 20260509;

/** Reads a length of this script; a slip here is a fault of the script. */
export function inches(typed: string): Length {
  const length = typedLength(typed, UNITS, 'Example', { min: -100 });
  if (!length.ok) throw new RangeError(length.problem.text);
  return length.value;
}

const base = defaultPlan(UNITS);

/** Ten posts on a ring for a yurt deck, round a stove pier, in an orchard that falls away to the front. */
export const PLAN: Plan = {
  ...base,
  name: 'Orchard yurt deck',
  shape: { kind: 'ring', count: 10, sizeBy: 'radius', size: inches('9′ 6″'), front: 'post', pier: true },
  each: { ...base.each, top: inches('4′ 6″') },
  pier: { ...base.pier, top: inches('4′ 2″') },
  rules: { frostDepth: inches('3′ 6″'), gravel: inches('6″'), embedment: inches('3′ 0″') },
};

/** What is wrong out there, and what the tool must find. */
export const OUT_POST = '4';
/** The foot of that post stands this far from its mark, metres, on this bearing of the site. */
export const OUT_BY = 0.019;
export const OUT_BEARING = 0.6;
export const MISREAD = { from: 'B', to: '8', by: 0.0254 };

/** One sigma of the truth about the plan, metres (or metres per metre): careful people, real wood. */
export const STAKE_SPREAD = 0.002;
export const POST_SPREAD = 0.001;
export const LEAN_SPREAD = 0.0004;
export const TOP_SPREAD = 0.001;
export const BASELINE_OFF = 0.006;

/** One sigma of the readings. */
export const TAPE_NOISE = 0.0015;
export const PLUMB_NOISE = 0.0003;
export const ROD_NOISE = 0.001;

/** Height of the level's line of sight above the benchmark, metres. */
export const SIGHT = 1.63;
/** How much lower the ground is for each metre to the front, and the pulls to these holes lay along it. */
export const FALL = 0.1;
export const PULLED_ALONG_SLOPE = ['5', '6', '7'];
export const LEVEL_OVER = '4′ 0″';

/** Readings that nobody has taken yet, so that the example shows what that looks like. */
export const TWO_FACES_ONLY = '9';
export const TOP_NOT_READ = '10';
export const ROOTS = '7';
export const POURED = [
  { hole: 'P', bags: 13 },
  { hole: '1', bags: 11 },
];
