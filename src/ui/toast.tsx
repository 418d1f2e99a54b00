import { Button } from './button.tsx';
import { unbroken } from './unbroken.ts';

export interface ToastNote {
  /** What was done: `Stake 4 driven, saved.` */
  readonly text: string;
  /** Takes it back. Without it no Undo is offered. */
  readonly onUndo?: () => void;
}

/** Says what was just done, with its way back. It stays until the next thing is done: nothing vanishes on its own. */
export function Toast({ note }: { readonly note: ToastNote | null }) {
  return (
    <div class="toast-region" role="status" aria-live="polite">
      {note && (
        <div class="toast">
          <span class="toast-text">{unbroken(note.text)}</span>
          {note.onUndo && <Button onPress={note.onUndo}>Undo</Button>}
        </div>
      )}
    </div>
  );
}
