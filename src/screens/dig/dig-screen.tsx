import { useMemo, useState } from 'preact/hooks';
import type { HoleAssessment } from '../../judge/types.ts';
import { listWords } from '../../judge/words.ts';
import { workOrder } from '../../stakeout/index.ts';
import { ButtonLink } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { lazily } from '../lazily.tsx';
import { NothingYet } from '../nothing-yet.tsx';
import { Opening } from '../opening.tsx';
import { part } from '../part.ts';
import type { PhaseProps } from '../phase-props.ts';
import { DecisionSheet } from '../pour/decision-sheet.tsx';
import { waitingIn } from '../pour/decisions.ts';
import { hrefOf } from '../route.ts';
import { undecidedIn } from '../undecided.ts';
import { useStartAtTop } from '../use-start-at-top.ts';
import { GateCard, type HoleCardProps, ReadyCard } from './dig-cards.tsx';
import { DigPage } from './dig-page.tsx';
import { type DigStep, type DigTask, digStep, nextHole } from './dig-step.ts';
import { roundedUp } from './dig-words.ts';
import { DugCard } from './dug-card.tsx';
import { DugFlow } from './dug-flow.tsx';
import type { OpenDig, OpenDigProps } from './open-dig.ts';

/** Loaded once it is wanted: most of what is entered here is the size of a hole. */
const MoreFlows = lazily<OpenDigProps>(
  part(async () => (await import('./more-flows.tsx')).MoreFlows),
  ({ open, onClose }) => <Opening title={`Hole ${open.hole}`} onClose={onClose} />,
);

/** From proved stakes to holes deep and wide enough: one hole at a time. */
export function DigScreen({ hole }: PhaseProps) {
  const { situation, assessment } = useJobBook();
  const [open, setOpen] = useState<OpenDig | null>(null);
  const order = useMemo(
    () => workOrder((situation.laid?.holes ?? []).map(({ label, site }) => ({ label, at: site }))),
    [situation.laid],
  );
  const step = digStep({ situation, assessment, order, focused: hole });
  // A hole or phase of its own starts this screen afresh, and the last one may have been scrolled far.
  useStartAtTop(step.at === 'hole' ? `${step.hole} ${step.task}` : step.at);
  return (
    <>
      <DigCard step={step} order={order} onOpen={setOpen} />
      {open && <DigFlow open={open} onClose={() => setOpen(null)} />}
    </>
  );
}

/** What is being entered about a hole. */
function DigFlow({ open, onClose }: OpenDigProps) {
  const { situation, assessment } = useJobBook();
  const { hole, take } = open;
  const planned = situation.holes.find(({ label }) => label === hole);
  const assessed = assessment.holes.find((each) => each.hole === hole);
  if (!planned || !assessed || !situation.plan) return null;
  if (take === 'decide') return <DecideFlow hole={assessed} onClose={onClose} />;
  if (take !== 'dug' && take !== 'shaved') return <MoreFlows open={open} onClose={onClose} />;
  const { aimDepth } = assessed.dug;
  return (
    <DugFlow
      hole={hole}
      aim={aimDepth === null ? null : roundedUp(aimDepth, situation.plan.units)}
      holeDiameter={planned.holeDiameter}
      shaved={take === 'shaved'}
      onClose={onClose}
    />
  );
}

interface DigCardProps {
  readonly step: DigStep;
  readonly order: readonly string[];
  readonly onOpen: (open: OpenDig) => void;
}

function DigCard({ step, order, onOpen }: DigCardProps) {
  const { situation, assessment } = useJobBook();
  if (step.at === 'plan')
    return <NothingYet phase="dig" lead="plan" text="First the plan: it has no holes to dig yet." />;
  if (step.at === 'stakes')
    return <NothingYet phase="dig" lead="stake" text="First the stakes: nothing says yet where to dig." />;
  if (step.at === 'done') return <AllDug {...step} />;
  const planned = situation.holes.find(({ label }) => label === step.hole);
  const hole = assessment.holes.find((each) => each.hole === step.hole);
  if (!planned || !hole) return null;
  const next = nextHole(assessment.holes, order, step.hole)?.hole ?? null;
  return (
    <HoleCard
      key={step.hole}
      task={step.task}
      {...{ hole, planned, next }}
      onOpen={(take) => onOpen({ take, hole: step.hole })}
    />
  );
}

function HoleCard({ task, ...card }: HoleCardProps & { readonly task: DigTask }) {
  if (task === 'gate') return <GateCard {...card} />;
  if (task === 'dig') return <ReadyCard {...card} />;
  return <DugCard task={task} {...card} />;
}

function DecideFlow({ hole, onClose }: { readonly hole: HoleAssessment; readonly onClose: () => void }) {
  const [waiting] = waitingIn([...hole.digGate.items, ...undecidedIn(hole)]);
  return waiting ? <DecisionSheet hole={hole.hole} waiting={waiting} onClose={onClose} /> : null;
}

function AllDug({ undecided, noMiddle }: Extract<DigStep, { at: 'done' }>) {
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
      {noMiddle.length > 0 && (
        <p>
          The middle of {noMiddle.length > 1 ? 'holes' : 'hole'} {listWords(noMiddle)} is unmeasured: the gap
          round {noMiddle.length > 1 ? 'their posts' : 'its post'} is then measured at the post, before
          concrete goes in.
        </p>
      )}
      {noMiddle[0] !== undefined && (
        <ButtonLink href={hrefOf({ at: 'job', job: jobId, phase: 'dig', hole: noMiddle[0] })}>
          Measure the middle of hole {noMiddle[0]}
        </ButtonLink>
      )}
    </DigPage>
  );
}
