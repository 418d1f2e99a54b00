import type { HoleAssessment } from '../../judge/types.ts';
import { Button, Problem, Sheet } from '../../ui/index.ts';
import { readNumber } from '../../ui/number-field.tsx';
import { TextInput } from '../../ui/text-input.tsx';
import { ok, type Result, refuse } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { useLog } from '../use-log.ts';
import { useTyped } from '../use-typed.ts';

/** As the log allows. */
const BAGS = { min: 0, max: 1000 };
const MOST_NOTE = 500;

const readBags = (text: string): Result<number> =>
  text.trim() === ''
    ? refuse('Bags', 'Bags is empty: type how many bags went in, such as 3 or 2.5.')
    : readNumber(text, 'Bags', BAGS);

const readNote =
  (open: boolean) =>
  (text: string): Result<string> => {
    const clean = text.trim();
    if (!open && clean === '')
      return refuse('Why', 'Why is empty: say why it was poured with something missing.');
    const field = open ? 'Note' : 'Why';
    if (clean.length > MOST_NOTE)
      return refuse(field, `${field} has ${clean.length} characters: shorten it to ${MOST_NOTE} or fewer.`);
    return ok(clean);
  };

export interface PourSheetProps {
  readonly hole: HoleAssessment;
  /** Called once the pour is on disk. */
  readonly onDone: () => void;
  readonly onClose: () => void;
}

/** Logs that concrete went in. A pour past a closed gate is a fact too: it is logged, with a reason. */
export function PourSheet({ hole, onDone, onClose }: PourSheetProps) {
  const { save } = useJobBook();
  const { failed, log } = useLog();
  const { open } = hole.pourGate;
  const bags = useTyped(readBags);
  const note = useTyped(readNote(open));
  const done = async () => {
    const [count, words] = [bags.take(), note.take()];
    if (count === null || words === null) return;
    const entry = { kind: 'pour', hole: hole.hole, bags: count } as const;
    if (await log(words === '' ? entry : { ...entry, note: words })) onDone();
  };
  return (
    <Sheet
      title={`Pour hole ${hole.hole}`}
      onClose={onClose}
      actions={
        <Button kind="main" onPress={() => void done()}>
          Log it
        </Button>
      }
    >
      {failed && save.at === 'failed' && <Problem text={save.text} />}
      <TextInput label="Bags" draft={bags.draft} suffix="bags" />
      <TextInput
        label={open ? 'Note' : 'Why'}
        hint={
          open
            ? 'If there is something to remember: batch, weather.'
            : 'Something is missing at the gate; the record will say so.'
        }
        draft={note.draft}
        lines={3}
      />
    </Sheet>
  );
}
