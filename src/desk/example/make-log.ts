import { dot, unit } from '../../geometry/point.ts';
import { toPlan } from '../../geometry/rigid.ts';
import { type Body, type Entry, type Hold, type PullEnd, SIDES, type Side } from '../../job/entry-schema.ts';
import { roundedLength } from '../../job/length.ts';
import { holesOf, type LaidPlan, layPlan, sideBearing } from '../../plan/index.ts';
import { holeStakeEnd, stakeEnd } from '../../stakeout/ends.ts';
import { checkPulls, proposeStakes, setPulls, workOrder } from '../../stakeout/index.ts';
import { FieldDay } from './field-day.ts';
import { normalNoise } from './noise.ts';
import * as scenario from './scenario.ts';
import { inches, PLAN, UNITS } from './scenario.ts';
import { makeTruth, type Truth, trueDistance } from './truth.ts';

type Site = Extract<Body, { kind: 'site' }>;

/** The example's field book: what careful people would have read in the orchard, with one slip and one post out. */
export function makeLog(): Entry[] {
  const site = placeStakes();
  const laid = layPlan(site, holesOf(PLAN));
  if (!laid.ok) throw new RangeError(laid.problem.text);
  const crew = new Crew(laid.value);
  crew.day.log({ kind: 'plan', plan: PLAN });
  crew.day.log(site);
  stakeOut(crew);
  crew.day.at('2026-05-10T07:30:00Z');
  dig(crew);
  crew.day.at('2026-05-16T07:00:00Z');
  setPosts(crew);
  pour(crew);
  return crew.day.entries;
}

function placeStakes(): Site {
  const choice = proposeStakes(holesOf(PLAN), PLAN.instruments, { units: UNITS });
  if (!choice) throw new RangeError('No place for A and B');
  const place = (p: { x: number; y: number }) => ({
    right: roundedLength(p.x, UNITS),
    front: roundedLength(p.y, UNITS),
  });
  return { kind: 'site', a: place(choice.a), b: place(choice.b), chosenBy: 'tool' };
}

/** The people with the tapes: they read the truth, with noise, to the sixteenth that their tape shows. */
class Crew {
  readonly day = new FieldDay('2026-05-09T07:30:00Z');
  readonly laid: LaidPlan;
  readonly truth: Truth;
  readonly #noise = normalNoise(scenario.SEED + 1);

  constructor(laid: LaidPlan) {
    this.laid = laid;
    this.truth = makeTruth(laid);
  }

  get labels(): string[] {
    return workOrder(this.laid.holes.map(({ label, site }) => ({ label, at: site })));
  }

  pull(from: PullEnd, to: PullEnd, rise: number | null = null, slip = 0): void {
    const level = trueDistance(this.truth, from, to);
    const taped = Math.hypot(level, rise ?? 0) + this.#noise(scenario.TAPE_NOISE) + slip;
    const hold: Hold =
      rise === null ? { how: 'level' } : { how: 'slope', rise: roundedLength(Math.abs(rise), UNITS) };
    this.day.log({ kind: 'pull', from, to, reading: roundedLength(taped, UNITS), hold });
  }

  plumb(hole: string, side: Side): void {
    const over = inches(scenario.LEVEL_OVER);
    const { lean } = this.truth.posts.get(hole)!;
    const facing = this.truth.holes.get(hole)!.facing;
    const read = dot(lean, unit(sideBearing(facing, side))) + this.#noise(scenario.PLUMB_NOISE);
    const offset = roundedLength(Math.abs(read) * over.m, UNITS);
    const leans = offset.m === 0 ? 'none' : read > 0 ? 'out' : 'in';
    this.day.log({ kind: 'plumb', hole, side, offset, over, leans });
  }

