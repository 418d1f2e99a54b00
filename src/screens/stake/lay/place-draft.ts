import type { Length } from '../../../job/length.ts';
import type { FromStakes, GroundPlace } from '../../../job/place-schema.ts';
import { ok, type Result, refuse } from '../../../units/index.ts';
import { type PlaceParts, placeIn, placeMissing, startPlace } from '../place-fields.tsx';

/** How a place on the ground is told. */
export type Telling = GroundPlace['by'];
export type Hand = FromStakes['side'];

/** A place on the ground in the making: what was typed stays when another way to tell it is chosen. */
export interface PlaceDraft {
  readonly by: Telling;
  readonly plan: PlaceParts;
  readonly fromA: Length | null;
  readonly fromB: Length | null;
  readonly station: Length | null;
  readonly offset: Length | null;
  readonly side: Hand | null;
}

export const emptyPlace = (by: Telling): PlaceDraft => ({
  by,
  plan: startPlace(),
  fromA: null,
  fromB: null,
  station: null,
  offset: null,
  side: null,
});

export function draftOf(place: GroundPlace): PlaceDraft {
  const empty = emptyPlace(place.by);
  return place.by === 'plan' ? { ...empty, plan: startPlace(place) } : { ...empty, ...place };
}

/** Labels of the fields, by the name of the place. */
export const LABELS = {
  fromA: (name: string) => `${name}: tape from A`,
  fromB: (name: string) => `${name}: tape from B`,
  station: (name: string) => `${name}: along A–B, from A`,
  offset: (name: string) => `${name}: square off A–B`,
  side: (name: string) => `${name}: which side, as you walk from A to B`,
} as const;

/** The place, once all of it is filled in; else the first thing that is missing. */
export function readPlace(name: string, draft: PlaceDraft): Result<GroundPlace> {
  if (draft.by !== 'plan') return readFromStakes(name, draft);
  const place = placeIn(draft.plan);
  return place ? ok({ by: 'plan', ...place }) : refuse(name, placeMissing(name, draft.plan));
}

export function readFromStakes(
  name: string,
  { by, fromA, fromB, station, offset, side }: PlaceDraft,
): Result<FromStakes> {
  const missing = (field: keyof typeof LABELS) =>
    refuse(
      LABELS[field](name),
      field === 'side'
        ? `${LABELS.side(name)}: nothing is chosen; choose left or right.`
        : `${LABELS[field](name)}: it is empty; type a length.`,
    );
  if (by === 'offset') {
    if (!station) return missing('station');
    if (!offset) return missing('offset');
    return side ? ok({ by, station, offset, side }) : missing('side');
  }
  if (!fromA) return missing('fromA');
  if (!fromB) return missing('fromB');
  return side ? ok({ by: 'pulls', fromA, fromB, side }) : missing('side');
}
