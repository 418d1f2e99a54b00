import type { Length } from '../job/length.ts';
import type { HoleOverride, Plan, Shape } from '../job/plan-schema.ts';
import { formatLength } from '../units/index.ts';
import { FIELDS, rowsFields } from './fields.ts';
import { sectionOf } from './holes.ts';
import { type PlanProblem, stop } from './plan-problem.ts';
import { ringRadius } from './ring.ts';
import { pitchOf } from './rows.ts';

/** The longest length that is read anywhere, metres. */
export const LONGEST_M = 300;
/** Nobody digs deeper by hand, nor sets a top that high from the ground, metres. */
export const DEEPEST_M = 10;
/** Wider holes and piers are other work than posts in holes, metres. */
export const WIDEST_M = 3;
/** More gravel than this under a footing is a slip of units, metres. */
const MOST_GRAVEL_M = 1;
/** The shortest tape that is sold for such work, metres (common practice); less is a slip of units. */
const SHORTEST_TAPE_M = 3;
/** A tolerance or an error of more than this is a slip of units, metres. */
export const COARSEST_M = 0.5;

/** A length, what it is called, and the bounds within which it can be built. */
export interface Sized {
  readonly field: string;
  readonly length: Length;
  readonly most: number;
  /** Zero, and for a height even less, is right. */
  readonly least?: number;
}

/** A schema takes any finite number of metres; here are those that can be built. */
export function checkSizes(plan: Plan): PlanProblem[] {
  const single = allSizes(plan).flatMap(outOfRange);
  return single.length > 0 ? single : checkShapeSize(plan);
}

function allSizes({ shape, each, pier, overrides, rules, tolerances, instruments }: Plan): Sized[] {
  const coarse = (field: string, length: Length): Sized => ({ field, length, most: COARSEST_M });
  return [
    ...shapeSizes(shape),
    ...[each, pier, ...Object.values(overrides)].flatMap(specSizes),
    { field: FIELDS.gravel, length: rules.gravel, most: MOST_GRAVEL_M, least: 0 },
    { field: FIELDS.embedment, length: rules.embedment, most: DEEPEST_M, least: 0 },
    ...(rules.frostDepth
      ? [{ field: FIELDS.frostDepth, length: rules.frostDepth, most: DEEPEST_M, least: 0 }]
      : []),
    ...(rules.cover ? [{ field: FIELDS.cover, length: rules.cover, most: COARSEST_M, least: 0 }] : []),
    coarse(FIELDS.position, tolerances.position),
    coarse(FIELDS.spacing, tolerances.spacing),
    coarse(FIELDS.level, tolerances.level),
    { field: FIELDS.tapeLength, length: instruments.tapeLength, most: LONGEST_M, least: SHORTEST_TAPE_M },
    coarse(FIELDS.tapeError, instruments.tapeError),
    coarse(FIELDS.rodError, instruments.rodError),
  ];
}

function shapeSizes(shape: Shape): Sized[] {
  switch (shape.kind) {
    case 'ring':
      return [{ field: FIELDS.size, length: shape.size, most: LONGEST_M }];
    case 'rows':
      return [
        ...(shape.columns > 1
          ? [{ field: rowsFields(shape).columns, length: shape.columnSpacing, most: LONGEST_M }]
          : []),
        ...(shape.rows > 1
          ? [{ field: rowsFields(shape).rows, length: shape.rowSpacing, most: LONGEST_M }]
          : []),
      ];
    case 'points':
      return shape.points.flatMap(({ right, front }) =>
        [right, front].map((length) => ({
          field: FIELDS.points,
          length,
          most: LONGEST_M,
          least: -LONGEST_M,
        })),
      );
  }
}

function specSizes({ holds, top, holeDiameter, depth }: HoleOverride): Sized[] {
  return [
    ...(holds?.kind === 'post'
      ? [
          { field: FIELDS.width, length: holds.width, most: WIDEST_M },
          { field: FIELDS.depth, length: holds.depth, most: WIDEST_M },
        ]
      : []),
    ...(holds?.kind === 'pier' ? [{ field: FIELDS.diameter, length: holds.diameter, most: WIDEST_M }] : []),
    ...(top ? [{ field: FIELDS.top, length: top, most: DEEPEST_M, least: -DEEPEST_M }] : []),
    ...(holeDiameter ? [{ field: FIELDS.holeDiameter, length: holeDiameter, most: WIDEST_M }] : []),
    ...(depth ? [{ field: FIELDS.ownDepth, length: depth, most: DEEPEST_M }] : []),
  ];
}

export function outOfRange({ field, length, most, least }: Sized): PlanProblem[] {
  const { m, units } = length;
  const words = (metres: number) => formatLength(metres, units);
  if (m > most) return [stop(field, `${words(m)} is more than can be built; type ${words(most)} or less.`)];
  if (least === undefined && m <= 0)
    return [stop(field, `${words(m)} is nothing to build; type more than zero.`)];
  if (least !== undefined && m < least)
    return [stop(field, `${words(m)} is too little; type ${words(least)} or more.`)];
  return [];
}

/** Sizes over the outer faces that leave no room between the centres. */
function checkShapeSize({ shape, each }: Plan): PlanProblem[] {
  const section = sectionOf(each.holds);
  if (shape.kind === 'ring') {
    if (ringRadius(shape, section) > 0) return [];
    return [stop(FIELDS.size, 'the outer faces lie within half a post of the centre; type a larger circle.')];
  }
  if (shape.kind === 'points') return [];
  const pitch = pitchOf(shape, section);
  const clause = 'the posts alone are wider than the whole; type a larger size over the outer faces.';
  return [
    ...(shape.columns > 1 && pitch.right <= 0 ? [stop(rowsFields(shape).columns, clause)] : []),
    ...(shape.rows > 1 && pitch.front <= 0 ? [stop(rowsFields(shape).rows, clause)] : []),
  ];
}
