import type { Body } from '../../job/entry-schema.ts';
import { isKind } from '../../job/log.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { useLevelSetup } from '../heights/level-setup.ts';
import { useLog } from '../use-log.ts';
import type { Part, SetChoices } from './step.ts';

const PARTS: readonly Part[] = ['place', 'plumb', 'top'];

/** Texts of the notes by which the log says that a part of a post stays as it is. */
const LEFT: Record<Part, string> = {
  place: 'The place of the post was left as it is.',
  plumb: 'The lean of the post was left as it is.',
  top: 'The top of the post was left as it is.',
};

export interface SetMemory extends SetChoices {
  /** The level was moved: what is read next hangs on another set-up. */
  onNewSetup(): void;
  /** Logs that this part of the post stays as it is, for as long as it stands as it does. */
  onLeave(hole: string, part: Part): void;
}

/** What the user chose that no reading says: where the level stands, and what of a post stays as it is. */
export function useSetMemory(view: JobView): SetMemory {
  const { setup, onNewSetup } = useLevelSetup(view);
  const { log } = useLog();
  return {
    setup,
    left: (hole) => new Set(PARTS.filter((part) => isLeft(view, hole, part))),
    onNewSetup,
    onLeave: (hole, part) => void log(leftNote(hole, part)),
  };
}

const leftNote = (hole: string, part: Part): Body => ({ kind: 'note', hole, text: LEFT[part] });

/** By a note since the post's present stand began. */
const isLeft = (view: JobView, hole: string, part: Part): boolean =>
  view.entries
    .slice(view.book.standAt(postOf(hole)) + 1)
    .some((entry) => isKind(entry, 'note') && entry.body.hole === hole && entry.body.text === LEFT[part]);
