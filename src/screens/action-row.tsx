import type { ComponentChildren } from 'preact';
import './action-row.css';

export interface ActionRowProps {
  /** A way past the main action, in one or two short words; without one the main action has the row to itself. */
  readonly beside?: ComponentChildren;
  /** The main action: it is given two thirds of the row, so that its words keep to one line. */
  readonly children: ComponentChildren;
}

/** The main action and what stands beside it. */
export function ActionRow({ beside, children }: ActionRowProps) {
  return (
    <div class={beside ? 'action-row action-row-two' : 'action-row'}>
      {beside}
      {children}
    </div>
  );
}
