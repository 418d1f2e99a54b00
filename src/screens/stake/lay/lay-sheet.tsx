import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { BoxesContext, Button, Problem, Sheet } from '../../../ui/index.ts';
import { useJobBook } from '../../job-book.ts';
import { TapeButton, useHasTapes } from '../../tape-choice.tsx';
import { TapeSheet } from '../../tape-sheet.tsx';
import { MovedWarning } from '../moved-warning.tsx';
import { isBegun } from '../present.ts';
import type { useLayDraft } from './use-lay-draft.ts';

export interface LaySheetFrameProps {
  readonly title: string;
  readonly held: Pick<ReturnType<typeof useLayDraft>, 'boxes' | 'told'>;
  /** The last try was not all saved. */
  readonly failed: boolean;
  /** What the main button says. */
  readonly use: string;
  readonly onUse: () => void;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

/** The frame of a sheet that lays the plan on what is there: its tape, what is wrong, and the button that uses it. */
export function LaySheet({ title, held, failed, use, onUse, onClose, children }: LaySheetFrameProps) {
  const { situation } = useJobBook();
  const hasTapes = useHasTapes();
  const [choosing, setChoosing] = useState(false);
  // As it was when the sheet was opened: places that this sheet itself logs move nothing.
  const [moves] = useState(isBegun(situation.entries));
  const { boxes, told } = held;
  /** What stands in the boxes is kept, as far as it is any good. */
  const leave = (go: () => void) => () => {
    boxes.commit();
    go();
  };
  if (choosing) return <TapeSheet onClose={() => setChoosing(false)} />;
  return (
    <BoxesContext.Provider value={boxes.scope}>
      <Sheet
        title={title}
        onClose={leave(onClose)}
        actions={
          <>
            {told !== null && <Problem text={told} />}
            {failed && <Problem text="Places of A and B: not all saved; free some space, then tap again." />}
            <Button kind="main" onPress={onUse}>
              {use}
            </Button>
          </>
        }
      >
        {moves && <MovedWarning />}
        {hasTapes && <TapeButton onPress={leave(() => setChoosing(true))} />}
        {children}
      </Sheet>
    </BoxesContext.Provider>
  );
}
