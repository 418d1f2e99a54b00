import type { EntryOf } from '../../job/entry-schema.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { Button, Caution, Problem, Sheet } from '../../ui/index.ts';
import { readNumber } from '../../ui/number-field.tsx';
import { TextInput } from '../../ui/text-input.tsx';
import { ok, type Result, refuse } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { useLog } from '../use-log.ts';
import { useTyped } from '../use-typed.ts';
import { earlyWords, readPouredAt } from './poured-time.ts';

/** As the log allows. */
const BAGS = { min: 0, max: 1000 };
const MOST_NOTE = 500;
const MOST_BATCH = 40;

/** Whole bags: an opened one is counted where it is opened, so that the running total is what is gone from the pile. */
export function readBags(text: string): Result<number> {
  if (text.trim() === '') return refuse('Bags', 'Bags is empty: type how many bags went in, such as 3.');
  const read = readNumber(text, 'Bags', BAGS);
  if (!read.ok || Number.isInteger(read.value)) return read;
  const [less, more] = [Math.floor(read.value), Math.ceil(read.value)];
  return refuse(
    'Bags',
    `Bags: “${text.trim()}” is not a whole number; count a bag where it was opened: type ${more} if it was opened here, else ${less}.`,
  );
}

function readBatch(text: string): Result<string> {
  const clean = text.trim();
  if (clean.length > MOST_BATCH)
    return refuse('Batch', `Batch has ${clean.length} characters: shorten it to ${MOST_BATCH} or fewer.`);
  return ok(clean);
}

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
  const { save, log: book } = useJobBook();
  const { failed, log } = useLog();
  const { open } = hole.pourGate;
  const began = Date.parse(book[0]?.at ?? '');
  const bags = useTyped(readBags);
  const time = useTyped((text) => readPouredAt(text, Date.now()));
  const typed = readPouredAt(time.draft.text, Date.now());
  const early = typed.ok ? earlyWords(typed.value, began) : null;
  const batch = useTyped(readBatch);
  const note = useTyped(readNote(open));
  const done = async () => {
    const count = bags.take();
    const [when, printed, words] = [time.read(), batch.take(), note.take()];
    if (count === null || !when.ok || printed === null || words === null) return;
    const body: EntryOf<'pour'>['body'] = {
      kind: 'pour',
      hole: hole.hole,
      bags: count,
      ...(when.value === null ? {} : { time: when.value }),
      ...(printed === '' ? {} : { batch: printed }),
      ...(words === '' ? {} : { note: words }),
    };
    if (await log(body)) onDone();
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
      <TextInput label="Poured at" hint="Empty: now. Else like 14:20." draft={time.draft} />
      {early && <Caution>{early}</Caution>}
      <TextInput label="Batch" hint="As printed on the bag or the ticket, if it is." draft={batch.draft} />
      <TextInput
        label={open ? 'Note' : 'Why'}
        hint={
          open
            ? 'If there is something to remember: who poured, the weather.'
            : 'Something is missing at the gate; the record will say so.'
        }
        draft={note.draft}
        lines={3}
      />
    </Sheet>
  );
}
