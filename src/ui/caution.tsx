import type { ComponentChildren } from 'preact';

export interface CautionProps {
  /** What it is about, such as `Open holes`. */
  readonly title?: string;
  readonly children: ComponentChildren;
}

/** A caution at the place of the risk: told by its word and its double border, not by colour. */
export function Caution({ title, children }: CautionProps) {
  return (
    <section class="caution" aria-label={title ? `Caution: ${title}` : 'Caution'}>
      <p class="caution-head">{title ? `Caution: ${title}` : 'Caution'}</p>
      <div>{children}</div>
    </section>
  );
}
