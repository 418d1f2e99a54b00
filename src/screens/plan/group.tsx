import type { ComponentChildren } from 'preact';

export interface GroupProps {
  readonly title: string;
  /** What is set, in one line. */
  readonly line: string;
  readonly open?: boolean;
  readonly children: ComponentChildren;
}

/** A few fields behind one line that says what they are set to. Opening one closes the others, so the page stays short. */
export function Group({ title, line, open = false, children }: GroupProps) {
  return (
    <details
      class="plan-group"
      name="plan-group"
      open={open}
      onToggle={({ currentTarget }) => {
        // The group that closes above may have been long: the head must not leave the view.
        if (currentTarget.open) currentTarget.scrollIntoView({ block: 'start' });
      }}
    >
      <summary class="plan-group-head">
        <span class="plan-group-words">
          <strong class="plan-group-title">{title}</strong>
          <span class="plan-group-line">{line}</span>
        </span>
      </summary>
      <div class="plan-group-fields">{children}</div>
    </details>
  );
}
