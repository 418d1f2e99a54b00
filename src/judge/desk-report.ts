import type { Cuts } from '../build/cuts.ts';
import type { FrameAsBuilt } from '../build/frame.ts';
import type { JobQuantities } from '../build/quantities.ts';
import { DECK_CENTRES, type DeckCentre, type RoundDeck } from '../build/round-deck.ts';
import type { Seats } from '../build/seats.ts';
import type { PostLength } from '../build/shopping.ts';
import type { SquareAsBuilt } from '../build/square.ts';
import type { Entry } from '../job/entry-schema.ts';
import { asBuilt, asBuiltRound, asBuiltSquare, type FrameHeight } from './as-built.ts';
import { assessSituation } from './assess.ts';
import { cutMarks, seatsAsBuilt } from './cut-marks.ts';
import { situate } from './situation.ts';
import { lengthsOf, quantitiesOf } from './supplies.ts';
import type { Assessment } from './types.ts';
import { viewOf } from './view.ts';

/** The posts as they stand, for whoever cuts to them. Metres and radians, one sigma each. */
export interface FrameReport extends FrameAsBuilt {
  /** How far up each post its figures are told. */
  readonly toldAt: Readonly<Record<string, FrameHeight>>;
  /** Of rows and columns; null of another shape, and while one of the four corners is not measured. */
  readonly square: SquareAsBuilt | null;
  /** Of a ring, by where the deck's middle is put; null of another shape, and while that cannot be told. */
  readonly round: Readonly<Record<DeckCentre, RoundDeck | null>>;
  readonly cuts: { readonly toPlan: Cuts; readonly toShortest: Cuts };
  readonly seats: Seats;
}

/** What is to be bought. */
export interface PurchasesReport {
  readonly posts: readonly PostLength[];
  readonly concrete: JobQuantities;
}

/** What the desk command prints: what the screens show all the time, and what they show on demand. */
export interface DeskReport extends Assessment {
  /** Null until the plan lies on the site. */
  readonly frame: FrameReport | null;
  /** Null before there is a plan. */
  readonly purchases: PurchasesReport | null;
}

/** All that can be said of a log. Pure, and defined for every log. */
export function deskReport(log: readonly Entry[]): DeskReport {
  const situation = situate(log);
  const view = viewOf(situation);
  const built = view && asBuilt(view);
  const frame = (): FrameReport | null => {
    if (!view || !built) return null;
    const cuts = { toPlan: cutMarks(view, 'plan'), toShortest: cutMarks(view, 'shortest') };
    const round = DECK_CENTRES.map((about) => [about, asBuiltRound(view, built, about)] as const);
    return {
      ...built.frame,
      toldAt: Object.fromEntries(built.heightOf),
      square: asBuiltSquare(view, built),
      round: Object.fromEntries(round) as Record<DeckCentre, RoundDeck | null>,
      cuts,
      seats: seatsAsBuilt(view),
    };
  };
  return {
    ...assessSituation(situation),
    frame: frame(),
    purchases: view && { posts: lengthsOf(view), concrete: quantitiesOf(view) },
  };
}
