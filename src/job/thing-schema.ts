import * as v from 'valibot';
import { LengthSchema } from './length.ts';
import { LabelSchema } from './plan-schema.ts';

export const StakeSchema = v.strictObject({ kind: v.literal('stake'), label: LabelSchema });
export const NailSchema = v.strictObject({ kind: v.literal('nail'), label: LabelSchema });

/**
 * A physical thing on the site. `post` is whatever the hole holds once it is set, so a pier too. `dug-hole` is the hole
 * itself, touched at the middle of its foot.
 */
export const ThingSchema = v.variant('kind', [
  StakeSchema,
  NailSchema,
  v.strictObject({ kind: v.literal('hole-stake'), hole: LabelSchema }),
  v.strictObject({ kind: v.literal('post'), hole: LabelSchema }),
  v.strictObject({ kind: v.literal('dug-hole'), hole: LabelSchema }),
]);
export type Thing = v.InferOutput<typeof ThingSchema>;

/** Sides of a post, by the way its front face was planned to look: away from the centre, or along the plan's +y. */
export const SIDES = ['front', 'left', 'back', 'right'] as const;
export type Side = (typeof SIDES)[number];

/**
 * What an end of a pull touched. Sides run anticlockwise seen from above: front, left, back, right. A corner carries the
 * name of the side before it in that order, so corner `front` lies between the front and the left face.
 */
export const TouchSchema = v.variant('at', [
  v.strictObject({ at: v.literal('nail') }),
  v.strictObject({ at: v.literal('centre') }),
  v.strictObject({ at: v.literal('face'), side: v.picklist(SIDES) }),
  v.strictObject({ at: v.literal('corner'), side: v.picklist(SIDES) }),
  v.strictObject({ at: v.literal('near-side') }),
]);
export type Touch = v.InferOutput<typeof TouchSchema>;

export const PullEndSchema = v.strictObject({
  thing: ThingSchema,
  touch: TouchSchema,
  height: v.optional(v.pipe(LengthSchema, v.description('above the ground, on a post; 0 when absent'))),
});
export type PullEnd = v.InferOutput<typeof PullEndSchema>;
