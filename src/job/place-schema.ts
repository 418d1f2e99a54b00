import * as v from 'valibot';
import { LengthSchema } from './length.ts';

/** A place in the plan frame as typed: distances to the right of, and to the front of, the plan centre. */
export const PlanPlaceSchema = v.strictObject({ right: LengthSchema, front: LengthSchema });
export type PlanPlace = v.InferOutput<typeof PlanPlaceSchema>;

const Hand = v.pipe(v.picklist(['left', 'right']), v.description('of a person who walks from A to B'));

const PULLED = {
  by: v.literal('pulls'),
  fromA: v.pipe(LengthSchema, v.description('level tape from A')),
  fromB: v.pipe(LengthSchema, v.description('level tape from B')),
  side: Hand,
};
export const PulledSchema = v.strictObject(PULLED);
/** A place told by two level tapes, from A and from B. */
export type Pulled = v.InferOutput<typeof PulledSchema>;

const MeasuredOffSchema = v.strictObject({
  by: v.literal('offset'),
  station: v.pipe(LengthSchema, v.description('along A–B from A; behind A when negative')),
  offset: v.pipe(LengthSchema, v.description('square off A–B, never negative')),
  side: Hand,
});

/** A place on the ground, told from A and B. */
export const FromStakesSchema = v.variant('by', [PulledSchema, MeasuredOffSchema]);
export type FromStakes = v.InferOutput<typeof FromStakesSchema>;

/** A place on the ground, told from the plan's centre or from A and B. */
export const GroundPlaceSchema = v.variant('by', [
  v.strictObject({ by: v.literal('plan'), right: LengthSchema, front: LengthSchema }),
  PulledSchema,
  MeasuredOffSchema,
]);
export type GroundPlace = v.InferOutput<typeof GroundPlaceSchema>;

const LINE_KINDS = ['boundary', 'house', 'other'] as const;

/** A line on the ground that the structure or the stakes must mind. */
export const GroundLineSchema = v.strictObject({
  name: v.pipe(v.string(), v.minLength(1), v.maxLength(24), v.description('such as Boundary, House')),
  kind: v.pipe(
    v.picklist(LINE_KINDS),
    v.description('a house is a wall between its two points; the others run on beyond them'),
  ),
  from: GroundPlaceSchema,
  to: GroundPlaceSchema,
  keep: v.optional(
    v.pipe(LengthSchema, v.description('least distance of posts and of the deck’s edge from it')),
  ),
  noStakes: v.optional(
    v.pipe(
      v.picklist(['left', 'right']),
      v.description(
        'side on which no stake can stand, of a person who walks from its first point to its second; of a wall, where the house is',
      ),
    ),
  ),
});
export type GroundLine = v.InferOutput<typeof GroundLineSchema>;
