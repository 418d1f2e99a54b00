import type { SitePoint } from '../../../../src/geometry/point.ts';
import { toSite } from '../../../../src/geometry/rigid.ts';
import type { Body, HeightPoint } from '../../../../src/job/entry-schema.ts';
import { roundedLength } from '../../../../src/job/length.ts';
import type { Plan } from '../../../../src/job/plan-schema.ts';
import { holesOf, layPlan } from '../../../../src/plan/index.ts';
import { entry } from '../../../job/sample.ts';
import { metres } from '../../../plan/plans.ts';

/** A place of the plan frame, metres. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** How steep the ground is, rise over run, and which way it rises, radians. */
export interface Slope {
  readonly grade: number;
  readonly way: number;
}

/** A and B in front of all holes and wider than they: every place on one side of their line, whatever the shape. */
export function stakesBefore(plan: Plan): { readonly a: Place; readonly b: Place } {
  const places = holesOf(plan).map(({ place }) => place);
  const xs = places.map(({ x }) => x);
  const low = Math.min(...places.map(({ y }) => y));
  const wide = Math.max(2, (Math.max(...xs) - Math.min(...xs)) / 4);
  const y = low - 2 - wide / 2;
  return { a: { x: Math.min(...xs) - wide, y }, b: { x: Math.max(...xs) + wide, y } };
}

/** A log in which A and B are placed, and the ground at them and at every hole was read to the millimetre. */
export function slopingLog(
  plan: Plan,
  stakes: { readonly a: Place; readonly b: Place },
  slope: Slope | null,
): Body[] {
  const place = ({ x, y }: Place) => ({ right: metres(x), front: metres(y) });
  const site = { a: place(stakes.a), b: place(stakes.b) };
  const laid = layPlan(site, holesOf(plan));
  if (!laid.ok) throw new Error(laid.problem.text);
  const { motion, holes, baseline } = laid.value;
  const first: Body[] = [
    { kind: 'plan', plan },
    { kind: 'site', ...site, chosenBy: 'user' },
  ];
  if (!slope) return first;
  const origin = toSite(motion, { x: 0, y: 0 });
  const height = (at: SitePoint) =>
    slope.grade * ((at.x - origin.x) * Math.cos(slope.way) + (at.y - origin.y) * Math.sin(slope.way));
  const read = (to: HeightPoint, at: SitePoint): Body => {
    const m = height(at);
    return {
      kind: 'difference',
      by: 'water-level',
      from: { point: 'benchmark' },
      to,
      height: roundedLength(Math.abs(m), 'mm'),
      higher: Math.abs(m) < 0.0005 ? 'none' : m > 0 ? 'to' : 'from',
    };
  };
  return [
    ...first,
    read({ point: 'stake', label: 'A' }, { x: 0, y: 0 }),
    read({ point: 'stake', label: 'B' }, { x: baseline, y: 0 }),
    ...holes.map(({ label, site: at }) => read({ point: 'ground', hole: label }, at)),
  ];
}

export const entriesOf = (bodies: readonly Body[]) => bodies.map((body, i) => entry(i + 1, body));
