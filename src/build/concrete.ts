import type { Section } from '../plan/index.ts';

/** A hole as planned or as dug, metres. */
export interface DugHole {
  readonly diameter: number;
  /** To the bottom, gravel and all. */
  readonly depth: number;
  readonly gravel: number;
  readonly section: Section;
  /** A pier's own height above the ground; 0 when absent. A post's does not count: it is not concrete. */
  readonly above?: number;
  /** Inner diameter of a tube that holds the concrete; what is outside it is filled with soil. */
  readonly tube?: number;
  /** A foot that is wider than the hole: its diameter, and the height over which it narrows. */
  readonly bell?: { readonly diameter: number; readonly height: number };
}

/** What goes into a hole, cubic metres. */
export interface HoleFill {
  readonly concrete: number;
  readonly gravel: number;
}

/**
 * Concrete and gravel for one hole: a cylinder, V = π/4 D² h. Gravel lies at the bottom; concrete fills the rest up to the
 * ground, less the post that stands in it on the gravel. A pier is itself concrete: nothing is taken off, and what rises
 * above the ground comes on top. In a tube only the tube is filled. A bell adds what a frustum of a cone has beyond the
 * shaft that runs through it.
 *
 * @returns zero rather than less, where the gravel fills the hole or the post is as wide as it
 */
export function holeFill(hole: DugHole): HoleFill {
  const { diameter, depth, gravel, section, above = 0, tube, bell } = hole;
  const gravelled = Math.min(gravel, depth);
  const height = depth - gravelled;
  const shaft = Math.min(tube ?? diameter, diameter);
  const inside = section.kind === 'post' ? section.width * section.depth : 0;
  const rising = section.kind === 'pier' ? disc(section.diameter) * above : 0;
  const shafted = Math.max(0, disc(shaft) - inside) * height;
  const belled = bell ? bellBeyond(bell, shaft, height) : 0;
  return { concrete: shafted + rising + belled, gravel: disc(diameter) * gravelled };
}

const disc = (diameter: number): number => (Math.PI / 4) * diameter ** 2;

/** A frustum, π h (D² + D d + d²) / 12, less the cylinder in it; a bell no wider than its shaft adds nothing. */
function bellBeyond(bell: { diameter: number; height: number }, shaft: number, room: number): number {
  if (bell.diameter <= shaft) return 0;
  const height = Math.min(bell.height, room);
  const { diameter: wide } = bell;
  const frustum = (Math.PI / 12) * height * (wide ** 2 + wide * shaft + shaft ** 2);
  return frustum - disc(shaft) * height;
}

const CUBIC_METRES_PER_LITRE = 0.001;
/** A millionth of a bag, a few drops: what adding up may lose, and what nobody opens a bag for. */
const BAG_SLACK = 1e-6;

/**
 * Whole bags for a volume: never one short by rounding, never one too many at an exact multiple.
 *
 * @param volume cubic metres
 * @param litresPerBag yield as printed on the bag
 * @throws RangeError when the yield is not more than zero
 */
export function bagsFor(volume: number, litresPerBag: number): number {
  if (!(litresPerBag > 0)) throw new RangeError(`A bag cannot yield ${litresPerBag} litres`);
  return Math.max(0, Math.ceil(volume / (litresPerBag * CUBIC_METRES_PER_LITRE) - BAG_SLACK));
}

/** A bag of dry concrete mix, and what it yields when mixed. */
export interface BagSize {
  readonly name: string;
  readonly litres: number;
}

/** Litres in a cubic foot: 3.048 dm cubed. */
const LITRES_PER_CUBIC_FOOT = 3.048 ** 3;
/** Cubic feet that a pound of dry mix yields. */
const CUBIC_FEET_PER_POUND = 0.15 / 20;
/** The avoirdupois pound, exact. */
const KILOGRAMS_PER_POUND = 0.45359237;
const LITRES_PER_KILOGRAM = (CUBIC_FEET_PER_POUND * LITRES_PER_CUBIC_FOOT) / KILOGRAMS_PER_POUND;

/**
 * Usual bags. In pounds: 0.15 cubic feet for each 20 lb, as sellers print it (constructionwork.com, civilstep.com); in
 * kilograms by the same ratio, derived, not published. Products differ: what is printed on the bag counts.
 */
export const BAG_SIZES: Record<'pounds' | 'kilograms', readonly BagSize[]> = {
  pounds: [40, 50, 60, 80].map((pounds) => ({
    name: `${pounds} lb`,
    litres: pounds * CUBIC_FEET_PER_POUND * LITRES_PER_CUBIC_FOOT,
  })),
  kilograms: [20, 25, 30].map((kilograms) => ({
    name: `${kilograms} kg`,
    litres: kilograms * LITRES_PER_KILOGRAM,
  })),
};
