import { BAG_SIZES, type BagSize, bagsFor, holeFill } from '../../build/index.ts';
import { ofKind } from '../../job/log.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';

/** Bags that are shown: the two largest of the usual ones. */
const SHOWN = 2;

/** Concrete for this hole, as dug where it is dug, else as planned. */
export function BagsNeeded({ view, hole }: { readonly view: JobView; readonly hole: HoleAssessment }) {
  const planned = view.holes.find(({ label }) => label === hole.hole);
  const dug = ofKind(view.entries, 'dug')
    .filter(({ body }) => body.hole === hole.hole)
    .at(-1)?.body;
  const depth = dug?.depth.m ?? hole.dug.requiredDepth;
  if (!planned || depth === null) return null;
  const diameter = dug?.width.m ?? planned.holeDiameter;
  const { concrete } = holeFill({
    diameter,
    depth,
    gravel: view.plan.rules.gravel.m,
    section: planned.section,
  });
  const metric = view.plan.units === 'm' || view.plan.units === 'mm';
  const sizes = BAG_SIZES[metric ? 'kilograms' : 'pounds'].slice(-SHOWN).reverse();
  return (
    <p>
      {dug ? 'As dug' : 'As planned'} it takes {sizes.map((size) => bagWords(concrete, size)).join(', or ')},
      by the usual yield. What is printed on the bag counts.
    </p>
  );
}

const bagWords = (volume: number, { name, litres }: BagSize): string => {
  const bags = bagsFor(volume, litres);
  return `${bags} ${bags === 1 ? 'bag' : 'bags'} of ${name}`;
};
