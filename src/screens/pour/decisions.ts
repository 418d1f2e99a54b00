import { DECISIONS, type Decision } from '../../job/entry-schema.ts';
import type { GateItem } from '../../judge/types.ts';

/** Something that waits for whoever is responsible, and what is told of it. */
export interface Waiting {
  readonly on: Decision;
  readonly text: string;
}

/** What waits for a decision among the items of gates; each once. */
export function waitingIn(items: readonly GateItem[]): Waiting[] {
  const waiting = items.filter(({ decision }) => decision);
  return DECISIONS.flatMap((on) => {
    const found = waiting.find(({ item }) => item === on);
    return found ? [{ on, text: found.text }] : [];
  });
}
