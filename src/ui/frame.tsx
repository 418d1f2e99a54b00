import type { ComponentChildren } from 'preact';
import { NoticeLine } from './notice.tsx';
import { Problem } from './problem.tsx';
import { Toast, type ToastNote } from './toast.tsx';

export interface FrameTab {
  /** `Plan`, `Stake` … */
  readonly label: string;
  readonly href: string;
  /** `3 of 11`. */
  readonly count?: string;
  readonly current?: boolean;
}

/** What the disk has said. `saved` only after it has said so. */
export type SaveMark = 'saved' | 'saving' | 'failed';

export interface FrameProps {
  /** The job's name, or the app's on the page of jobs. */
  readonly name: string;
  /** Back to the page of jobs; absent on that page. */
  readonly jobsHref?: string;
  readonly save?: SaveMark;
  /** Whole sentence for `failed`: what was not saved and what to do. */
  readonly saveProblem?: string;
  /** The phases; absent on the page of jobs. */
  readonly tabs?: readonly FrameTab[];
  /** Main action and what stands beside it; stays at the bottom, within the thumb's reach. */
  readonly actions?: ComponentChildren;
  readonly toast?: ToastNote | null;
  readonly children: ComponentChildren;
}

const SAVE_WORDS: Record<SaveMark, string> = { saved: '✓ saved', saving: 'saving…', failed: 'NOT saved' };

/** The page around every screen. */
export function Frame(props: FrameProps) {
  const { name, jobsHref, save, saveProblem, tabs = [], actions, toast = null, children } = props;
  return (
    <div class="frame">
      <header class="frame-head">
        {jobsHref !== undefined && (
          <a class="frame-back" href={jobsHref}>
            ‹ Jobs
          </a>
        )}
        <h1 class="frame-name">{name}</h1>
        {save && (
          <span class={`frame-save frame-save-${save}`} role="status">
            {SAVE_WORDS[save]}
          </span>
        )}
      </header>
      <NoticeLine />
      {save === 'failed' && saveProblem && <Problem text={saveProblem} />}
      {tabs.length > 0 && <Tabs tabs={tabs} />}
      <main class="frame-main">{children}</main>
      <div class="frame-foot">
        <Toast note={toast} />
        {actions && <div class="frame-actions">{actions}</div>}
      </div>
    </div>
  );
}

function Tabs({ tabs }: { readonly tabs: readonly FrameTab[] }) {
  return (
    <nav class="tabs" aria-label="Phases">
      {tabs.map(({ label, href, count, current }) => (
        <a key={label} class="tab" href={href} aria-current={current ? 'page' : undefined}>
          <span class="tab-label">{label}</span>
          {count && <span class="tab-count">{count}</span>}
        </a>
      ))}
    </nav>
  );
}
