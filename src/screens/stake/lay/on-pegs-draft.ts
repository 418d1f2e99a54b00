import type { Length } from '../../../job/length.ts';
import type { LaidOnPegs } from '../../../plan/index.ts';
import { ok, type Result, refuse } from '../../../units/index.ts';
import { emptyPlace, type PlaceDraft, readFromStakes } from './place-draft.ts';

export interface Peg {
  readonly hole: string | null;
  readonly at: PlaceDraft;
}

/** Two stakes that stand where two holes are to be, in the making. */
export interface PegsDraft {
  readonly baseline: Length | null;
  readonly first: Peg;
  readonly second: Peg;
}

const PEG: Peg = { hole: null, at: emptyPlace('pulls') };
export const startPegs = (): PegsDraft => ({ baseline: null, first: PEG, second: PEG });

export const NAMES = { first: 'First stake', second: 'Second stake' } as const;
export type Which = keyof typeof NAMES;

export const holeLabel = (name: string) => `${name}: which hole it is of`;

/** The five tapes, as typed, once all is there; else the first thing that is missing. */
export function readPegs({ baseline, ...pegs }: PegsDraft): Result<LaidOnPegs> {
  if (!baseline) return refuse('A to B', 'A to B: it is empty; pull a tape between the two, and type it.');
  const first = readPeg('first', pegs.first);
  if (!first.ok) return first;
  const second = readPeg('second', pegs.second);
  return second.ok ? ok({ on: 'pegs', baseline, pegs: [first.value, second.value] }) : second;
}

function readPeg(which: Which, { hole, at }: Peg): Result<LaidOnPegs['pegs'][number]> {
  const name = NAMES[which];
  if (hole === null) return refuse(holeLabel(name), `${holeLabel(name)}: nothing is chosen; choose a hole.`);
  const place = readFromStakes(name, at);
  if (!place.ok) return place;
  if (place.value.by !== 'pulls') return refuse(name, `${name}: tell it by two tapes.`);
  return ok({ hole, ...place.value });
}
