import * as v from 'valibot';
import { LengthSchema } from './length.ts';
import { NoteSchema } from './note-schema.ts';
import { LabelSchema } from './plan-schema.ts';
import { PullEndSchema, SIDES, ThingSchema } from './thing-schema.ts';

const LeansSchema = v.pipe(
  v.picklist(['out', 'in', 'none']),
  v.description('the top leans out past this face, or in behind it'),
);

/** A lean as a level itself told it; the gap beside it is worked out from this. */
const PlumbReadSchema = v.pipe(
  v.variant('by', [
    v.strictObject({
      by: v.literal('degrees'),
      degrees: v.pipe(v.number(), v.minValue(0), v.maxValue(45), v.description('off plumb')),
    }),
    v.strictObject({
      by: v.literal('bubble'),
      marks: v.pipe(v.number(), v.minValue(0), v.maxValue(20), v.description('of the vial, off the middle')),
      perMark: v.pipe(
        v.number(),
        v.minValue(0.0001),
        v.maxValue(0.2),
        v.description('lean, metres per metre'),
      ),
    }),
  ]),
  v.description('read off the level itself, not as a gap'),
);
export type PlumbRead = v.InferOutput<typeof PlumbReadSchema>;

/** A level held on one face of a post. */
export const PlumbSchema = v.strictObject({
  kind: v.literal('plumb'),
  hole: LabelSchema,
  side: v.pipe(v.picklist(SIDES), v.description('the face the level was held on')),
  offset: v.pipe(LengthSchema, v.description('gap over the length, never negative')),
  over: v.pipe(LengthSchema, v.description('length over which the gap was read')),
  leans: LeansSchema,
  read: v.optional(PlumbReadSchema),
  turned: v.optional(
    v.pipe(
      v.strictObject({ offset: LengthSchema, leans: LeansSchema, read: v.optional(PlumbReadSchema) }),
      v.description('the same face with the level turned end for end, its marked end down'),
    ),
  ),
  markUp: v.optional(
    v.pipe(
      v.literal(true),
      v.description('its marked end was up, as in the first of two readings that turned it'),
    ),
  ),
  note: NoteSchema,
});

/** How a square post is turned, by both edges of one face. */
export const TwistSchema = v.strictObject({
  kind: v.literal('twist'),
  hole: LabelSchema,
  side: v.pipe(v.picklist(SIDES), v.description('the face whose two edges were measured to')),
  from: v.pipe(
    v.variant('by', [
      v.strictObject({ by: v.literal('string'), from: ThingSchema, to: ThingSchema }),
      v.strictObject({ by: v.literal('tape'), at: PullEndSchema }),
    ]),
    v.description(
      'square off a string or straightedge, whose ends lie alike off two things; or by two level pulls from one place',
    ),
  ),
  anticlockwise: v.pipe(
    LengthSchema,
    v.description('to the edge that comes first, anticlockwise seen from above'),
  ),
  clockwise: v.pipe(LengthSchema, v.description('to the other edge')),
  note: NoteSchema,
});
