import type { Section } from '../plan/hole.ts';
import { bagsFor, holeFill } from './concrete.ts';

/** What is known of one hole when concrete is counted; metres. */
export interface HoleToFill {
  readonly hole: string;
  readonly section: Section;
  /** As the drawing has it; null while the depth that is asked for is not known. */
  readonly planned: { readonly depth: number; readonly diameter: number } | null;
  readonly dug: { readonly depth: number; readonly diameter: number } | null;
  /** A pier's height above the ground; null where that is not known. */
  readonly above: number | null;
  /** Bags that were poured into it; null before it is poured. */
  readonly poured: number | null;
}

/** How a job fills its holes. */
export interface Filling {
  readonly gravel: number;
  readonly tube?: number;
  readonly bell?: { readonly diameter: number; readonly height: number };
  /** Share of the concrete that is added for what is spilled. */
  readonly waste: number;
  /** Litres that one bag makes; null while nobody has said. */
  readonly bagYield: number | null;
}

/** Concrete and gravel of one hole, cubic metres; bags with the waste in them. */
export interface HoleQuantity {
  readonly hole: string;
  /** What was counted; null where neither depth is known, and then nothing else is. */
  readonly from: 'dug' | 'planned' | null;
  /** Without waste. */
  readonly concrete: number | null;
  readonly asPlanned: number | null;
  readonly gravel: number | null;
  /** By itself, rounded up. */
  readonly bags: number | null;
  readonly poured: number | null;
  /** A pier that rises above the ground, nobody knows how far: its form is left out. */
  readonly withoutForm: boolean;
}

export interface JobQuantities {
  readonly holes: readonly HoleQuantity[];
  /** Of the holes that can be counted. */
  readonly concrete: number;
  readonly gravel: number;
  /** For all of them together, with waste: an opened bag serves the next hole. Null without a yield. */
  readonly bags: number | null;
  readonly used: number;
  /** What the poured holes were to take, and what the others still are to. */
  readonly usedFor: number | null;
  readonly left: number | null;
  /** Holes of which nothing is known. */
  readonly unknown: readonly string[];
}

/** Concrete, bags and gravel by hole and in all: as dug where a hole is dug, else as planned. */
export function jobQuantities(holes: readonly HoleToFill[], filling: Filling): JobQuantities {
  const counted = holes.map((hole) => quantityOf(hole, filling));
  const bagsOf = (some: readonly HoleQuantity[]) => bagsIn(sum(some, 'concrete'), filling);
  return {
    holes: counted,
    concrete: sum(counted, 'concrete'),
    gravel: sum(counted, 'gravel'),
    bags: bagsOf(counted),
    used: sum(counted, 'poured'),
    usedFor: bagsOf(counted.filter(({ poured }) => poured !== null)),
    left: bagsOf(counted.filter(({ poured }) => poured === null)),
    unknown: counted.filter(({ from }) => from === null).map(({ hole }) => hole),
  };
}

function quantityOf(hole: HoleToFill, filling: Filling): HoleQuantity {
  const { planned, dug, section, above } = hole;
  const from = dug ? 'dug' : planned ? 'planned' : null;
  const size = dug ?? planned;
  const fill = size && fillOf(size, hole, filling);
  return {
    hole: hole.hole,
    from,
    concrete: fill?.concrete ?? null,
    asPlanned: planned ? fillOf(planned, hole, filling).concrete : null,
    gravel: fill?.gravel ?? null,
    bags: fill ? bagsIn(fill.concrete, filling) : null,
    poured: hole.poured,
    withoutForm: section.kind === 'pier' && above === null,
  };
}

function fillOf(
  size: { readonly depth: number; readonly diameter: number },
  { section, above }: HoleToFill,
  { gravel, tube, bell }: Filling,
) {
  // A tube carries a post's concrete; a pier has its own size, and fills its hole.
  const inTube = tube !== undefined && section.kind === 'post' ? { tube } : {};
  return holeFill({ ...size, section, gravel, above: above ?? 0, ...inTube, ...(bell ? { bell } : {}) });
}

const bagsIn = (volume: number, { waste, bagYield }: Filling): number | null =>
  bagYield === null ? null : bagsFor(volume * (1 + waste), bagYield);

const sum = (holes: readonly HoleQuantity[], of: 'concrete' | 'gravel' | 'poured'): number =>
  holes.reduce((total, hole) => total + (hole[of] ?? 0), 0);
