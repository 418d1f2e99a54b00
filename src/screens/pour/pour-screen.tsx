import { useMemo, useState } from 'preact/hooks';
import type { Body, Decision } from '../../job/entry-schema.ts';
import { thingName } from '../../job/words.ts';
import { shiftToDecide } from '../../judge/after-pour.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { type JobView, viewOf } from '../../judge/view.ts';
import { Button, ButtonLink, Caution, HoleStrip } from '../../ui/index.ts';
import { ActionRow } from '../action-row.tsx';
import { BagsSoFar } from '../build/bags-so-far.tsx';
import { BuyButton } from '../build/buy-button.tsx';
import { ShortPosts } from '../build/short-posts.tsx';
import { useJobBook } from '../job-book.ts';
import { JobFrame } from '../job-frame.tsx';
import { lazily } from '../lazily.tsx';
import { NextReadings } from '../next-readings.tsx';
import { NothingYet } from '../nothing-yet.tsx';
import { Opening } from '../opening.tsx';
import { part } from '../part.ts';
import type { PhaseProps } from '../phase-props.ts';
import { hrefOf } from '../route.ts';
import { useLog } from '../use-log.ts';
import { useStartAtTop } from '../use-start-at-top.ts';
import { DecisionSheet } from './decision-sheet.tsx';
import { type Waiting, waitingIn } from './decisions.ts';
import type { PourMore, PourMoreProps } from './more-props.ts';
import { PourCard } from './pour-card.tsx';
import { pourLook, pourOrder } from './pour-order.ts';
import { PourSheet } from './pour-sheet.tsx';
import { pouredState } from './poured-words.ts';
import { useNow } from './use-now.ts';
import { WetHoles } from './wet-holes.tsx';

/** Loaded once it is wanted. */
const OpenMore = lazily<PourMoreProps>(
  part(async () => (await import('./pour-more.tsx')).PourMoreSheet),
  ({ onClose }) => <Opening title="One moment" onClose={onClose} />,
);

/** The last gate: what must be green before concrete goes in, hole by hole, and the log of each pour. */
export function PourScreen({ hole }: PhaseProps) {
  const { situation, assessment } = useJobBook();
  const view = useMemo(() => viewOf(situation), [situation]);
  // It keeps its place while it is worked on, though what is logged changes which hole is nearest to concrete.
  const [proposed] = useState(() => pourOrder(assessment.holes)[0]?.hole);
  const find = (label: string | null | undefined) => assessment.holes.find((each) => each.hole === label);
  const asked = find(hole);
  const current = asked ?? find(proposed) ?? assessment.holes[0];
  if (!view || !current) return <NothingYet phase="pour" lead="plan" text="First describe the posts" />;
  return <PourWork view={view} hole={current} inAddress={asked !== undefined} />;
}

interface PourWorkProps {
  readonly view: JobView;
  readonly hole: HoleAssessment;
  /** The address names this hole; else it is the one that the screen proposed. */
  readonly inAddress: boolean;
}

function PourWork({ view, hole, inAddress }: PourWorkProps) {
  const { jobId } = useJobBook();
  const { log } = useLog();
  const [open, setOpen] = useState<'pour' | Decision | PourMore | null>(null);
  const onLog = (body: Body) => void log(body);
  const close = () => setOpen(null);
  // What is to be done after a pour stands on the poured hole's own card: it must not give way to the next hole.
  const onPoured = () => {
    close();
    if (!inAddress) location.replace(hrefOf({ at: 'job', job: jobId, phase: 'pour', hole: hole.hole }));
  };
  useStartAtTop(hole.hole);
  const now = useNow();
  const deciding = waitingAt(view, hole).find(({ on }) => on === open);
  return (
    <JobFrame phase="pour" actions={<PourActions {...{ view, hole, now }} onPour={() => setOpen('pour')} />}>
      <ShortPosts view={view} />
      <PourCard {...{ view, hole, now, onLog }} onDecide={setOpen} />
      {/* Under the card: they come and go by the clock, and must not move a list under the thumb. */}
      <WetHoles view={view} but={hole.hole} now={now} />
      <Caution title="Wet concrete">
        It burns skin and eyes, often before it hurts. Wear waterproof gloves, boots and goggles, keep clean
        water at hand, and do not kneel in it.
      </Caution>
      <BagsSoFar view={view} />
      <Button onPress={() => setOpen('times')}>Times on the bag</Button>
      {!hole.poured && <Button onPress={() => setOpen('asks')}>Ask for more before concrete</Button>}
      <Button onPress={() => setOpen('why')}>Why each is asked</Button>
      <BuyButton />
      <NextReadings />
      <HolesToPour current={hole.hole} />
      {open === 'pour' && <PourSheet hole={hole} onDone={onPoured} onClose={close} />}
      {deciding && <DecisionSheet hole={hole.hole} waiting={deciding} onClose={close} />}
      {(open === 'why' || open === 'asks' || open === 'times') && (
        <OpenMore more={open} hole={hole.hole} onClose={close} />
      )}
    </JobFrame>
  );
}

