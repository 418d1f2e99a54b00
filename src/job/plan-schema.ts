import * as v from 'valibot';
import { UNITS } from '../units/units.ts';
import { LengthSchema } from './length.ts';
import { GroundLineSchema } from './place-schema.ts';

/**
 * A hole's label: what is painted on its stake. Labels are used as keys, so the few that every object has are refused:
 * `overrides['valueOf']` would find a function.
 */
const LABEL = /^(?!(?:constructor|toString|valueOf)$)[A-Za-z0-9][A-Za-z0-9 ._-]{0,11}$/;
export const LabelSchema = v.pipe(
  v.string(),
  v.regex(LABEL, 'must be 1 to 12 letters or digits'),
  v.description('1 to 12 letters or digits; blanks, dots and dashes within'),
);

/** Whether a hole can be called this. */
export const isLabel = (text: string): boolean => LABEL.test(text);

/** What a hole holds. A post is square or rectangular and has an *actual* size; a pier is round. */
export const HoldsSchema = v.variant('kind', [
  v.strictObject({
    kind: v.literal('post'),
    nominal: v.pipe(v.string(), v.maxLength(20), v.description('trade name such as 6×6, or "typed"')),
    width: v.pipe(LengthSchema, v.description('actual size along the front face')),
    depth: v.pipe(LengthSchema, v.description('actual size square to the front face')),
    turned: v.pipe(
      v.picklist(['centre', 'grid']),
      v.description('front face looks away from the centre, or along +y'),
    ),
  }),
  v.strictObject({ kind: v.literal('pier'), diameter: LengthSchema }),
]);
export type Holds = v.InferOutput<typeof HoldsSchema>;

/** What every hole of a plan has, unless the hole says otherwise. */
const HoleSpecEntries = {
  holds: HoldsSchema,
  top: v.pipe(LengthSchema, v.description('target height of the top above the benchmark')),
  holeDiameter: LengthSchema,
};
export const HoleSpecSchema = v.strictObject(HoleSpecEntries);
export type HoleSpec = v.InferOutput<typeof HoleSpecSchema>;
export const HoleOverrideSchema = v.partial(
  v.strictObject({
    ...HoleSpecEntries,
    depth: v.pipe(LengthSchema, v.description('of this hole, gravel and all, instead of what the rules ask')),
    depthWhy: v.pipe(
      v.string(),
      v.minLength(1),
      v.maxLength(200),
      v.description('why it has a depth of its own'),
    ),
  }),
);
export type HoleOverride = v.InferOutput<typeof HoleOverrideSchema>;

export const RING_SIZES = ['radius', 'outer-faces', 'flat-to-flat', 'side'] as const;
export const RingSchema = v.strictObject({
  kind: v.literal('ring'),
  count: v.pipe(v.number(), v.integer(), v.minValue(3), v.maxValue(60)),
  sizeBy: v.pipe(
    v.picklist(RING_SIZES),
    v.description(
      'radius to centres; radius of the circle through the outer faces; flat to flat; or side, all between centres but the second',
    ),
  ),
  size: LengthSchema,
  front: v.picklist(['post', 'flat']),
  pier: v.boolean(),
});
export const RowsSchema = v.strictObject({
  kind: v.literal('rows'),
  columns: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(40)),
  rows: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(40)),
  measuredTo: v.picklist(['centres', 'out-to-out']),
  columnSpacing: v.pipe(
    LengthSchema,
    v.description('centre to centre; or the whole width over the outer faces'),
  ),
  rowSpacing: v.pipe(
    LengthSchema,
    v.description('centre to centre; or the whole depth over the outer faces'),
  ),
});
export const PointsSchema = v.strictObject({
  kind: v.literal('points'),
  points: v.pipe(
    v.array(v.strictObject({ label: LabelSchema, right: LengthSchema, front: LengthSchema })),
    v.maxLength(1000),
    v.description('distances to the right of, and to the front of, the plan centre'),
  ),
});
export const ShapeSchema = v.variant('kind', [RingSchema, RowsSchema, PointsSchema]);
export type Ring = v.InferOutput<typeof RingSchema>;
export type Rows = v.InferOutput<typeof RowsSchema>;
export type Points = v.InferOutput<typeof PointsSchema>;
export type Shape = v.InferOutput<typeof ShapeSchema>;

