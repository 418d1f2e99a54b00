/**
 * Weight of a mason's line, newtons per metre: 0.0008 lb/ft, a thin braided nylon line (assumed; a thick one weighs twice as
 * much).
 */
const LINE_WEIGHT = 0.0117;
/** A line pulled hard by hand, newtons: 10 lb (assumed). */
const LINE_TENSION = 44.5;

/** Beyond 40 ft a string's sag cannot be pulled out by hand (common practice), metres. */
export const LONG_STRING = 12.2;

/**
 * How far the middle of a level string hangs below its ends: w L² / 8 H, the parabola of a shallow catenary (any text on
 * statics), metres.
 *
 * @param length nail to nail, metres
 */
export const stringSag = (length: number): number => (LINE_WEIGHT * length ** 2) / (8 * LINE_TENSION);
