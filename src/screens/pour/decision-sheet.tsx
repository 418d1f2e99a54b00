import { Button, Problem, Sheet } from '../../ui/index.ts';
import { TextInput } from '../../ui/text-input.tsx';
import { unbroken } from '../../ui/unbroken.ts';
import { ok, type Result, refuse } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { useLog } from '../use-log.ts';
import { useTyped } from '../use-typed.ts';

/** A note may have 500 characters: half of them each, less the two between. */
const MOST = 249;

const readWords =
  (field: string, example: string) =>
  (text: string): Result<string> => {
    const clean = text.trim();
    if (clean === '') return refuse(field, `${field} is empty: type it, such as “${example}”.`);
    if (clean.length > MOST)
      return refuse(field, `${field} has ${clean.length} characters: shorten it to ${MOST} or fewer.`);
    return ok(clean);
  };

export interface DecisionSheetProps {
  readonly hole: string;
  /** What was met, and that it needs a decision. */
  readonly text: string;
  readonly onClose: () => void;
}

/** Logs who decided what about something met in the ground: an inspection of this hole, with the note. */
export function DecisionSheet({ hole, text, onClose }: DecisionSheetProps) {
  const { save } = useJobBook();
  const { failed, log } = useLog();
  const who = useTyped(readWords('Who decided', 'the building inspector, Ms Lind'));
  const what = useTyped(readWords('What was decided', 'roots cut out, hole may be filled'));
  const done = async () => {
    const [by, words] = [who.take(), what.take()];
    if (by === null || words === null) return;
    if (await log({ kind: 'check', hole, item: 'inspection', done: true, note: `${by}: ${words}` }))
      onClose();
  };
  return (
    <Sheet
      title={`Decision on hole ${hole}`}
      onClose={onClose}
      actions={
        <Button kind="main" onPress={() => void done()}>
          Log the decision
        </Button>
      }
    >
      {failed && save.at === 'failed' && <Problem text={save.text} />}
      <p>{unbroken(text)}</p>
      <TextInput label="Who decided" draft={who.draft} />
      <TextInput label="What was decided" draft={what.draft} lines={3} />
      <p>It is logged as the inspection of this hole.</p>
    </Sheet>
  );
}