export const RulesSchema = v.strictObject({
  frostDepth: v.pipe(
    v.nullable(LengthSchema),
    v.description('from the local code; null until it is asked for'),
  ),
  gravel: LengthSchema,
  embedment: v.pipe(LengthSchema, v.description('least length of post or pier in the ground')),
  cover: v.optional(
    v.pipe(LengthSchema, v.description('least concrete between a post and the earth beside it')),
  ),
});
export type Rules = v.InferOutput<typeof RulesSchema>;

const Ratio = v.pipe(v.number(), v.minValue(0.0001), v.maxValue(0.2));
export const TolerancesSchema = v.strictObject({
  position: v.pipe(LengthSchema, v.description('radius of the disc about the planned centre, at the ground')),
  spacing: v.pipe(LengthSchema, v.description('plus or minus, centre to centre of neighbours')),
  plumb: v.pipe(Ratio, v.description('greatest lean, metres per metre')),
  level: v.pipe(LengthSchema, v.description('plus or minus, at the top')),
  tops: v.optional(
    v.pipe(LengthSchema, v.description('plus or minus, of tops among themselves; as `level` when absent')),
  ),
  twist: v.optional(
    v.pipe(
      v.number(),
      v.minValue(0.001),
      v.maxValue(0.35),
      v.description('plus or minus, radians, of a post about itself; 1.5° when absent'),
    ),
  ),
});
export type Tolerances = v.InferOutput<typeof TolerancesSchema>;

/** A tape that does not read true. What is absent needs no correction: it is as printed, or was never noted. */
const TapeSchema = v.strictObject({
  label: v.pipe(LabelSchema, v.description('what is written on it')),
  nominal: v.pipe(LengthSchema, v.description('length as printed')),
  actual: v.pipe(
    LengthSchema,
    v.description('what that is in truth, at its temperature and tension, lying on a floor'),
  ),
  zero: v.pipe(
    LengthSchema,
    v.description('added to every reading: a bent hook or a torn end; negative when it reads too long'),
  ),
  temperature: v.optional(
    v.pipe(
      v.number(),
      v.minValue(-40),
      v.maxValue(70),
      v.description('at which it is true, °C; 20 when absent'),
    ),
  ),
  tension: v.optional(
    v.pipe(v.number(), v.minValue(1), v.maxValue(500), v.description('at which it is true, newtons')),
  ),
  expansion: v.optional(
    v.pipe(v.number(), v.minValue(0), v.maxValue(1e-4), v.description('per °C; 11.6e-6 for steel')),
  ),
  stiffness: v.optional(
    v.pipe(
      v.number(),
      v.minValue(1000),
      v.maxValue(1e7),
      v.description('cross-section times modulus, newtons'),
    ),
  ),
  weight: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(10), v.description('newtons per metre'))),
});
export type TapeSpec = v.InferOutput<typeof TapeSchema>;

/** Standard deviations (one sigma) of the readings, and the tape's reach. */
export const InstrumentsSchema = v.strictObject({
  tapeLength: LengthSchema,
  tapeError: v.pipe(
    LengthSchema,
    v.description('sigma of one pull, the part that does not grow with length'),
  ),
  tapeErrorPerMetre: v.pipe(v.number(), v.minValue(0), v.maxValue(0.01), v.description('metres per metre')),
  plumbError: v.pipe(Ratio, v.description('sigma of one plumb reading, metres per metre')),
  rodError: v.pipe(LengthSchema, v.description('sigma of one rod reading')),
  rodLength: v.optional(v.pipe(LengthSchema, v.description('of the rod, from foot to head'))),
  tapes: v.optional(
    v.pipe(v.array(TapeSchema), v.maxLength(12), v.description('tapes with corrections of their own')),
  ),
});
export type Instruments = v.InferOutput<typeof InstrumentsSchema>;

/** An item that the gate asks for because this job does, such as a sleeve for a cable. */
export const AskSchema = v.pipe(
  v.string(),
  v.regex(/^\S.{0,58}\S$/, 'must be 2 to 60 characters, without blanks at its ends'),
);
const AsksSchema = v.pipe(
  v.array(
    v.strictObject({
      what: AskSchema,
      holes: v.optional(
        v.pipe(v.array(LabelSchema), v.minLength(1), v.maxLength(1000), v.description('all when absent')),
      ),
    }),
  ),
  v.maxLength(30),
);
export type Ask = v.InferOutput<typeof AsksSchema>[number];

