import type { Plan } from '../job/plan-schema.ts';

const PARTS: Record<keyof Plan, string> = {
  name: 'name',
  units: 'units',
  shape: 'shape and size',
  each: 'what the holes hold',
  pier: 'the pier',
  overrides: 'single holes',
  rules: 'depth rules',
  tolerances: 'tolerances',
  instruments: 'tape and level',
  supplies: 'what is bought',
  deck: 'the deck',
  asks: 'what the job asks for besides',
  lines: 'lines on the ground',
};

/** The parts in which two plans differ, in words, in the order in which a plan is put in. */
export function changedParts(before: Plan, after: Plan): string[] {
  const keys = Object.keys(PARTS) as (keyof Plan)[];
  return keys
    .filter((key) => JSON.stringify(before[key]) !== JSON.stringify(after[key]))
    .map((key) => PARTS[key]);
}
