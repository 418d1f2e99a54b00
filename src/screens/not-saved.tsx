import { Button, Problem, Sheet } from '../ui/index.ts';
import { useJobBook } from './job-book.ts';

export interface NotSavedProps {
  /** What was read, in words, so that it can be seen to be still here. */
  readonly what: string;
  readonly onAgain: () => void;
  /** Back to where it was entered, with what was entered still there. */
  readonly onBack: () => void;
}

/** Stands over a reading that did not reach the disk: why, and the way to try again. */
export function NotSaved({ what, onAgain, onBack }: NotSavedProps) {
  const { save } = useJobBook();
  return (
    <Sheet
      title="Not saved"
      onClose={onBack}
      actions={
        <Button kind="main" onPress={onAgain}>
          Save again
        </Button>
      }
    >
      {save.at === 'failed' && <Problem text={save.text} />}
      <p class="strike-what">{what}</p>
    </Sheet>
  );
}
