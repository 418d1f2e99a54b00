import { useState } from 'preact/hooks';
import type { Entry } from '../job/entry-schema.ts';
import { describeEntry } from '../job/words.ts';
import type { Finding } from '../judge/types.ts';
import { Button, ButtonLink, Caution, StrikeForm } from '../ui/index.ts';
import { unbroken } from '../ui/unbroken.ts';
import { useJobBook } from './job-book.ts';
import { More } from './more.tsx';
import { hrefOf } from './route.ts';

/** Findings that shake every place there is: they stand above whatever is to be done next. */
const SHAKES_ALL: ReadonlySet<Finding['code']> = new Set(['moved-stake', 'baseline', 'global-test']);

/** What makes every place doubtful, with the line A–B one tap away. */
export function Alarms() {
  const { assessment, jobId } = useJobBook();
  const alarms = assessment.findings.filter(({ code }) => SHAKES_ALL.has(code));
  if (alarms.length === 0) return null;
  return (
    <Caution title="every place is in doubt">
      {alarms.map(({ text }) => (
        <p key={text}>{unbroken(text)}</p>
      ))}
      <ButtonLink href={hrefOf({ at: 'job', job: jobId, phase: 'stake', hole: null })}>
        See to the stakes
      </ButtonLink>
    </Caution>
  );
}

/** What else is wrong with the job, behind one line; a pull that looks misread can be struck right here. */
export function Findings() {
  const { assessment, log, situation, strike } = useJobBook();
  const [striking, setStriking] = useState<Entry | null>(null);
  const findings = assessment.findings.filter(({ code }) => !SHAKES_ALL.has(code));
  if (findings.length === 0) return null;
  const entriesOf = ({ code, entries }: Finding) =>
    code === 'misreading' ? log.filter(({ id }) => entries.includes(id)) : [];
  return (
    <>
      <More label={findings.length === 1 ? '1 thing looks wrong' : `${findings.length} things look wrong`}>
        <ul class="findings">
          {findings.map((finding) => (
            <li key={finding.code + finding.text}>
              <p>{unbroken(finding.text)}</p>
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
