import type { Body, Entry } from '../../src/job/entry-schema.ts';
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

/** The same field book with one pull, plumb or rod reading misread by so many metres. */
export function misread(log: readonly Entry[], entry: string, by: number): Entry[] {
  return log.map((each) => (each.id === entry ? { ...each, body: misreadBody(each.body, by) } : each));
}

function misreadBody(body: Body, by: number): Body {
  if (body.kind === 'pull' || body.kind === 'rod') return { ...body, reading: longer(body.reading, by) };
  if (body.kind !== 'plumb') throw new RangeError(`Nobody misreads a ${body.kind}`);
  const sign = body.leans === 'in' ? -1 : 1;
  const past = longer({ ...body.offset, m: sign * body.offset.m }, by);
  const offset = longer({ ...past, m: Math.abs(past.m) }, 0);
  return { ...body, offset, leans: past.m === 0 ? 'none' : past.m > 0 ? 'out' : 'in' };
}

/** Exact to a hundredth of a millimetre, whatever the units: an inch is not a whole number of millimetres. */
function longer({ m }: Length, by: number): Length {
  const typed = ((m + by) * 1000).toFixed(2);
  return { m: Number(typed) / 1000, typed, units: 'mm' };
}
