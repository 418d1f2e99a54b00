import { Button, Problem, Sheet } from '../../ui/index.ts';
import { TextInput } from '../../ui/text-input.tsx';
import { unbroken } from '../../ui/unbroken.ts';
import { ok, type Result, refuse } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { useLog } from '../use-log.ts';
import { useTyped } from '../use-typed.ts';
import type { Waiting } from './decisions.ts';

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
  /** On what, and that it needs a decision. */
  readonly waiting: Waiting;
  readonly onClose: () => void;
}

/** Logs who decided what about one thing at a hole: an inspection that says on what it decides, with the note. */
export function DecisionSheet({ hole, waiting: { on, text }, onClose }: DecisionSheetProps) {
  const { save } = useJobBook();
  const { failed, log } = useLog();
  const who = useTyped(readWords('Who decided', 'the building inspector, Ms Lind'));
  const what = useTyped(readWords('What was decided', 'roots cut out, hole may be filled'));
  const done = async () => {
    const [by, words] = [who.take(), what.take()];
    if (by === null || words === null) return;
    const note = `${by}: ${words}`;
    if (await log({ kind: 'check', hole, item: 'inspection', done: true, decides: on, note })) onClose();
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
      <p>
        {on === 'obstruction'
          ? 'It is logged as the inspection of this hole.'
          : 'It is logged as a decision on this, and is no inspection of the hole.'}
      </p>
    </Sheet>
  );
}
