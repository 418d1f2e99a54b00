import type { Length } from '../../../job/length.ts';
import type { FromStakes, GroundLine, GroundPlace } from '../../../job/place-schema.ts';
import { lengthBy, type TapeInHand } from '../../../measure/index.ts';
import type { LaidOnPegs, LaidOnStakes } from '../../../plan/index.ts';
import { fine } from './fine.ts';
import type { LineDraft } from './line-draft.ts';
import { draftOf, type PlaceDraft } from './place-draft.ts';

/** What is there where the tape in hand reads this. The text stays what was typed. */
const there = (inHand: TapeInHand | null, read: Length): Length =>
  inHand ? { ...read, m: lengthBy(inHand, read.m) } : read;

const FIELDS = ['fromA', 'fromB', 'station', 'offset'] as const;

function placeThere<P extends FromStakes>(inHand: TapeInHand | null, place: P): P {
  const lengths = FIELDS.flatMap((field) => {
    const read = (place as { readonly [F in typeof field]?: Length })[field];
    return read ? [[field, there(inHand, read)] as const] : [];
  });
  return { ...place, ...Object.fromEntries(lengths) };
}

/** What is there of two points and places told from them, where the tape in hand read them. */
export const stakesThere = (
  inHand: TapeInHand | null,
  { baseline, centre, front, ...laid }: LaidOnStakes,
): LaidOnStakes => ({
  ...laid,
  baseline: there(inHand, baseline),
  centre: placeThere(inHand, centre),
  front: front.by === 'way' ? front : placeThere(inHand, front),
});

export const pegsThere = (
  inHand: TapeInHand | null,
  { baseline, pegs: [one, other], ...laid }: LaidOnPegs,
): LaidOnPegs => ({
  ...laid,
  baseline: there(inHand, baseline),
  pegs: [placeThere(inHand, one), placeThere(inHand, other)],
});

/**
 * A line in the making, by what is there. The plan knows of no tape, so lengths are kept there and no readings: those that the
 * line has already are lengths.
 */
export function lineThere(inHand: TapeInHand | null, draft: LineDraft, line: GroundLine | null): LineDraft {
  if (!inHand) return draft;
  const end = (typed: PlaceDraft, kept: GroundPlace | undefined): PlaceDraft => {
    const before = kept && draftOf(kept);
    const lengths = FIELDS.flatMap((field) => {
      const read = typed[field];
      return read && read !== before?.[field] ? [[field, fine(lengthBy(inHand, read.m))] as const] : [];
    });
    return { ...typed, ...Object.fromEntries(lengths) };
  };
  return { ...draft, from: end(draft.from, line?.from), to: end(draft.to, line?.to) };
}
