import { useState } from 'preact/hooks';
import type { Entry } from '../job/entry-schema.ts';
import { describeEntry } from '../job/words.ts';
import type { Finding } from '../judge/types.ts';
import { Button, StrikeForm } from '../ui/index.ts';
import { useJobBook } from './job-book.ts';

/** What is wrong with the job as a whole; a pull that looks misread can be struck right here. */
export function Findings() {
  const { assessment, log, situation, strike } = useJobBook();
  const [striking, setStriking] = useState<Entry | null>(null);
  if (assessment.findings.length === 0) return null;
  const entriesOf = (finding: Finding) =>
    finding.code === 'misreading' ? log.filter(({ id }) => finding.entries.includes(id)) : [];
  return (
    <section class="findings" aria-label="What is wrong">
      {assessment.findings.map((finding) => (
        <details key={finding.code + finding.text} class="finding">
          <summary class="finding-text">{finding.text}</summary>
          {entriesOf(finding).map((entry) => (
            <Button key={entry.id} kind="danger" onPress={() => setStriking(entry)}>
              Strike: {describeEntry(entry, situation.plan)}
            </Button>
          ))}
        </details>
      ))}
      {striking && (
        <StrikeForm
          what={describeEntry(striking, situation.plan)}
          onClose={() => setStriking(null)}
          onStrike={async (reason) => {
            if (await strike(striking.id, reason)) setStriking(null);
          }}
        />
      )}
    </section>
  );
}
