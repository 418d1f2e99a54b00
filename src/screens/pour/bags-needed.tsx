import type { HoleFill } from '../../build/concrete.ts';
import { BAG_SIZES, type BagSize, bagsFor } from '../../build/index.ts';
import { lengthWords } from '../../job/length.ts';
import { quantitiesOf } from '../../judge/supplies.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import type { Section } from '../../plan/hole.ts';
import { formatLength, isMetric, type Units } from '../../units/index.ts';

/** Bags that are shown: the two largest of the usual ones. */
const SHOWN = 2;

/** Concrete for this hole, as dug where it is dug, else as planned, and what is counted in it. */
export function BagsNeeded({ view, hole }: { readonly view: JobView; readonly hole: HoleAssessment }) {
  const found = fillOf(view, hole);
  if (!found) return null;
  const metric = isMetric(view.plan.units);
  const counted = quantitiesOf(view).holes.find(({ hole: label }) => label === hole.hole);
  if (counted && counted.bags !== null) {
    return (
      <p>
        It takes <strong>{counted.bags === 1 ? '1 bag' : `${counted.bags} bags`}</strong>, waste in it, by
        what one bag makes as you said it. Counted: {found.words}
      </p>
    );
  }
  const sizes = BAG_SIZES[metric ? 'kilograms' : 'pounds'].slice(-SHOWN).reverse();
  return (
    <p>
      It takes <strong>{sizes.map((size) => bagWords(found.fill.concrete, size)).join(', or ')}</strong> by
      the usual yield; what is printed on the bag counts. Counted: {found.words}
    </p>
  );
}

/** The concrete of one hole and what is counted in it, in words; null while its depth is not known. */
export function fillOf(view: JobView, hole: HoleAssessment): { fill: HoleFill; words: string } | null {
  const planned = view.holes.find(({ label }) => label === hole.hole);
  const dug = view.book.dug(hole.hole).at(-1)?.entry.body;
  const depth = dug?.depth.m ?? hole.dug.requiredDepth;
  const counted = quantitiesOf(view).holes.find(({ hole: label }) => label === hole.hole);
  if (!planned || depth === null || !counted || counted.concrete === null) return null;
  const { units, rules } = view.plan;
  const diameter = dug?.width.m ?? planned.holeDiameter;
  const { section } = planned;
  const ground = view.heights.get(`ground:${hole.hole}`)?.height;
  const above = section.kind === 'pier' && ground !== undefined ? Math.max(0, planned.top - ground) : 0;
  const size = dug
    ? `the hole as dug, ${lengthWords(dug.depth)} deep and ${lengthWords(dug.width)} wide`
    : `the hole as planned, ${formatLength(depth, units)} deep and ${formatLength(diameter, units)} wide`;
  const gravel = rules.gravel.m > 0 ? `, over ${lengthWords(rules.gravel)} of gravel` : '';
  const fill = { concrete: counted.concrete, gravel: counted.gravel ?? 0 };
  return { fill, words: `${size}${gravel}${footingWords(view, section)}${restWords(section, above, units)}` };
}

/** A tube that the concrete stands in, and a foot that is wider than the hole. */
function footingWords({ plan: { supplies } }: JobView, section: Section): string {
  const tube = section.kind === 'post' && supplies?.tube && supplies.tube.m > 0 ? supplies.tube : null;
  const bell = supplies?.bell && supplies.bell.diameter.m > 0 ? supplies.bell.diameter : null;
  return `${tube ? `, in a tube of ${lengthWords(tube)}` : ''}${bell ? `, its foot ${lengthWords(bell)} across` : ''}`;
}

/** What comes off, or on top. A height above the ground that nobody has read is left out, and said to be. */
function restWords(section: Section, above: number, units: Units): string {
  if (section.kind === 'post') return ', less the post in it.';
  if (above > 0) return `, and the pier’s ${formatLength(above, units)} above the ground.`;
  return ', filled right up. What the pier rises above the ground is not counted: add it for its form.';
}

const bagWords = (volume: number, { name, litres }: BagSize): string => {
  const bags = bagsFor(volume, litres);
  return `${bags} ${bags === 1 ? 'bag' : 'bags'} of ${name}`;
};
