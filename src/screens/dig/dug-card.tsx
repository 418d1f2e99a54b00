import { useMemo } from 'preact/hooks';
import type { PullPlan } from '../../judge/pull-ends.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { viewOf } from '../../judge/view.ts';
import { small } from '../../judge/words.ts';
import { Button, ButtonLink, ButtonRow, JudgementTable, Problem, VerdictMark } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { formatLength } from '../../units/index.ts';
import { HoldChoice } from '../hold-choice.tsx';
import { useJobBook } from '../job-book.ts';
import { hrefOf } from '../route.ts';
import { TapeRow } from '../set/tape-row.tsx';
import { undecidedIn } from '../undecided.ts';
import { useHold } from '../use-hold.ts';
import { type HoleCardProps, LaterRow } from './dig-cards.tsx';
import { DigPage, digLook } from './dig-page.tsx';
import type { DigTask } from './dig-step.ts';
import { dugHeadline, dugTrouble, obstructionWords } from './dig-words.ts';
import { middlePull } from './middle-step.ts';
import { Decided, OpenHoleTicks } from './open-hole.tsx';

export interface DugCardProps extends HoleCardProps {
  readonly task: Exclude<DigTask, 'gate' | 'dig'>;
}

/** What came of a dug hole, and what to do about it. */
export function DugCard({ hole, planned, next, onOpen, task }: DugCardProps) {
  const { verdict = 'unmeasured', checked } = digLook(hole);
  const pull = useMiddlePull(hole.hole, wantsMiddle(task, hole));
  return (
    <DigPage hole={hole.hole} actions={<DugActions {...{ task, next, onOpen, pull }} />}>
      <h2>
        <VerdictMark verdict={verdict} {...(checked === undefined ? {} : { checked })}>
          {unbroken(dugHeadline(hole.hole, task, hole.dug))}
        </VerdictMark>
      </h2>
      {task === 'decide' &&
        undecidedIn(hole).map((item) => <Problem key={item.item} text={decisionWords(hole, item)} />)}
      {task === 'middle' && <MiddleAsked pull={pull} />}
      {dugTrouble(task, hole.dug).map((text) => (
        <p key={text}>{unbroken(text)}</p>
      ))}
      {task !== 'decide' && <Decided hole={hole} />}
      <DugTable hole={hole} planned={planned} />
      <OpenHoleTicks hole={hole} />
      {task === 'middle' && <Button onPress={() => onOpen('dug')}>Log as-dug again</Button>}
      {task === 'again' && <Button onPress={() => onOpen('own-depth')}>Another depth for this hole</Button>}
    </DigPage>
  );
}

function decisionWords(
  { hole, dug }: HoleAssessment,
  { item, text }: { item: string; text: string },
): string {
  return item === 'obstruction' && dug.obstruction !== null ? obstructionWords(hole, dug.obstruction) : text;
}

/** The tape to the hole's own middle that is asked for, with what it reads where the hole lies as planned. */
function MiddleAsked({ pull }: { readonly pull: PullPlan | null }) {
  const { situation } = useJobBook();
  const [how, setHow] = useHold();
  if (!situation.plan) return null;
  return (
    <>
      {pull && <TapeRow pull={pull} plan={situation.plan} how={how} />}
      <p>
        So it reads if the hole lies as planned. Lay a lath across the foot, mark half of its width both ways,
        and pull to that mark: it says how far this hole wandered, before the next one is dug.
      </p>
      {pull && <HoldChoice value={how} onChange={setHow} />}
    </>
  );
}

/** Whether a tape to its middle is offered: asked for, to tell whether it is too tight, or to guard what is known. */
const wantsMiddle = (task: DugCardProps['task'], { dug, set }: HoleAssessment): boolean =>
  task === 'middle' ||
  task === 'tell' ||
  (task === 'done' && !set.done && dug.middle !== null && !dug.room.checked);

/** Searched for only where it is wanted, and once for the whole card. */
function useMiddlePull(hole: string, wanted: boolean): PullPlan | null {
  const { situation } = useJobBook();
  return useMemo(() => {
    const view = wanted ? viewOf(situation) : null;
    return view && middlePull(view, hole);
  }, [situation, hole, wanted]);
}

interface DugActionsProps extends Pick<DugCardProps, 'task' | 'next' | 'onOpen'> {
  readonly pull: PullPlan | null;
}

