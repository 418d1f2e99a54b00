import { scale, unit, type Vec } from '../../src/geometry/point.ts';
import type { Entry, Thing } from '../../src/job/entry-schema.ts';
import { thingKey } from '../../src/job/log.ts';
import { situate } from '../../src/judge/situation.ts';
import { Crew } from './crew.ts';
import { Draws } from './draws.ts';
import type { StudyPlan } from './plans.ts';
import { Mean, Share } from './share.ts';
import { powerOf2 } from './theory.ts';
import { Yard } from './yard.ts';

/** How far stakes are knocked, metres, and how the check after it came out. */
export class Moves {
  readonly by: number;
  /** As a move, or as a misread pull. */
  readonly noticed = new Share();
  /** As a move. */
  readonly asMove = new Share();
  /** The right stake first. */
  readonly named = new Share();
  readonly noticedExpected = new Mean();

  constructor(by: number) {
    this.by = by;
  }

  /** A, B or C knocked any way, with the readings of a new job. */
  addJob(plan: StudyPlan, seed: number): void {
    const choice = new Draws(seed);
    const thing: Thing = { kind: 'stake', label: choice.pick(['A', 'B', 'C']) };
    const by = scale(unit(choice.between(0, 2 * Math.PI)), this.by);
    const { moves, suspected } = findingsIn(checkedLog(plan, seed, thing, by, false));
    const first = moves?.moves[0];
    this.noticed.addJob(moves || suspected ? 1 : 0, 1);
    this.asMove.addJob(moves ? 1 : 0, 1);
    this.named.addJob(first && thingKey(first.stake) === thingKey(thing) ? 1 : 0, 1);
    const exact = situate(checkedLog(plan, seed, thing, by, true)).measured;
    if (!exact) throw new Error('exact readings were not measured');
    this.noticedExpected.add(powerOf2(exact.globalTest.chiSquare));
  }
}

/** Checks after which a stake was believed to have moved, though none had. */
export class StoodStill {
  readonly alarms = new Share();

  addJob(plan: StudyPlan, seed: number): void {
    const log = checkedLog(plan, seed, { kind: 'stake', label: 'A' }, { x: 0, y: 0 }, false);
    this.alarms.addJob(findingsIn(log).moves ? 1 : 0, 1);
  }
}

function checkedLog(plan: StudyPlan, seed: number, thing: Thing, by: Vec, exact: boolean): readonly Entry[] {
  const draws = new Draws(seed + 1);
  const yard = new Yard(plan, draws);
  return new Crew(plan, yard, draws, exact).stakeAndCheck(() => yard.knock(thing, by));
}

function findingsIn(log: readonly Entry[]) {
  const { measured } = situate(log);
  if (!measured) throw new Error('a job was not measured');
  return { moves: measured.moves, suspected: measured.suspicions.length > 0 };
}
