import { useState } from 'preact/hooks';
import { useBoxes } from '../../../ui/index.ts';

/** What was typed into a sheet, held above it; null before anything was. */
export interface Held<D> {
  now: D | null;
}

/** The draft of a sheet, its boxes, and what is to be said beside its button. */
export function useLayDraft<D>(held: Held<D>, start: () => D) {
  const boxes = useBoxes();
  const [draft, setDraft] = useState(() => held.now ?? start());
  const [told, tell] = useState<string | null>(null);
  /** From the draft as it is by then: two fields may be left in one frame. */
  const edit = (change: (was: D) => D) => {
    tell(null);
    held.now = change(held.now ?? draft);
    setDraft(held.now);
  };
  /** The draft with what stands in the boxes by now; null where one of them holds no good value, which is told. */
  const take = (): D | null => {
    const why = boxes.commit();
    tell(why);
    return why === null ? (held.now ?? draft) : null;
  };
  return { boxes, draft, edit, take, told, tell };
}
