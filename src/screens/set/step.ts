import type { EntryOf, HeightPoint, Side } from '../../job/entry-schema.ts';
import { isKind, thingKey } from '../../job/log.ts';
import type { PullPlan } from '../../judge/pull-ends.ts';
import type { HoleAssessment, Judgement, Nudge } from '../../judge/types.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { isOnlyJustIn } from '../../judge/worth-a-push.ts';

/** What can be out of a post that still stands loose. */
export type Part = 'place' | 'plumb' | 'top';

/** The next thing to do about one post or pier. */
export type SetStep =
  /** The plan does not lie on the site yet. */
  | { readonly do: 'lay' }
  /** A–B is not pulled yet, and no place is known before it is. */
  | { readonly do: 'baseline'; readonly pull: PullPlan }
  | { readonly do: 'stand'; readonly hold: readonly PullPlan[] }
  /** `why` it is wanted, where that is not plain. */
  | { readonly do: 'pull'; readonly pull: PullPlan; readonly why: string | null }
  | DoubtStep
  /** One of several pulls is misread, and this one would tell which. */
  | { readonly do: 'tell'; readonly pull: PullPlan }
  /** Out, and still loose. `rod` is what it reads on the top when that is right, metres. */
  | {
      readonly do: 'move';
      readonly part: Part;
      readonly nudge: Nudge | null;
      readonly rod: number | null;
      readonly why: string;
    }
  /** `again`: the face opposite is read, and this one guards it. */
  | { readonly do: 'plumb'; readonly side: Side; readonly again: boolean }
  /** `again`: it was read before, and this reading guards that one. */
  | {
      readonly do: 'rod';
      readonly on: HeightPoint;
      readonly expected: number | null;
      readonly again: boolean;
    }
  /** Every reading that can be asked for is in. */
  | { readonly do: 'done' };

/** A pull to it looks misread. `again`: whether it was pulled a second time, and came out otherwise or alike. */
export interface DoubtStep {
  readonly do: 'doubt';
  /** The same line, and what everything else makes of it. */
  readonly pull: PullPlan;
  readonly entry: EntryOf<'pull'>;
  readonly again: 'not-yet' | 'apart' | 'alike';
}

/** What the log does not know: where the level stands now, and what the user chose to leave as it is. */
export interface SetChoices {
  readonly setup: string;
  readonly left: (hole: string) => ReadonlySet<Part>;
}

/** Index of the last pour among the entries, or −1: what was read before it says nothing of what the pour did. */
export const pouredAt = (view: JobView, hole: string): number => view.book.pours(hole).at(-1)?.index ?? -1;

/** Whoever pushed a post so often to make sure of it has done enough: then in is in. */
const MOST_TO_MAKE_SURE = 8;

/** Whether a post that is in only just is to be pushed, to be sure of it: loose, and not pushed for that again and again. */
export function isToMakeSure(view: JobView, hole: HoleAssessment, judgement: Judgement): boolean {
  if (hole.poured || !isOnlyJustIn(judgement)) return false;
  const post = thingKey(postOf(hole.hole));
  const pushed = view.entries
    .slice(view.book.setAt(hole.hole) + 1)
    .filter((entry) => isKind(entry, 'stand') && thingKey(entry.body.thing) === post);
  return pushed.length < MOST_TO_MAKE_SURE;
}

export const needsMore = ({ verdict, checked }: Judgement): boolean =>
  verdict === 'unmeasured' || verdict === 'unsure' || !checked;
