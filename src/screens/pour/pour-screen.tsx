import { useMemo, useState } from 'preact/hooks';
import type { Body } from '../../job/entry-schema.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { type JobView, viewOf } from '../../judge/view.ts';
import { Button, ButtonLink, Caution, HoleStrip } from '../../ui/index.ts';
import { ActionRow } from '../action-row.tsx';
import { useJobBook } from '../job-book.ts';
import { JobFrame } from '../job-frame.tsx';
import { NothingYet } from '../nothing-yet.tsx';
import type { PhaseProps } from '../phase-props.ts';
import { hrefOf } from '../route.ts';
import { useLog } from '../use-log.ts';
import { useStartAtTop } from '../use-start-at-top.ts';
import { DecisionSheet } from './decision-sheet.tsx';
import { PourCard } from './pour-card.tsx';
import { pourLook, pourOrder } from './pour-order.ts';
import { PourSheet } from './pour-sheet.tsx';

/** The last gate: what must be green before concrete goes in, hole by hole, and the log of each pour. */
export function PourScreen({ hole }: PhaseProps) {
  const { situation, assessment } = useJobBook();
  const view = useMemo(() => viewOf(situation), [situation]);
  const order = pourOrder(assessment.holes);
  const current = assessment.holes.find((each) => each.hole === hole) ?? order[0] ?? assessment.holes[0];
  if (!view || !current) return <NothingYet phase="pour" lead="plan" text="First describe the posts" />;
  return <PourWork view={view} hole={current} />;
}

function PourWork({ view, hole }: { readonly view: JobView; readonly hole: HoleAssessment }) {
  const { log } = useLog();
  const [open, setOpen] = useState<'pour' | 'decision' | null>(null);
  const onLog = (body: Body) => void log(body);
  const close = () => setOpen(null);
  useStartAtTop(hole.hole);
  const decision = hole.pourGate.items.find(({ item }) => item === 'obstruction');
  return (
    <JobFrame phase="pour" actions={<PourActions hole={hole} onPour={() => setOpen('pour')} />}>
      <PourCard view={view} hole={hole} onLog={onLog} onDecide={() => setOpen('decision')} />
      <Caution title="Wet concrete">
        It burns skin and eyes, often before it hurts. Wear waterproof gloves, boots and goggles, keep clean
        water at hand, and do not kneel in it.
      </Caution>
      <HolesToPour current={hole.hole} />
      {open === 'pour' && <PourSheet hole={hole} onClose={close} />}
      {open === 'decision' && decision && (
        <DecisionSheet hole={hole.hole} text={decision.text} onClose={close} />
      )}
    </JobFrame>
  );
}

function HolesToPour({ current }: { readonly current: string }) {
  const { jobId, assessment } = useJobBook();
  const holes = assessment.holes.map((each) => ({
    label: each.hole,
    href: hrefOf({ at: 'job', job: jobId, phase: 'pour', hole: each.hole }),
    current: each.hole === current,
    ...pourLook(each),
  }));
  return <HoleStrip label="Holes to pour" holes={holes} />;
}

interface PourActionsProps {
  readonly hole: HoleAssessment;
  readonly onPour: () => void;
}

function PourActions({ hole, onPour }: PourActionsProps) {
  const { jobId, assessment } = useJobBook();
  const next = pourOrder(assessment.holes).find((each) => each.hole !== hole.hole);
  const href = (phase: 'pour' | 'set', label: string) =>
    hrefOf({ at: 'job', job: jobId, phase, hole: label });
  if (hole.poured)
    return (
      <ActionRow beside={<ButtonLink href={href('set', hole.hole)}>Measure again</ButtonLink>}>
        <ButtonLink
          kind="main"
          href={
            next ? href('pour', next.hole) : hrefOf({ at: 'job', job: jobId, phase: 'record', hole: null })
          }
        >
          {next ? 'Next hole' : 'Go to Record'}
        </ButtonLink>
      </ActionRow>
    );
  return (
    <ActionRow beside={next && <ButtonLink href={href('pour', next.hole)}>Later</ButtonLink>}>
      <Button kind={hole.pourGate.open ? 'main' : 'danger'} onPress={onPour}>
        {hole.pourGate.open ? 'Log the pour' : 'Poured anyway'}
      </Button>
    </ActionRow>
  );
}