  rod(on: Extract<Body, { kind: 'rod' }>['on'], height: number): void {
    const reading = roundedLength(scenario.SIGHT - height + this.#noise(scenario.ROD_NOISE), UNITS);
    this.day.log({ kind: 'rod', setup: '1', on, reading });
  }
}

function stakeOut(crew: Crew): void {
  const { day } = crew;
  day.log({ kind: 'check', item: 'utilities', done: true });
  for (const label of ['A', 'B'])
    day.log({ kind: 'stand', thing: { kind: 'stake', label }, event: 'driven' });
  crew.pull(stakeEnd('A'), stakeEnd('B'));
  for (const hole of crew.labels) {
    day.log({ kind: 'stand', thing: { kind: 'hole-stake', hole }, event: 'driven' });
    for (const label of ['A', 'B'])
      crew.pull(stakeEnd(label), holeStakeEnd(hole), riseFrom(crew, label, hole));
  }
  for (const { from, to } of checkPulls(crew.laid.holes, PLAN.instruments)) crew.pull(from, to);
  day.log({ kind: 'check', item: 'ties', done: true });
}

/** How much lower the hole lies than the stake, where that tape lay along the ground. */
function riseFrom({ laid }: Crew, label: string, hole: string): number | null {
  if (label !== 'A' || !scenario.PULLED_ALONG_SLOPE.includes(hole)) return null;
  const at = laid.holes.find((each) => each.label === hole)!.site;
  return scenario.FALL * (toPlan(laid.motion, at).y - toPlan(laid.motion, { x: 0, y: 0 }).y);
}

/** A little deeper than asked for, now more, now less. */
const DEPTHS = ['4′ 0 1/2″', '4′ 1″', '4′ 0 3/4″', '4′ 1 1/2″'];
const WIDTHS = ['1′ 6 1/2″', '1′ 7″', '1′ 6 3/4″'];

function dig({ day, labels }: Crew): void {
  labels.forEach((hole, i) => {
    const depth = inches(DEPTHS[i % DEPTHS.length]!);
    const width = inches(WIDTHS[i % WIDTHS.length]!);
    day.log({ kind: 'dug', hole, depth, width, obstruction: hole === scenario.ROOTS ? 'roots' : 'none' });
  });
}

function setPosts(crew: Crew): void {
  const { day, laid, truth } = crew;
  crew.pull(stakeEnd('A'), stakeEnd('B'));
  for (let i = 0; i < 2; i++) crew.rod({ point: 'benchmark' }, 0);
  const order = ['P', ...laid.holes.map(({ label }) => label).filter((label) => label !== 'P')];
  const set = new Set<string>();
  for (const label of order) {
    const hole = truth.holes.get(label)!;
    day.log({ kind: 'stand', thing: { kind: 'post', hole: label }, event: 'set' });
    const pulls = setPulls({
      hole,
      holes: laid.holes,
      set,
      baseline: truth.baseline,
      instruments: PLAN.instruments,
    });
    for (const { purpose, from, to } of pulls) {
      // From what stands to what was just set, as it is walked.
      if (purpose === 'fix') crew.pull(from, to, null, slipOf(from, label));
      else crew.pull(to, from);
    }
    set.add(label);
    const faces = label === scenario.TWO_FACES_ONLY ? SIDES.slice(0, 2) : SIDES;
    for (const side of faces) crew.plumb(label, side);
    if (label === scenario.TOP_NOT_READ) continue;
    for (let i = 0; i < 2; i++) crew.rod({ point: 'top', hole: label }, truth.posts.get(label)!.top);
  }
}

function slipOf({ thing }: PullEnd, post: string): number {
  const { from, to, by } = scenario.MISREAD;
  return thing.kind === 'stake' && thing.label === from && post === to ? by : 0;
}

function pour({ day }: Crew): void {
  for (const { hole, bags } of scenario.POURED) {
    for (const item of ['clean', 'gravel', 'room', 'braced', 'inspection', 'weather'] as const) {
      day.log({ kind: 'check', hole, item, done: true });
    }
    day.log({ kind: 'pour', hole, bags });
  }
}
