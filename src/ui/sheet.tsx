import type { ComponentChildren } from 'preact';
import { useId, useLayoutEffect, useRef } from 'preact/hooks';
import { Button } from './button.tsx';
import { useBackButton } from './use-back-button.ts';

export interface SheetProps {
  readonly title: string;
  /** By the close button, Esc or the phone's back button. */
  readonly onClose: () => void;
  /** What the close button says; `Back` unless closing throws something away. */
  readonly closeWord?: string;
  /** Stays at the bottom of the sheet. */
  readonly actions?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** Covers the whole screen until it is done with. The page behind it cannot be reached meanwhile. */
export function Sheet({ title, onClose, closeWord = 'Back', actions, children }: SheetProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const head = useRef<HTMLHeadingElement>(null);
  const id = useId();
  useBackButton(onClose);
  useLayoutEffect(() => {
    const opener = document.activeElement;
    dialog.current?.showModal();
    head.current?.focus();
    return () => {
      if (opener instanceof HTMLElement) opener.focus();
    };
  }, []);
  return (
    <dialog
      ref={dialog}
      class="sheet"
      aria-labelledby={id}
      onCancel={(event) => {
        // Closing is the owner's to decide: it takes the sheet off the page.
        event.preventDefault();
        onClose();
      }}
      onKeyDown={(event) => {
        if (event.key === 'Tab' && dialog.current) keepFocusInside(dialog.current, event);
      }}
    >
      <header class="sheet-head">
        <h2 class="sheet-title" id={id} tabIndex={-1} ref={head}>
          {title}
        </h2>
        <Button onPress={onClose}>{closeWord}</Button>
      </header>
      <div class="sheet-main">{children}</div>
      {actions && <div class="sheet-foot">{actions}</div>}
    </dialog>
  );
}

const FOCUSABLE =
  'a[href], button:not([disabled]), input:not([disabled]), textarea:not([disabled]), summary, [tabindex="0"]';

/** From the last thing Tab leads to the first, and back. */
function keepFocusInside(dialog: HTMLElement, event: KeyboardEvent): void {
  const inside = [...dialog.querySelectorAll<HTMLElement>(FOCUSABLE)];
  const first = inside[0];
  const last = inside.at(-1);
  const active = document.activeElement;
  const atEdge = event.shiftKey ? active === first || !isInside(inside, active) : active === last;
  if (!atEdge) return;
  event.preventDefault();
  (event.shiftKey ? last : first)?.focus();
}

const isInside = (inside: readonly HTMLElement[], active: Element | null): boolean =>
  active instanceof HTMLElement && inside.includes(active);
