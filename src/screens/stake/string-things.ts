import type { EntryOf, Thing, Touch } from '../../job/entry-schema.ts';
import { ofKind, thingKey } from '../../job/log.ts';
import { touchName, turningOf } from '../../job/words.ts';
import type { Situation } from '../../judge/situation.ts';

/** A string as it is tied. */
export type StringEnds = Pick<EntryOf<'offset'>['body'], 'from' | 'to'>;

/** What a string can be tied to now, besides what is measured off it: all that is known to stand somewhere. */
export function stringThings({ entries, measured }: Situation, of: Thing): Thing[] {
  const dug = new Set(ofKind(entries, 'dug').map(({ body }) => body.hole));
  return (measured?.points ?? [])
    .filter(({ current, fix }) => current && fix !== null)
    .map(({ thing }) => thing)
    .filter((thing) => thingKey(thing) !== thingKey(of))
    .filter((thing) => thing.kind !== 'dug-hole' && (thing.kind !== 'hole-stake' || !dug.has(thing.hole)));
}

/** Strings that need no choosing of ends: the last that was measured off, and the line A–B. */
export function usualStrings(situation: Situation, of: Thing): StringEnds[] {
  const things = new Set(stringThings(situation, of).map(thingKey));
  const last = ofKind(situation.entries, 'offset').at(-1)?.body;
  const line: StringEnds = { from: { kind: 'stake', label: 'A' }, to: { kind: 'stake', label: 'B' } };
  const both = [...(last ? [{ from: last.from, to: last.to }] : []), line];
  const usable = both.filter(({ from, to }) => things.has(thingKey(from)) && things.has(thingKey(to)));
  return [...new Map(usable.map((string) => [stringKey(string), string])).values()];
}

export const stringKey = ({ from, to }: StringEnds): string => `${thingKey(from)} ${thingKey(to)}`;

/** Where a thing can be measured, in words; a stake at its nail alone. */
export function touchChoices({ plan, laid }: Situation, thing: Thing): { touch: Touch; words: string }[] {
  if (!plan || thing.kind !== 'post') return [{ touch: { at: 'nail' }, words: 'the nail' }];
  const round = laid?.holes.find(({ label }) => label === thing.hole)?.section.kind === 'pier';
  const faces = (['front', 'left', 'back', 'right'] as const).map((side): Touch => ({ at: 'face', side }));
  const touches: Touch[] = [{ at: 'centre' }, ...(round ? [{ at: 'near-side' } as const] : faces)];
  const turning = turningOf(plan, thing.hole);
  return touches.map((touch) => ({ touch, words: touchName(touch, turning) }));
}
