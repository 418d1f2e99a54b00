import type { ComponentChildren } from 'preact';
import { Frame, type FrameTab } from '../ui/frame.tsx';
import type { ToastNote } from '../ui/toast.tsx';
import { type JobBook, useJobBook } from './job-book.ts';
import { progressOf } from './progress.ts';
import { hrefOf, PHASES, type Phase } from './route.ts';
import { doneWords, UNDO_REASON } from './undo-words.ts';

export interface JobFrameProps {
  readonly phase: Phase;
  /** Main action and what stands beside it. */
  readonly actions?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** The frame round every phase of a job: its name, what the disk says, the phases, and Undo for the last entry. */
export function JobFrame({ phase, actions, children }: JobFrameProps) {
  const book = useJobBook();
  const { save } = book;
  const problem = save.at === 'failed' ? { saveProblem: save.text } : {};
  return (
    <Frame
      name={book.situation.plan?.name ?? 'Job'}
      jobsHref={hrefOf({ at: 'home' })}
      save={save.at}
      {...problem}
      tabs={tabsOf(book, phase)}
      actions={actions}
      toast={toastOf(book)}
    >
      {children}
    </Frame>
  );
}

function tabsOf(book: JobBook, current: Phase): FrameTab[] {
  const progress = progressOf(book.assessment);
  return PHASES.map((phase) => {
    const count = progress[phase];
    return {
      label: phase.slice(0, 1).toUpperCase() + phase.slice(1),
      href: hrefOf({ at: 'job', job: book.jobId, phase, hole: null }),
      current: phase === current,
      ...(count ? { count } : {}),
    };
  });
}

/** Undo strikes the entry just made, as any strike does; a strike itself is undone by striking it. */
function toastOf({ save, situation, log, strike }: JobBook): ToastNote | null {
  if (save.at !== 'saved' || !save.last) return null;
  const entry = save.last;
  return {
    text: doneWords(entry, log, situation.plan),
    onUndo: () => void strike(entry.id, UNDO_REASON),
  };
}
