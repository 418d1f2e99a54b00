import { useState } from 'preact/hooks';
import { Button, StrikeForm } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { useJobBook } from '../job-book.ts';
import { type BookLine, bookLines } from './book-lines.ts';
import { whenWords } from './when.ts';

/** Lines shown on the screen before the rest is asked for; on paper all of them are. */
const LINES_SHOWN = 20;

/** Every entry of the log, newest first. A struck one stays, struck through, with its reason. */
export function FieldBookList() {
  const { log, situation } = useJobBook();
  const [all, setAll] = useState(false);
  const [striking, setStriking] = useState<BookLine | null>(null);
  const lines = bookLines(log, situation.plan);
  return (
    <section aria-labelledby="field-book" class="record-book">
      <h2 id="field-book">Field book</h2>
      <p>Newest first. Nothing is ever rubbed out: what was wrong is struck, with the reason.</p>
      <ol reversed class={all ? 'book-lines' : 'book-lines book-lines-short'}>
        {lines.map((line, i) => (
          <Line key={line.id} line={line} late={i >= LINES_SHOWN} onStrike={setStriking} />
        ))}
      </ol>
      {!all && lines.length > LINES_SHOWN && (
        <Button onPress={() => setAll(true)}>Show all {lines.length} lines</Button>
      )}
      {striking && <Strike line={striking} onClose={() => setStriking(null)} />}
    </section>
  );
}

interface LineProps {
  readonly line: BookLine;
  /** Beyond the lines that are shown at first. */
  readonly late: boolean;
  readonly onStrike: (line: BookLine) => void;
}

function Line({ line, late, onStrike }: LineProps) {
  return (
    <li class={late ? 'book-line book-line-late' : 'book-line'}>
      <div class="book-words">
        <time class="book-when" dateTime={line.at}>
          {whenWords(line.at)}
        </time>
        {line.struck === null ? (
          <p>{unbroken(line.text)}</p>
        ) : (
          <p>
            <s>{line.text}</s> <strong>struck: {line.struck}</strong>
          </p>
        )}
      </div>
      {line.struck === null && (
        <Button
          label={`${line.count > 1 ? 'Strike the last change' : 'Strike'}: ${line.text}`}
          onPress={() => onStrike(line)}
        >
          {line.count > 1 ? 'Strike the last' : 'Strike'}
        </Button>
      )}
    </li>
  );
}

function Strike({ line, onClose }: { readonly line: BookLine; readonly onClose: () => void }) {
  const { strike } = useJobBook();
  return (
    <StrikeForm
      what={line.text}
      onStrike={async (reason) => {
        if (await strike(line.id, reason)) onClose();
      }}
      onClose={onClose}
    />
  );
}
