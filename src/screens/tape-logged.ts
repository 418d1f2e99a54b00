import type { EntryOf } from '../job/entry-schema.ts';
import type { TapeInHand } from '../measure/index.ts';

/** What a reading says of its tape in the log: nothing where the tape needs no correction. */
export function tapeLogged(inHand: TapeInHand | null): Pick<EntryOf<'pull'>['body'], 'tape' | 'pulling'> {
  if (!inHand) return {};
  const { tape, pulling } = inHand;
  return { tape: tape.label, ...(Object.keys(pulling).length === 0 ? {} : { pulling }) };
}
