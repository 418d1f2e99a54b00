import { useState } from 'preact/hooks';
import type { Entry } from '../job/entry-schema.ts';
import { describeEntry } from '../job/words.ts';
import type { Finding } from '../judge/types.ts';
import { Button, StrikeForm } from '../ui/index.ts';
import { useJobBook } from './job-book.ts';
import { More } from './more.tsx';

/** What is wrong with the job as a whole, behind one line; a pull that looks misread can be struck right here. */
export function Findings() {
  const { assessment, log, situation, strike } = useJobBook();
  const [striking, setStriking] = useState<Entry | null>(null);
  const { findings } = assessment;
  if (findings.length === 0) return null;
  const entriesOf = ({ code, entries }: Finding) =>
    code === 'misreading' ? log.filter(({ id }) => entries.includes(id)) : [];
  return (
    <>
      <More label={findings.length === 1 ? '1 thing looks wrong' : `${findings.length} things look wrong`}>
        <ul class="findings">
          {findings.map((finding) => (
            <li key={finding.code + finding.text}>
              <p>{finding.text}</p>
              {entriesOf(finding).map((entry) => (
                <Button key={entry.id} kind="danger" onPress={() => setStriking(entry)}>
                  Strike: {describeEntry(entry, situation.plan)}
                </Button>
              ))}
            </li>
          ))}
        </ul>
      </More>
      {striking && (
        <StrikeForm
          what={describeEntry(striking, situation.plan)}
          onClose={() => setStriking(null)}
          onStrike={async (reason) => {
            if (await strike(striking.id, reason)) setStriking(null);
          }}
        />
      )}
    </>
  );
}
