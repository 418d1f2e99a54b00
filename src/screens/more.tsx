import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { Button } from '../ui/index.ts';

export interface MoreProps {
  /** What is inside, in a few words: `Check pulls: 3 of 16 read`. */
  readonly label: string;
  readonly children: ComponentChildren;
}

/** What is one tap further: a button that opens what stands under it. */
export function More({ label, children }: MoreProps) {
  const [open, setOpen] = useState(false);
  return (
    <div>
      <Button expanded={open} onPress={() => setOpen(!open)}>
        {label}
      </Button>
      {open && <div class="more-open">{children}</div>}
    </div>
  );
}