function DugActions({ task, next, onOpen, pull }: DugActionsProps) {
  switch (task) {
    case 'again':
      return (
        <>
          <LaterRow next={next} />
          <Button kind="main" onPress={() => onOpen('dug')}>
            Log as-dug again
          </Button>
        </>
      );
    case 'shave':
      return (
        <>
          <LaterRow next={next} />
          <Button kind="main" onPress={() => onOpen('shaved')}>
            It is shaved: read it again
          </Button>
        </>
      );
    case 'middle':
      return <MiddleActions {...{ next, onOpen, pull }} />;
    case 'tell':
      return <TellActions {...{ next, onOpen, pull }} />;
    default:
      return <DoneActions {...{ task, next, onOpen, pull }} />;
  }
}

/** One tap goes on without it: the gap can be measured at the post, too. */
function MiddleActions({ next, onOpen, pull }: Omit<DugActionsProps, 'task'>) {
  return (
    <>
      <ButtonRow>
        <OnLink next={next} words="Go on without" />
        {pull && <Button onPress={() => onOpen('string')}>Off a string</Button>}
      </ButtonRow>
      <Button kind="main" onPress={() => onOpen(pull ? 'middle' : 'string')}>
        {pull ? 'Enter the tape' : 'Measure it off a string'}
      </Button>
    </>
  );
}

/** Too close to tell: another tape may say that it fits, and shaving makes sure. */
function TellActions({ next, onOpen, pull }: Omit<DugActionsProps, 'task'>) {
  return (
    <>
      <LaterRow next={next} />
      <ButtonRow>
        {pull && <Button onPress={() => onOpen('string')}>Off a string</Button>}
        <Button onPress={() => onOpen('shaved')}>It is shaved: read it again</Button>
      </ButtonRow>
      <Button kind="main" onPress={() => onOpen(pull ? 'middle' : 'string')}>
        {pull ? 'One more tape to its middle' : 'Measure it off a string'}
      </Button>
    </>
  );
}

function DoneActions({ task, next, onOpen, pull }: DugActionsProps) {
  const { jobId } = useJobBook();
  return (
    <>
      <ButtonRow>
        <Button onPress={() => onOpen('dug')}>Log as-dug again</Button>
        {task === 'decide' && <Button onPress={() => onOpen('decide')}>Enter the decision</Button>}
        {pull && <Button onPress={() => onOpen('middle')}>One more tape to its middle</Button>}
      </ButtonRow>
      {task === 'unknown' ? (
        <ButtonLink kind="main" href={hrefOf({ at: 'job', job: jobId, phase: 'plan', hole: null })}>
          Type the frost depth
        </ButtonLink>
      ) : (
        <OnLink next={next} words="Go on" main />
      )}
    </>
  );
}

interface OnLinkProps {
  readonly next: string | null;
  readonly words: string;
  readonly main?: boolean;
}

function OnLink({ next, words, main = false }: OnLinkProps) {
  const { jobId } = useJobBook();
  return (
    <ButtonLink
      kind={main ? 'main' : 'plain'}
      href={hrefOf({ at: 'job', job: jobId, phase: next === null && !main ? 'set' : 'dig', hole: next })}
      {...(main || next === null ? {} : { label: `${words}: hole ${next}` })}
    >
      {main && next !== null ? `${words} to hole ${next}` : words}
    </ButtonLink>
  );
}

function DugTable({ hole, planned }: Pick<HoleCardProps, 'hole' | 'planned'>) {
  const { situation } = useJobBook();
  const { plan } = situation;
  if (!plan) return null;
  const { units } = plan;
  const { depth, width, room, middle, requiredDepth: required } = hole.dug;
  const least = (m: number | null) => (m === null ? 'not known yet' : `at least ${formatLength(m, units)}`);
  return (
    <JudgementTable
      label={`Hole ${hole.hole} as dug`}
      rows={[
        { name: 'depth', tolerance: least(required), ...pick(depth) },
        { name: 'width', tolerance: `${formatLength(planned.holeDiameter, units)} planned`, ...pick(width) },
        {
          name: 'room',
          tolerance: middle ? `at least ${small(middle.least, units)}` : 'by its own middle',
          ...pick(room),
        },
      ]}
    />
  );
}

const pick = ({ verdict, checked, text, why }: HoleAssessment['dug']['depth']) => ({
  verdict,
  checked,
  text,
  why,
});