/** A week: no bag prints more. */
const MOST_MINUTES = 7 * 24 * 60;

/** What is bought for the job, and what of it stands in the holes. Absent where nobody has said yet. */
export const SuppliesSchema = v.strictObject({
  bagYield: v.optional(
    v.pipe(
      v.number(),
      v.minValue(1),
      v.maxValue(1000),
      v.description('litres that one bag makes, as printed on it'),
    ),
  ),
  workingTime: v.optional(
    v.pipe(
      v.number(),
      v.minValue(1),
      v.maxValue(MOST_MINUTES),
      v.description('minutes from water to stiff, as printed on the bag'),
    ),
  ),
  setTime: v.optional(
    v.pipe(
      v.number(),
      v.minValue(1),
      v.maxValue(MOST_MINUTES),
      v.description('minutes from water to set, as printed on the bag'),
    ),
  ),
  waste: v.optional(
    v.pipe(v.number(), v.minValue(0), v.maxValue(1), v.description('share of concrete added')),
  ),
  tube: v.optional(
    v.pipe(LengthSchema, v.description('inner diameter of a tube that the concrete stands in')),
  ),
  bell: v.optional(
    v.strictObject({
      diameter: v.pipe(LengthSchema, v.description('at the foot of the hole')),
      height: v.pipe(LengthSchema, v.description('over which it narrows to the hole')),
    }),
  ),
  spare: v.optional(v.pipe(LengthSchema, v.description('left on each post for cutting'))),
  stock: v.optional(
    v.pipe(
      v.array(LengthSchema),
      v.minLength(1),
      v.maxLength(20),
      v.description('lengths that posts are sold in'),
    ),
  ),
  bought: v.optional(v.pipe(LengthSchema, v.description('length of every post that was bought'))),
  boughtFor: v.optional(
    v.pipe(v.record(LabelSchema, LengthSchema), v.description('of single posts instead')),
  ),
  ground: v.optional(
    v.pipe(LengthSchema, v.description('above the benchmark, where no height of the ground is measured')),
  ),
});
export type Supplies = v.InferOutput<typeof SuppliesSchema>;

/** What lies on the posts, where the drawing says. */
export const DeckSchema = v.strictObject({
  edge: v.optional(v.pipe(LengthSchema, v.description('radius of a round edge'))),
  opening: v.optional(v.pipe(LengthSchema, v.description('diameter of the round opening for a pier'))),
  gap: v.optional(v.pipe(LengthSchema, v.description('least gap all round the pier'))),
  seat: v.optional(
    v.pipe(LengthSchema, v.description('of the beams below the tops of the posts; none when absent')),
  ),
});
export type Deck = v.InferOutput<typeof DeckSchema>;

/** The design, with the rules and tolerances it is judged by. The `plan` entry that stands last is the plan. */
export const PlanSchema = v.strictObject({
  name: v.pipe(v.string(), v.minLength(1), v.maxLength(80)),
  units: v.picklist(UNITS),
  shape: ShapeSchema,
  each: v.pipe(HoleSpecSchema, v.description('what every hole has')),
  pier: v.pipe(HoleSpecSchema, v.description('what hole P has, when the ring has a pier')),
  overrides: v.pipe(
    v.record(LabelSchema, HoleOverrideSchema),
    v.description('what single holes have instead'),
  ),
  rules: RulesSchema,
  tolerances: TolerancesSchema,
  instruments: InstrumentsSchema,
  supplies: v.optional(SuppliesSchema),
  deck: v.optional(DeckSchema),
  asks: v.optional(v.pipe(AsksSchema, v.description('items of the job’s own before concrete goes in'))),
  lines: v.optional(
    v.pipe(
      v.array(GroundLineSchema),
      v.maxLength(12),
      v.description('on the ground: boundaries, walls of a house, edges of where stakes can stand'),
    ),
  ),
});
export type Plan = v.InferOutput<typeof PlanSchema>;
