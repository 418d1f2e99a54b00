import { Button, ButtonRow, Caution, PlanDrawing, Problem } from '../../ui/index.ts';
import { BuyButton } from '../build/buy-button.tsx';
import { FrameButton } from '../build/frame-button.tsx';
import { drawnSite } from '../drawn-site.ts';
import { useJobBook } from '../job-book.ts';
import { JobFrame } from '../job-frame.tsx';
import { setLook } from '../looks.ts';
import type { PhaseProps } from '../phase-props.ts';
import { backupState, outcomeWords } from './back-up.ts';
import { computedWords } from './computed.ts';
import { DugTable } from './dug-table.tsx';
import { FieldBookList } from './field-book.tsx';
import { ReadingsButton } from './readings-button.tsx';
import { countWords, dugRows, setRows } from './record-rows.ts';
import { SetTable } from './set-table.tsx';
import { type BackUp, useBackUp } from './use-back-up.ts';
import { dayWords } from './when.ts';
import './record.css';
import { unbroken } from '../../ui/unbroken.ts';

/** The whole job on one page, for an inspector or for years later; and the way to a copy off the phone. */
export function RecordScreen(_: PhaseProps) {
  const backUp = useBackUp();
  const actions = (
    <div>
      <BackUpOutcome backUp={backUp} />
      <ButtonRow>
        <Button onPress={() => window.print()}>Print</Button>
        <Button kind="main" onPress={backUp.start} disabled={backUp.job === null}>
          Back up
        </Button>
      </ButtonRow>
    </div>
  );
  return (
    <JobFrame phase="record" actions={actions}>
      <BackUpState backUp={backUp} />
      <RecordHead />
      <Findings />
      <ButtonRow>
        <FrameButton />
        <BuyButton />
      </ButtonRow>
      <ReadingsButton />
      <RecordTables />
      <Computed />
      <FieldBookList />
    </JobFrame>
  );
}

/** Right above the button that was tapped, where the eye is, however far the page is scrolled. */
function BackUpOutcome({ backUp: { outcome, problem } }: { readonly backUp: BackUp }) {
  return (
    <div class="record-outcome" role="status">
      {problem && <Problem text={problem} />}
      {outcome && <p>{outcomeWords(outcome)}</p>}
    </div>
  );
}

function BackUpState({ backUp: { job } }: { readonly backUp: BackUp }) {
  const { log } = useJobBook();
  return (
    <div class="no-print" role="status">
      {job && <p>{backupState(job, log.length)}</p>}
    </div>
  );
}

function RecordHead() {
  const { log, situation, assessment } = useJobBook();
  const { plan } = situation;
  const [first, last] = [log[0], log.at(-1)];
  return (
    <section aria-label="The job" class="record-head avoid-break">
      <div>
        {first && last && (
          <p>
            Begun {dayWords(first.at)}, last entry {dayWords(last.at)}.
          </p>
        )}
        <p>{countWords(assessment)}</p>
      </div>
      {plan && (
        <PlanDrawing
          title={plan.name}
          units={plan.units}
          {...drawnSite(situation, assessment.holes, { lookOf: setLook })}
        />
      )}
    </section>
  );
}

function RecordTables() {
  const { situation, assessment } = useJobBook();
  if (assessment.holes.length === 0) return <p>No plan stands, so there is nothing to judge by.</p>;
  return (
    <>
      <SetTable rows={setRows(assessment, situation)} tops={assessment.tops.text} />
      <DugTable rows={dugRows(assessment, situation)} />
    </>
  );
}

function Findings() {
  const { findings, pulls } = useJobBook().assessment;
  const nothing = pulls.length === 0 ? 'No tape pull is logged yet.' : 'The readings agree with one another.';
  return (
    <section aria-labelledby="findings">
      <h2 id="findings">What was found</h2>
      {findings.length === 0 ? (
        <p>{nothing}</p>
      ) : (
        <ul class="record-list">
          {findings.map(({ text }) => (
            <li key={text}>{unbroken(text)}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Computed() {
  const { log, situation, assessment } = useJobBook();
  return (
    <section aria-labelledby="computed">
      <h2 id="computed">How it was computed</h2>
      <ul class="record-list">
        {computedWords(log, situation, assessment).map((text) => (
          <li key={text}>{unbroken(text)}</li>
        ))}
      </ul>
      <Caution>
        Local code and those licensed to decide have the last word. This page says where posts stand; it does
        not say that the footings or the structure will carry what is put on them.
      </Caution>
    </section>
  );
}
