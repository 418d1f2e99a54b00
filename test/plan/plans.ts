import { roundedLength } from '../../src/job/length.ts';
import type { Plan, Points, Ring, Rows } from '../../src/job/plan-schema.ts';
import { defaultPlan } from '../../src/plan/index.ts';

/** Lengths for tests that think in metres; typed to the millimetre. */
export const metres = (m: number) => roundedLength(m, 'm');

const base = defaultPlan('m');

export const ringPlan = (ring: Partial<Ring> = {}, plan: Partial<Plan> = {}): Plan => ({
  ...base,
  rules: { ...base.rules, frostDepth: metres(0.9) },
  ...plan,
  shape: {
    kind: 'ring',
    count: 8,
    sizeBy: 'radius',
    size: metres(3),
    front: 'post',
    pier: false,
    ...ring,
  },
});

export const rowsPlan = (rows: Partial<Rows> = {}, plan: Partial<Plan> = {}): Plan => ({
  ...ringPlan({}, plan),
  shape: {
    kind: 'rows',
    columns: 3,
    rows: 2,
    measuredTo: 'centres',
    columnSpacing: metres(2),
    rowSpacing: metres(3),
    ...rows,
  },
});

export const pointsPlan = (points: readonly (readonly [string, number, number])[]): Plan => ({
  ...ringPlan(),
  shape: {
    kind: 'points',
    points: points.map(([label, right, front]) => ({ label, right: metres(right), front: metres(front) })),
  } satisfies Points,
});

/** The default post, turned as asked. */
export const postTurned = (turned: 'centre' | 'grid', width = 0.14, depth = 0.14): Plan['each'] => ({
  ...base.each,
  holds: { kind: 'post', nominal: 'typed', width: metres(width), depth: metres(depth), turned },
});
