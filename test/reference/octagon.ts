/** Identities of the regular octagon, as any text on polygons gives them (from memory; recomputed by hand). */
export const OCTAGON = {
  /** side / R = 2 sin 22.5° */
  side: 0.7653668647,
  /** R / side = √(4 + 2√2) / 2 */
  radiusOfSide: 1.3065629649,
  /** apothem / R = cos 22.5° */
  apothem: 0.9238795325,
  /** side / across flats = 1 / (1 + √2) */
  sideOfFlats: 0.4142135624,
  /** across corners / side */
  cornersOfSide: 2.6131259298,
  /** chord over one corner / R = √2 */
  overOne: Math.SQRT2,
  /** chord over two corners / R */
  overTwo: 1.847759065,
  /** area / R² = 2√2 */
  area: 2.8284271247,
} as const;
