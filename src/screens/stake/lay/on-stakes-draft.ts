import type { FRONT_WAYS } from '../../../job/entry-schema.ts';
import type { Length } from '../../../job/length.ts';
import type { LaidOnStakes } from '../../../plan/index.ts';
import { ok, type Result, refuse } from '../../../units/index.ts';
import { emptyPlace, type PlaceDraft, readFromStakes } from './place-draft.ts';

export type FrontWay = (typeof FRONT_WAYS)[number];

/** Two points that are there, and where the centre and the front go, in the making. */
export interface StakesDraft {
  readonly baseline: Length | null;
  readonly centre: PlaceDraft;
  readonly front: FrontWay | 'place' | null;
  readonly before: PlaceDraft;
}

export const startStakes = (): StakesDraft => ({
  baseline: null,
  centre: emptyPlace('pulls'),
  front: null,
  before: emptyPlace('pulls'),
});

export const FRONT_LABEL = 'The plan’s front looks, as you walk from A to B';

/** All that was measured, as typed, once it is whole; else the first thing that is missing. */
export function readStakes({ baseline, centre, front, before }: StakesDraft): Result<LaidOnStakes> {
  if (!baseline) return refuse('A to B', 'A to B: it is empty; pull a tape between the two, and type it.');
  const at = readFromStakes('Centre', centre);
  if (!at.ok) return at;
  if (front === null) return refuse(FRONT_LABEL, `${FRONT_LABEL}: nothing is chosen; choose one.`);
  if (front !== 'place')
    return ok({ on: 'stakes', baseline, centre: at.value, front: { by: 'way', way: front } });
  const place = readFromStakes('Front', before);
  return place.ok ? ok({ on: 'stakes', baseline, centre: at.value, front: place.value }) : place;
}
