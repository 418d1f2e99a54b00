import type { Length } from '../job/length.ts';
import type { Deck, Plan, Supplies } from '../job/plan-schema.ts';
import { COARSEST_M, DEEPEST_M, LONGEST_M, outOfRange, type Sized, WIDEST_M } from './check-sizes.ts';
import { FIELDS } from './fields.ts';
import type { PlanProblem } from './plan-problem.ts';

/** Lengths to buy and to cut that cannot be meant. No hole is staked by them, so none stops the work. */
export function checkSupplies({ supplies, deck }: Plan): PlanProblem[] {
  const sizes = [...(supplies ? supplySizes(supplies) : []), ...(deck ? deckSizes(deck) : [])];
  return sizes.flatMap(outOfRange).map((problem) => ({ ...problem, stops: false }));
}

function supplySizes({ tube, bell, spare, stock, bought, boughtFor, ground }: Supplies): Sized[] {
  const lengths = (field: string, some: readonly Length[]) =>
    some.map((length) => ({ field, length, most: LONGEST_M }));
  return [
    ...(tube ? [{ field: FIELDS.tube, length: tube, most: WIDEST_M, least: 0 }] : []),
    ...(bell
      ? [
          { field: FIELDS.bell, length: bell.diameter, most: WIDEST_M, least: 0 },
          { field: FIELDS.bellHeight, length: bell.height, most: DEEPEST_M, least: 0 },
        ]
      : []),
    ...(spare ? [{ field: FIELDS.spare, length: spare, most: DEEPEST_M, least: 0 }] : []),
    ...lengths(FIELDS.stock, stock ?? []),
    ...lengths(FIELDS.bought, [...(bought ? [bought] : []), ...Object.values(boughtFor ?? {})]),
    ...(ground ? [{ field: FIELDS.levelGround, length: ground, most: DEEPEST_M, least: -DEEPEST_M }] : []),
  ];
}

function deckSizes({ edge, opening, gap }: Deck): Sized[] {
  return [
    ...(edge ? [{ field: FIELDS.edge, length: edge, most: LONGEST_M }] : []),
    ...(opening ? [{ field: FIELDS.opening, length: opening, most: LONGEST_M }] : []),
    ...(gap ? [{ field: FIELDS.gap, length: gap, most: COARSEST_M, least: 0 }] : []),
  ];
}
