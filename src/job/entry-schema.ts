import * as v from 'valibot';
import { LaidBySchema } from './laid-schema.ts';
import { LengthSchema } from './length.ts';
import { NoteSchema } from './note-schema.ts';
import { PlanPlaceSchema } from './place-schema.ts';
import { AskSchema, LabelSchema, PlanSchema } from './plan-schema.ts';
import { PlumbSchema, TwistSchema } from './plumb-schema.ts';
import { NailSchema, PullEndSchema, StakeSchema, ThingSchema } from './thing-schema.ts';

export { FRONT_WAYS, type LaidBy } from './laid-schema.ts';
export type { PlumbRead } from './plumb-schema.ts';
export {
  type PullEnd,
  PullEndSchema,
  SIDES,
  type Side,
  type Thing,
  ThingSchema,
  type Touch,
  TouchSchema,
} from './thing-schema.ts';

/** How the tape was held. Along the slope without a known rise is legal: the reading then carries that doubt. */
export const HoldSchema = v.variant('how', [
  v.strictObject({ how: v.literal('level') }),
  v.strictObject({ how: v.literal('slope'), rise: v.optional(LengthSchema) }),
]);
export type Hold = v.InferOutput<typeof HoldSchema>;

/** How hard and how warm a tape was held, where that was noted: what is absent was as the tape's own standard says. */
const PullingSchema = v.strictObject({
  temperature: v.optional(
    v.pipe(v.number(), v.minValue(-40), v.maxValue(70), v.description('of the tape, °C')),
  ),
  tension: v.optional(v.pipe(v.number(), v.minValue(1), v.maxValue(500), v.description('newtons'))),
  spans: v.optional(
    v.pipe(v.array(LengthSchema), v.maxLength(20), v.description('lengths that hung free, one by one')),
  ),
});
export type Pulling = v.InferOutput<typeof PullingSchema>;

/** What a height is of: read with a rod, or compared by a water level or a laser. */
export const HeightPointSchema = v.variant('point', [
  v.strictObject({ point: v.literal('benchmark') }),
  v.strictObject({ point: v.literal('top'), hole: LabelSchema }),
  v.strictObject({ point: v.literal('ground'), hole: LabelSchema }),
  v.strictObject({ point: v.literal('bottom'), hole: LabelSchema }),
  v.strictObject({ point: v.literal('turning-point'), label: LabelSchema }),
  v.strictObject({ point: v.literal('stake'), label: LabelSchema }),
]);
export type HeightPoint = v.InferOutput<typeof HeightPointSchema>;

/** Readings on the two pegs of a test of the level, from one set-up. */
const PegReadingsSchema = v.strictObject({ a: LengthSchema, b: LengthSchema });

/** How a depth was read from something above the downhill lip. */
const DepthMarkSchema = v.strictObject({
  from: v.picklist(['string', 'stake', 'level', 'other']),
  reading: v.pipe(LengthSchema, v.description('from the mark down to the bottom')),
  above: v.pipe(LengthSchema, v.description('of the mark above the downhill lip')),
});

export type DepthMark = v.InferOutput<typeof DepthMarkSchema>;

export const OBSTRUCTIONS = ['none', 'rock', 'water', 'roots', 'soft', 'other'] as const;

/** What a person ticks before a gate: by hole, or for the whole job where `hole` is absent. */
export const CHECKS = [
  'utilities',
  'ties',
  'inspection',
  'clean',
  'gravel',
  'room',
  'braced',
  'weather',
  'asked',
] as const;
export type Check = (typeof CHECKS)[number];

/** What whoever is responsible decides on, hole by hole. */
export const DECISIONS = ['obstruction', 'shallower', 'room', 'moved'] as const;
export type Decision = (typeof DECISIONS)[number];

const STAND_EVENTS = ['driven', 'set', 'nudged', 'moved'] as const;

