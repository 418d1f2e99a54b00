import type { ComponentChildren } from 'preact';
import { useSingleTap } from './repeat-tap.ts';
import { unbrokenIn } from './unbroken.ts';

export type ButtonKind = 'main' | 'plain' | 'danger';

export interface ButtonProps {
  /** `main`: the one thing to do next (one per screen, 72 px and more). `danger`: strikes or throws away. */
  readonly kind?: ButtonKind;
  /** A repeat within `REPEAT_TAP_MS` is ignored. */
  readonly onPress: () => void;
  readonly disabled?: boolean;
  /** When the words on the button do not say enough by themselves. */
  readonly label?: string;
  /** Says of a button that opens or closes something whether it is open. */
  readonly expanded?: boolean;
  /** Says of a button that stays down whether it is down. */
  readonly pressed?: boolean;
  readonly children: ComponentChildren;
}

/** A button that takes one tap at a time. */
export function Button(props: ButtonProps) {
  const press = useSingleTap(props.onPress);
  return (
    <button
      type="button"
      class={`button button-${props.kind ?? 'plain'}`}
      disabled={props.disabled ?? false}
      aria-label={props.label}
      aria-expanded={props.expanded}
      aria-pressed={props.pressed}
      onClick={press}
    >
      {unbrokenIn(props.children)}
    </button>
  );
}

export interface ButtonLinkProps {
  readonly kind?: ButtonKind;
  readonly href: string;
  readonly label?: string;
  readonly children: ComponentChildren;
}

/** A link that looks like a button: for going somewhere, where a `Button` does something. */
export function ButtonLink({ kind = 'plain', href, label, children }: ButtonLinkProps) {
  return (
    <a class={`button button-${kind}`} href={href} aria-label={label}>
      {unbrokenIn(children)}
    </a>
  );
}

/** Buttons side by side where there is room, each of the same width. */
export function ButtonRow({ children }: { readonly children: ComponentChildren }) {
  return <div class="button-row">{children}</div>;
}