/** Before the pour, what its gate waits for; after it, what moved in the concrete. */
function waitingAt(view: JobView, hole: HoleAssessment): Waiting[] {
  const shift = hole.poured ? shiftToDecide(view, hole.hole) : null;
  return [...waitingIn(hole.pourGate.items), ...(shift ? [{ on: 'moved' as const, text: shift.text }] : [])];
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
  readonly view: JobView;
  readonly hole: HoleAssessment;
  /** What time it is, milliseconds since 1970. */
  readonly now: number;
  readonly onPour: () => void;
}

function PourActions({ view, hole, now, onPour }: PourActionsProps) {
  const { jobId, assessment } = useJobBook();
  const next = pourOrder(assessment.holes).find((each) => each.hole !== hole.hole);
  if (hole.poured) return <PouredActions {...{ view, hole, now }} next={next?.hole ?? null} />;
  const laterHref = next && hrefOf({ at: 'job', job: jobId, phase: 'pour', hole: next.hole });
  return (
    <ActionRow beside={laterHref && <ButtonLink href={laterHref}>Later</ButtonLink>}>
      {hole.dug.at === null || !hole.set.done ? (
        <WayToPour hole={hole} />
      ) : (
        <Button kind={hole.pourGate.open ? 'main' : 'danger'} onPress={onPour}>
          {hole.pourGate.open ? 'Log the pour' : 'Poured anyway'}
        </Button>
      )}
    </ActionRow>
  );
}

/** There is no pour to log before the hole is dug and its post stands in it: the way there. */
function WayToPour({ hole: { hole, dug } }: { readonly hole: HoleAssessment }) {
  const { jobId } = useJobBook();
  const phase = dug.at === null ? 'dig' : 'set';
  return (
    <ButtonLink kind="main" href={hrefOf({ at: 'job', job: jobId, phase, hole })}>
      {phase === 'dig' ? `Go to Dig, hole ${hole}` : `Go to Set, hole ${hole}`}
    </ButtonLink>
  );
}

interface PouredActionsProps extends Omit<PourActionsProps, 'onPour'> {
  readonly next: string | null;
}

/** Concrete can still be pushed while it is wet: tapes and plumb come before the next hole; so does the look of the next day. */
function PouredActions({ view, hole, now, next }: PouredActionsProps) {
  const { jobId } = useJobBook();
  const href = (phase: 'pour' | 'set', label: string) =>
    hrefOf({ at: 'job', job: jobId, phase, hole: label });
  const onward = next
    ? { words: 'Next hole', href: href('pour', next) }
    : { words: 'Record', href: hrefOf({ at: 'job', job: jobId, phase: 'record', hole: null }) };
  const again = `Measure ${thingName({ kind: 'post', hole: hole.hole }, view.plan)} again`;
  const setHref = href('set', hole.hole);
  const state = pouredState(view, hole.hole, now);
  return state && state.wants.length === 0 && !state.dueNextDay ? (
    <ActionRow
      beside={
        <ButtonLink href={setHref} label={again}>
          Measure
        </ButtonLink>
      }
    >
      <ButtonLink kind="main" href={onward.href}>
        {next ? onward.words : 'Go to Record'}
      </ButtonLink>
    </ActionRow>
  ) : (
    <ActionRow beside={<ButtonLink href={onward.href}>{onward.words}</ButtonLink>}>
      <ButtonLink kind="main" href={setHref}>
        {again}
      </ButtonLink>
    </ActionRow>
  );
}
