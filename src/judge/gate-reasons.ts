import type { GateItem } from './types.ts';

/** Why a gate asks for something, and where that comes from. */
export interface GateReason {
  /** In a word or two. */
  readonly name: string;
  readonly reason: string;
  /** A published source, `common practice`, or whose rule it is. */
  readonly source: string;
}

const PRACTICE = 'common practice';
const PLAN = 'the plan and its tolerances';
const OURS = 'this tool: a place that nothing guards is never called in';

const REASONS: Record<GateItem['item'], GateReason> = {
  utilities: {
    name: 'buried utilities',
    reason: 'A cable or a pipe that is struck can kill.',
    source: 'the law in most places: call the one-call number (811 in the USA) before digging',
  },
  baseline: {
    name: 'the line from A to B',
    reason: 'Every place hangs on the line from A to B.',
    source: OURS,
  },
  staked: {
    name: 'the stake',
    reason: 'Where there is no stake, nobody knows where to dig.',
    source: PRACTICE,
  },
  ties: {
    name: 'ties back to the centre',
    reason: 'Digging takes the stake away, and they find the centre again.',
    source: PRACTICE,
  },
  position: { name: 'place', reason: 'A wrong post in concrete is a broken-out footing.', source: PLAN },
  checked: {
    name: 'guarded place',
    reason: 'One misread tape would move the place, and nobody would see it.',
    source: OURS,
  },
  spacing: { name: 'spacing', reason: 'The frame is as long as the posts stand apart.', source: PLAN },
  plumb: {
    name: 'plumb',
    reason: 'A post that leans loads its footing at the edge and spoils the frame.',
    source: PLAN,
  },
  level: {
    name: 'height of the top',
    reason: 'What lies on the tops is to be level, and a short post cannot be made longer.',
    source: PLAN,
  },
  twist: { name: 'turned', reason: 'A beam lies flat on a face that looks the right way.', source: PLAN },
  tops: { name: 'tops among themselves', reason: 'What lies on the tops is to be level.', source: PLAN },
  dug: { name: 'dug', reason: 'Nothing is known of a hole that nobody has logged.', source: PRACTICE },
  depth: {
    name: 'depth',
    reason: 'Frost lifts a footing that does not reach below it, and too little in the ground does not hold.',
    source: 'the local code’s frost depth, and the plan; IRC R403.1.4 (from memory)',
  },
  width: {
    name: 'width',
    reason: 'A narrow foot presses the soil harder than was planned.',
    source: 'the plan, less half an inch: ACI 117-10, 3.5 (from memory)',
  },
  room: {
    name: 'room all round',
    reason:
      'Concrete has to go all round what stands in the hole, and what stands off the middle tilts its footing.',
    source:
      'the plan’s least cover, else our choice; the core of a circular section (Timoshenko, from memory)',
  },
  shallower: {
    name: 'agreed depth',
    reason: 'The rules’ depth was there for a reason, and only who answers for the structure may give it up.',
    source: 'the designer or the building office',
  },
  obstruction: {
    name: 'what was met',
    reason:
      'A footing bears on what it stands on: rock, water, roots and soft ground are not what was planned for.',
    source: 'the designer or the building office; IRC R403.1: undisturbed natural soils (from memory)',
  },
  clean: {
    name: 'clean bottom',
    reason: 'Loose soil and mud under a footing settle, and water spoils the concrete.',
    source: 'IRC R403.1: on undisturbed natural soils or engineered fill (from memory)',
  },
  gravel: {
    name: 'gravel',
    reason: 'It drains the foot and is what the post stands on.',
    source: 'the plan',
  },
  set: { name: 'set', reason: 'What does not stand yet cannot be measured.', source: PRACTICE },
  bought: {
    name: 'length of the post',
    reason: 'A post in concrete that does not reach its top has to come out again.',
    source: 'the plan’s heights',
  },
  braced: { name: 'braces', reason: 'Wet concrete and the next barrow push a loose post.', source: PRACTICE },
  inspection: {
    name: 'inspection',
    reason: 'What is covered cannot be seen any more.',
    source: 'the local code: IRC R109.1.1, foundation inspection (from memory)',
  },
  weather: {
    name: 'weather',
    reason: 'Concrete that freezes before it is hard does not get strong.',
    source: 'ACI 306R, cold weather concreting: 5 °C, 40 °F (from memory)',
  },
  asked: {
    name: 'asked for by this job',
    reason: 'Asked for by this job: what is left out now is drilled for later.',
    source: 'this job’s own plan',
  },
};

/** The reason of a gate's item and its source. */
export const gateReason = (item: GateItem['item']): GateReason => REASONS[item];
