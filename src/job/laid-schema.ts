import * as v from 'valibot';
import { LengthSchema } from './length.ts';
import { FromStakesSchema, PulledSchema } from './place-schema.ts';
import { LabelSchema } from './plan-schema.ts';

/** Ways for the plan's front to look by the line A–B alone. */
export const FRONT_WAYS = ['left', 'right', 'A to B', 'B to A'] as const;

/** How the plan was laid on what is there already. A and B follow from it, rounded. */
export const LaidBySchema = v.variant('on', [
  v.strictObject({
    on: v.literal('stakes'),
    baseline: v.pipe(LengthSchema, v.description('A to B as pulled, level')),
    centre: FromStakesSchema,
    front: v.pipe(
      v.variant('by', [
        v.strictObject({ by: v.literal('way'), way: v.picklist(FRONT_WAYS) }),
        ...FromStakesSchema.options,
      ]),
      v.description(
        'the way it looks, of a person who walks from A to B; or a place straight in front of the centre',
      ),
    ),
  }),
  v.strictObject({
    on: v.literal('pegs'),
    baseline: v.pipe(LengthSchema, v.description('A to B as pulled, level')),
    pegs: v.pipe(
      v.strictTuple([
        v.strictObject({ hole: LabelSchema, ...PulledSchema.entries }),
        v.strictObject({ hole: LabelSchema, ...PulledSchema.entries }),
      ]),
      v.description('two stakes that stand where two holes are to be'),
    ),
  }),
]);
export type LaidBy = v.InferOutput<typeof LaidBySchema>;
