import { useState } from 'preact/hooks';
import type { HoleAssessment } from '../../judge/types.ts';
import { Button, NumberField, Problem, Sheet, TextField } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { useLog } from '../use-log.ts';

/** As the log allows. */
const MOST_BAGS = 1000;
const MOST_NOTE = 500;

/** Logs that concrete went in. A pour past a closed gate is a fact too: it is logged, with a reason. */
export function PourSheet({
  hole,
  onClose,
}: {
  readonly hole: HoleAssessment;
  readonly onClose: () => void;
}) {
  const { save } = useJobBook();
  const { log } = useLog();
  const [bags, setBags] = useState<number | null>(null);
  const [note, setNote] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const { open } = hole.pourGate;
  const done = async () => {
    if (bags === null) return setProblem('Bags is empty: type how many bags went in, such as 3 or 2.5.');
    if (!open && note === '')
      return setProblem('Why is empty: say why it was poured with the gate not green.');
    const saved = await log({ kind: 'pour', hole: hole.hole, bags, ...(note === '' ? {} : { note }) });
    if (saved) onClose();
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
      {save.at === 'failed' && <Problem text={save.text} />}
      {problem && <Problem text={problem} />}
      <NumberField label="Bags" value={bags} onChange={setBags} min={0} max={MOST_BAGS} suffix="bags" />
      <TextField
        label={open ? 'Note' : 'Why'}
        hint={
          open
            ? 'If there is something to remember: batch, weather.'
            : 'The gate is not green; the record will say so.'
        }
        value={note}
        onChange={setNote}
        maxLength={MOST_NOTE}
      />
    </Sheet>
  );
}
