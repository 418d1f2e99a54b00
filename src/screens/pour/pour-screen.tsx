import { useMemo, useState } from 'preact/hooks';
import { thingName } from '../../job/words.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { type JobView, viewOf } from '../../judge/view.ts';
import { Button, ButtonLink, ButtonRow, Caution, GateList, HoleStrip } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { JobFrame } from '../job-frame.tsx';
import { NothingYet } from '../nothing-yet.tsx';
import type { PhaseProps } from '../phase-props.ts';
import { hrefOf } from '../route.ts';
import { BagsNeeded } from './bags-needed.tsx';
import { pourLook, pourOrder } from './pour-order.ts';
import { PourSheet } from './pour-sheet.tsx';
import { Ticks } from './ticks.tsx';

/** The last gate: what must be green before concrete goes in, hole by hole, and the log of each pour. */
export function PourScreen({ hole }: PhaseProps) {
  const { situation, assessment } = useJobBook();
  const view = useMemo(() => viewOf(situation), [situation]);
  if (!view || view.holes.length === 0)
    return <NothingYet phase="pour" lead="plan" text="First describe the posts" />;
  const order = pourOrder(assessment.holes);
  const current = assessment.holes.find((each) => each.hole === hole) ?? order[0] ?? assessment.holes[0];
  return current ? <PourWork view={view} hole={current} /> : null;
}

function PourWork({ view, hole }: { readonly view: JobView; readonly hole: HoleAssessment }) {
  const { jobId, assessment } = useJobBook();
  const [pouring, setPouring] = useState(false);
  const href = (label: string) => hrefOf({ at: 'job', job: jobId, phase: 'pour', hole: label });
  const strip = assessment.holes.map((each) => ({
    label: each.hole,
    href: href(each.hole),
    current: each.hole === hole.hole,
    ...pourLook(each),
  }));
  return (
    <JobFrame phase="pour" actions={<PourActions hole={hole} onPour={() => setPouring(true)} href={href} />}>
      <PourCard view={view} hole={hole} />
      <HoleStrip label="Holes to pour" holes={strip} />
      <Caution title="Wet concrete">
        It burns skin and eyes, often before it hurts. Wear waterproof gloves, boots and goggles, keep clean
        water at hand, and do not kneel in it.
      </Caution>
      {pouring && <PourSheet hole={hole} onClose={() => setPouring(false)} />}
    </JobFrame>
  );
}

function PourCard({ view, hole }: { readonly view: JobView; readonly hole: HoleAssessment }) {
  const post = thingName({ kind: 'post', hole: hole.hole }, view.plan);
  const missing = hole.pourGate.items.filter(({ green }) => !green).length;
  if (hole.poured) {
    return (
      <>
        <h2>Hole {hole.hole} is poured</h2>
        <p>
          {hole.poured.bags} bags,{' '}
          {new Date(hole.poured.at).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' })}.
          Measure {post} again while it can still be pushed, and again the next day: it is logged like any
          other reading.
        </p>
        <GateList label={`As it was for hole ${hole.hole}`} items={hole.pourGate.items} />
      </>
    );
  }
  return (
    <>
      <h2>
        {hole.pourGate.open
          ? `Hole ${hole.hole} is ready for concrete`
          : `Hole ${hole.hole}: ${missing} missing before concrete`}
      </h2>
      <BagsNeeded view={view} hole={hole} />
      <Ticks hole={hole} />
      <GateList label={`Before concrete goes into hole ${hole.hole}`} items={hole.pourGate.items} />
    </>
  );
}

interface PourActionsProps {
  readonly hole: HoleAssessment;
  readonly onPour: () => void;
  readonly href: (hole: string) => string;
}

function PourActions({ hole, onPour, href }: PourActionsProps) {
  const { jobId, assessment } = useJobBook();
  const next = pourOrder(assessment.holes).find((each) => each.hole !== hole.hole);
  if (hole.poured) {
    const record = hrefOf({ at: 'job', job: jobId, phase: 'record', hole: null });
    return (
      <ButtonRow>
        <ButtonLink href={hrefOf({ at: 'job', job: jobId, phase: 'set', hole: hole.hole })}>
          Measure again
        </ButtonLink>
        <ButtonLink kind="main" href={next ? href(next.hole) : record}>
          {next ? 'Next hole' : 'Go to Record'}
        </ButtonLink>
      </ButtonRow>
    );
  }
  return (
    <ButtonRow>
      {next && <ButtonLink href={href(next.hole)}>Later</ButtonLink>}
      <Button kind={hole.pourGate.open ? 'main' : 'danger'} onPress={onPour}>
        {hole.pourGate.open ? 'Log the pour' : 'Poured anyway'}
      </Button>
    </ButtonRow>
  );
}