/** Body of each entry kind. To add a kind: a line here, a reader of it below `judge/`, a form in `screens/`. */
export const BODIES = {
  plan: v.strictObject({ kind: v.literal('plan'), plan: PlanSchema }),
  site: v.strictObject({
    kind: v.literal('site'),
    a: PlanPlaceSchema,
    b: PlanPlaceSchema,
    chosenBy: v.picklist(['tool', 'user']),
    laid: v.optional(
      v.pipe(LaidBySchema, v.description('on what is there already: what was measured, as typed')),
    ),
  }),
  reference: v.strictObject({
    kind: v.literal('reference'),
    thing: v.variant('kind', [StakeSchema, NailSchema]),
    at: v.pipe(PlanPlaceSchema, v.description('where it is meant to stand; which side of a line it is on')),
  }),
  stand: v.strictObject({
    kind: v.literal('stand'),
    thing: ThingSchema,
    event: v.pipe(v.picklist(STAND_EVENTS), v.description('each opens a new stand of the thing')),
    since: v.optional(
      v.pipe(
        v.string(),
        v.maxLength(64),
        v.description(
          'id of an earlier pull that found it there already: this stand begins before that entry',
        ),
      ),
    ),
    note: NoteSchema,
  }),
  pull: v.strictObject({
    kind: v.literal('pull'),
    from: PullEndSchema,
    to: PullEndSchema,
    reading: LengthSchema,
    hold: HoldSchema,
    tape: v.optional(
      v.pipe(LabelSchema, v.description('of the plan’s tapes; one without corrections when absent')),
    ),
    pulling: v.optional(PullingSchema),
    note: NoteSchema,
  }),
  offset: v.strictObject({
    kind: v.literal('offset'),
    from: v.pipe(ThingSchema, v.description('where the string begins: stations count from here')),
    to: v.pipe(ThingSchema, v.description('where the string ends')),
    of: v.pipe(PullEndSchema, v.description('what was measured off the string')),
    station: v.optional(
      v.pipe(LengthSchema, v.description('along the string; behind its beginning when negative')),
    ),
    offset: v.optional(v.pipe(LengthSchema, v.description('square off the string, never negative'))),
    side: v.pipe(
      v.picklist(['left', 'right', 'on']),
      v.description('of a person who walks along the string from its beginning'),
    ),
    tape: v.optional(
      v.pipe(LabelSchema, v.description('of the plan’s tapes; one without corrections when absent')),
    ),
    pulling: v.optional(PullingSchema),
    note: NoteSchema,
  }),
  plumb: PlumbSchema,
  twist: TwistSchema,
  rod: v.strictObject({
    kind: v.literal('rod'),
    setup: v.pipe(LabelSchema, v.description('set-up of the level; a new one each time it is moved')),
    on: HeightPointSchema,
    reading: LengthSchema,
    sight: v.optional(v.pipe(LengthSchema, v.description('from the level to the rod'))),
    inverted: v.optional(
      v.pipe(v.boolean(), v.description('held upside down against a point above the level')),
    ),
    note: NoteSchema,
  }),
  difference: v.strictObject({
    kind: v.literal('difference'),
    by: v.picklist(['water-level', 'laser']),
    from: HeightPointSchema,
    to: HeightPointSchema,
    height: v.pipe(LengthSchema, v.description('between the two, never negative')),
    higher: v.picklist(['from', 'to', 'none']),
    note: NoteSchema,
  }),
  'two-peg': v.strictObject({
    kind: v.literal('two-peg'),
    middle: v.pipe(PegReadingsSchema, v.description('rod readings from midway between the pegs')),
    near: v.pipe(PegReadingsSchema, v.description('rod readings from near peg a')),
    sights: v.pipe(PegReadingsSchema, v.description('from the level to each peg, in the second set-up')),
    note: NoteSchema,
  }),
  dug: v.strictObject({
    kind: v.literal('dug'),
    hole: LabelSchema,
    depth: v.pipe(LengthSchema, v.description('from the downhill lip')),
    width: v.pipe(LengthSchema, v.description('least width at the foot')),
    mark: v.optional(
      v.pipe(DepthMarkSchema, v.description('what the depth was read from, where not from the lip itself')),
    ),
    obstruction: v.picklist(OBSTRUCTIONS),
    note: NoteSchema,
  }),
  check: v.strictObject({
    kind: v.literal('check'),
    hole: v.optional(LabelSchema),
    item: v.picklist(CHECKS),
    asked: v.optional(
      v.pipe(AskSchema, v.description('which of the plan’s own items, where `item` is `asked`')),
    ),
    done: v.boolean(),
    decides: v.optional(
      v.pipe(
        v.picklist(DECISIONS),
        v.description(
          'what was decided at this inspection; an inspection without it decides on what was met',
        ),
      ),
    ),
    note: NoteSchema,
  }),
  pour: v.strictObject({
    kind: v.literal('pour'),
    hole: LabelSchema,
    bags: v.pipe(v.number(), v.minValue(0), v.maxValue(1000)),
    time: v.optional(
      v.pipe(
        v.string(),
        v.isoTimestamp(),
        v.description('when it went in, UTC, where that is not when it was logged'),
      ),
    ),
    batch: v.optional(
      v.pipe(v.string(), v.minLength(1), v.maxLength(40), v.description('as printed on bag or ticket')),
    ),
    note: NoteSchema,
  }),
  note: v.strictObject({
    kind: v.literal('note'),
    hole: v.optional(LabelSchema),
    text: v.pipe(v.string(), v.minLength(1), v.maxLength(2000)),
  }),
  strike: v.strictObject({
    kind: v.literal('strike'),
    entry: v.pipe(v.string(), v.maxLength(64), v.description('id of the entry that is struck')),
    reason: v.pipe(v.string(), v.minLength(1), v.maxLength(500)),
  }),
};
export const BodySchema = v.variant('kind', [
  BODIES.plan,
  BODIES.site,
  BODIES.reference,
  BODIES.stand,
  BODIES.pull,
  BODIES.offset,
  BODIES.plumb,
  BODIES.twist,
  BODIES.rod,
  BODIES.difference,
  BODIES['two-peg'],
  BODIES.dug,
  BODIES.check,
  BODIES.pour,
  BODIES.note,
  BODIES.strike,
]);
export type Body = v.InferOutput<typeof BodySchema>;
export type EntryKind = Body['kind'];

/** Ids are made by chance, long enough that two phones never make the same. */
export const IdSchema = v.pipe(
  v.string(),
  v.regex(/^[0-9a-zA-Z-]{8,64}$/, 'must be an id of 8 to 64 letters, digits and dashes'),
);

/**
 * One line of the field book. Never edited. `seq` is a Lamport counter (one more than the greatest seen by the phone
 * that wrote it; Lamport, Communications of the ACM 21(7), 1978), so that order survives a clock that is set back.
 */
export const EntrySchema = v.strictObject({
  id: IdSchema,
  seq: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(Number.MAX_SAFE_INTEGER)),
  at: v.pipe(v.string(), v.isoTimestamp(), v.description('clock time on the phone, UTC')),
  body: BodySchema,
});
export type Entry = v.InferOutput<typeof EntrySchema>;
export type EntryOf<K extends EntryKind> = Entry & { readonly body: Extract<Body, { kind: K }> };
