import type { Entry } from '../../src/job/entry-schema.ts';
import type { Length } from '../../src/job/length.ts';
import { Crew } from './crew.ts';
import { Draws } from './draws.ts';
import type { StudyPlan } from './plans.ts';
import { Yard } from './yard.ts';

/** A field book and the truth that it was read from. */
export interface StudyJob {
  readonly log: readonly Entry[];
  readonly plan: StudyPlan;
  readonly yard: Yard;
}

export function studyJob(plan: StudyPlan, seed: number): StudyJob {
  const draws = new Draws(seed);
  const yard = new Yard(plan, draws);
  return { plan, yard, log: new Crew(plan, yard, draws).work() };
}

/** The same field book with one pull misread by so many metres. */
export function misread(log: readonly Entry[], entry: string, by: number): Entry[] {
  return log.map((each) =>
    each.id === entry && each.body.kind === 'pull'
      ? { ...each, body: { ...each.body, reading: longer(each.body.reading, by) } }
      : each,
  );
}

/** Exact to a hundredth of a millimetre, whatever the units: an inch is not a whole number of millimetres. */
function longer({ m }: Length, by: number): Length {
  const typed = ((m + by) * 1000).toFixed(2);
  return { m: Number(typed) / 1000, typed, units: 'mm' };
}
