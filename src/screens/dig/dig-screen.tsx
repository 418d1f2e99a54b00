import { useMemo, useState } from 'preact/hooks';
import { listWords } from '../../judge/words.ts';
import { workOrder } from '../../stakeout/index.ts';
import { ButtonLink } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { NothingYet } from '../nothing-yet.tsx';
import type { PhaseProps } from '../phase-props.ts';
import { DecisionSheet } from '../pour/decision-sheet.tsx';
import { hrefOf } from '../route.ts';
import { useStartAtTop } from '../use-start-at-top.ts';
import { DugCard, type DugCardProps, GateCard, type HoleCardProps, ReadyCard } from './dig-cards.tsx';
import { DigPage } from './dig-page.tsx';
import { type DigStep, type DigTask, digStep, nextHole } from './dig-step.ts';
import { DugFlow } from './dug-flow.tsx';

/** From proved stakes to holes deep and wide enough: one hole at a time. */
export function DigScreen({ hole }: PhaseProps) {
  const { situation, assessment } = useJobBook();
  const [dugHole, setDugHole] = useState<string | null>(null);
  const [decideHole, setDecideHole] = useState<string | null>(null);
  const order = useMemo(
    () => workOrder((situation.laid?.holes ?? []).map(({ label, site }) => ({ label, at: site }))),
    [situation.laid],
  );
  const step = digStep({ situation, assessment, order, focused: hole });
  // A hole or phase of its own starts this screen afresh, and the last one may have been scrolled far.
  useStartAtTop(step.at === 'hole' ? `${step.hole} ${step.task}` : step.at);
  const planned = situation.holes.find(({ label }) => label === dugHole);
  const assessed = assessment.holes.find((each) => each.hole === dugHole);
  return (
    <>
      <DigCard step={step} order={order} onDug={setDugHole} onDecide={setDecideHole} />
      {planned && assessed && (
        <DugFlow
          hole={planned.label}
          requiredDepth={assessed.dug.requiredDepth}
          holeDiameter={planned.holeDiameter}
          onClose={() => setDugHole(null)}
        />
      )}
      {decideHole !== null && <DecideFlow hole={decideHole} onClose={() => setDecideHole(null)} />}
    </>
  );
}

interface DigCardProps {
  readonly step: DigStep;
  readonly order: readonly string[];
  readonly onDug: (hole: string) => void;
  readonly onDecide: (hole: string) => void;
}

function DigCard({ step, order, onDug, onDecide }: DigCardProps) {
  const { situation, assessment } = useJobBook();
  if (step.at === 'plan')
    return <NothingYet phase="dig" lead="plan" text="First the plan: it has no holes to dig yet." />;
  if (step.at === 'stakes')
    return <NothingYet phase="dig" lead="stake" text="First the stakes: nothing says yet where to dig." />;
  if (step.at === 'done') return <AllDug undecided={step.undecided} />;
  const planned = situation.holes.find(({ label }) => label === step.hole);
  const hole = assessment.holes.find((each) => each.hole === step.hole);
  if (!planned || !hole) return null;
  const next = nextHole(assessment.holes, order, step.hole)?.hole ?? null;
  return (
    <HoleCard
      key={step.hole}
      task={step.task}
      {...{ hole, planned, next }}
      onDug={() => onDug(step.hole)}
      onDecide={() => onDecide(step.hole)}
    />
  );
}

type AnyCardProps = HoleCardProps & Pick<DugCardProps, 'onDecide'> & { readonly task: DigTask };

function HoleCard({ task, onDecide, ...card }: AnyCardProps) {
  if (task === 'gate') return <GateCard {...card} />;
  if (task === 'dig') return <ReadyCard {...card} />;
  return <DugCard task={task} onDecide={onDecide} {...card} />;
}

function DecideFlow({ hole, onClose }: { readonly hole: string; readonly onClose: () => void }) {
  const { assessment } = useJobBook();
  const assessed = assessment.holes.find((each) => each.hole === hole);
  const decision = assessed?.pourGate.items.find(({ item }) => item === 'obstruction');
  return decision ? <DecisionSheet hole={hole} text={decision.text} onClose={onClose} /> : null;
}

function AllDug({ undecided }: { readonly undecided: readonly string[] }) {
  const { jobId } = useJobBook();
  const many = undecided.length > 1;
  return (
    <DigPage
      actions={
        <ButtonLink kind="main" href={hrefOf({ at: 'job', job: jobId, phase: 'set', hole: null })}>
          Go to Set
        </ButtonLink>
      }
    >
      <h2>{undecided.length === 0 ? 'Every hole is deep and wide enough' : 'Every hole is dug'}</h2>
      {undecided.length > 0 && (
        <p>
          {many ? 'Holes' : 'Hole'} {listWords(undecided)} {many ? 'wait' : 'waits'} for a decision by whoever
          is responsible for the structure.
        </p>
      )}
    </DigPage>
  );
}
