import type { Body, Entry } from '../../job/entry-schema.ts';
import { ofKind } from '../../job/log.ts';
import type { Present } from './present.ts';
import { STAKE_A, STAKE_B } from './stake-step.ts';

/** Text of the note by which the log says that a stake was left unsure for the time being. */
const LEFT_UNSURE = 'The stake was left unsure for now.';

export const putOffNote = (hole: string): Body => ({ kind: 'note', hole, text: LEFT_UNSURE });

/** Holes whose unsure stake the user went past: each until one of its two tapes is read again. */
export function putOffIn(entries: readonly Entry[], present: Present): ReadonlySet<string> {
  const order = new Map(entries.map(({ id }, i) => [id, i]));
  const holes = ofKind(entries, 'note').flatMap(({ id, body: { hole, text } }) => {
    if (hole === undefined || text !== LEFT_UNSURE) return [];
    const stake = { kind: 'hole-stake', hole } as const;
    const pulls = [STAKE_A, STAKE_B].map((from) => present.pull(from, stake));
    const since = pulls.every((pull) => pull !== null && order.get(pull.id)! < order.get(id)!);
    return since ? [hole] : [];
  });
  return new Set(holes);
}
