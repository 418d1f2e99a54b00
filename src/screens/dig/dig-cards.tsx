import { requiredDepth } from '../../build/index.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import type { Hole } from '../../plan/index.ts';
import {
  Button,
  ButtonLink,
  ButtonRow,
  GateList,
  JudgementTable,
  Problem,
  PullRow,
  VerdictMark,
} from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { formatLength, formatSmall } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { hrefOf, type Phase } from '../route.ts';
import { useLog } from '../use-log.ts';
import { DigPage, digLook } from './dig-page.tsx';
import { type DigTask, gateWay } from './dig-step.ts';
import { dugHeadline, dugTrouble, obstructionWords, roundedUp } from './dig-words.ts';
import { Decided, OpenHoleTicks } from './open-hole.tsx';

export interface HoleCardProps {
  readonly hole: HoleAssessment;
  readonly planned: Hole;
  /** The hole to go on to; null when no other wants anything. */
  readonly next: string | null;
  readonly onDug: () => void;
}

/** What is missing before this hole may be dug, and the way to mend it. */
export function GateCard({ hole, onDug }: HoleCardProps) {
  const { jobId } = useJobBook();
  const { failed, log } = useLog();
  const way = gateWay(hole.digGate);
  const href = (phase: Phase, label: string | null) => hrefOf({ at: 'job', job: jobId, phase, hole: label });
  return (
    <DigPage
      hole={hole.hole}
      actions={
        <>
          <ButtonRow>
            <Button onPress={onDug}>It is dug already</Button>
          </ButtonRow>
          {way === 'plan' && (
            <ButtonLink kind="main" href={href('plan', null)}>
              Type the frost depth
            </ButtonLink>
          )}
          {way === 'stake' && (
            <ButtonLink kind="main" href={href('stake', hole.hole)}>
              Go to stake {hole.hole}
            </ButtonLink>
          )}
          {way === 'ties' && (
            <Button
              kind="main"
              onPress={() => void log({ kind: 'check', item: 'ties', hole: hole.hole, done: true })}
            >
              Two ways back are set
            </Button>
          )}
        </>
      }
    >
      <h2>Hole {hole.hole} is not ready to dig</h2>
      {failed && <Problem text="Ties: not saved; free some space, then tap Two ways back are set again." />}
      <GateList label={`Before hole ${hole.hole} is dug`} items={hole.digGate.items} />
    </DigPage>
  );
}

/** How deep and how wide, and why. */
export function ReadyCard({ hole, planned, next, onDug }: HoleCardProps) {
  return (
    <DigPage
      hole={hole.hole}
      actions={
        <>
          <LaterRow next={next} />
          <Button kind="main" onPress={onDug}>
            Log as-dug
          </Button>
        </>
      }
    >
      <h2>Dig hole {hole.hole}, with its sides upright</h2>
      <Target hole={hole} planned={planned} />
    </DigPage>
  );
}

/** Depth and width to reach, in large figures. */
function Target({ hole, planned }: Pick<HoleCardProps, 'hole' | 'planned'>) {
  const { situation } = useJobBook();
  const { plan } = situation;
  const { aimDepth } = hole.dug;
  if (!plan) return null;
  const { depth, text } = requiredDepth(plan.rules);
  return (
    <>
      {aimDepth !== null && depth !== null && (
        <PullRow
          live
          from="Depth"
          held="downhill lip to bottom, tape upright"
          m={roundedUp(aimDepth, plan.units)}
          units={plan.units}
        />
      )}
      <PullRow live from="Width" held="at the foot, across" m={planned.holeDiameter} units={plan.units} />
      <p>
        {unbroken(text)}
        {aimDepth !== null &&
          depth !== null &&
          unbroken(
            ` A little more, ${formatSmall(roundedUp(aimDepth, plan.units) - depth, plan.units)}, is for the doubt of reading it.`,
          )}
      </p>
    </>
  );
}

function LaterRow({ next }: { readonly next: string | null }) {
  const { jobId } = useJobBook();
  if (next === null) return null;
  return (
    <ButtonRow>
      <ButtonLink
        href={hrefOf({ at: 'job', job: jobId, phase: 'dig', hole: next })}
        label={`Later: go on to hole ${next}`}
      >
        Later
      </ButtonLink>
    </ButtonRow>
  );
}

export interface DugCardProps extends HoleCardProps {
  readonly task: Exclude<DigTask, 'gate' | 'dig'>;
  /** Opens the form that takes who decided what about what was met. */
  readonly onDecide: () => void;
}

/** What came of a dug hole, and what to do about it. */
export function DugCard({ hole, planned, next, onDug, task, onDecide }: DugCardProps) {
  const { obstruction } = hole.dug;
  const { verdict = 'unmeasured', checked } = digLook(hole);
  return (
    <DigPage hole={hole.hole} actions={<DugActions {...{ task, next, onDug, onDecide }} />}>
      <h2>
        <VerdictMark verdict={verdict} {...(checked === undefined ? {} : { checked })}>
          {dugHeadline(hole.hole, task, hole.dug)}
        </VerdictMark>
      </h2>
      {task === 'decide' && obstruction !== null && (
        <Problem text={obstructionWords(hole.hole, obstruction)} />
      )}
      {dugTrouble(hole.dug).map((text) => (
        <p key={text}>{unbroken(text)}</p>
      ))}
      {task !== 'decide' && <Decided hole={hole} />}
      <DugTable hole={hole} planned={planned} />
      <OpenHoleTicks hole={hole} />
    </DigPage>
  );
}

type DugActionsProps = Pick<DugCardProps, 'task' | 'next' | 'onDug' | 'onDecide'>;

function DugActions({ task, next, onDug, onDecide }: DugActionsProps) {
  const { jobId } = useJobBook();
  const again = (main: boolean) => (
    <Button kind={main ? 'main' : 'plain'} onPress={onDug}>
      Log as-dug again
    </Button>
  );
  if (task === 'again')
    return (
      <>
        <LaterRow next={next} />
        {again(true)}
      </>
    );
  return (
    <>
      <ButtonRow>
        {again(false)}
        {task === 'decide' && <Button onPress={onDecide}>Enter the decision</Button>}
      </ButtonRow>
      {task === 'unknown' ? (
        <ButtonLink kind="main" href={hrefOf({ at: 'job', job: jobId, phase: 'plan', hole: null })}>
          Type the frost depth
        </ButtonLink>
      ) : (
        <ButtonLink kind="main" href={hrefOf({ at: 'job', job: jobId, phase: 'dig', hole: next })}>
          {next === null ? 'Go on' : `Go on to hole ${next}`}
        </ButtonLink>
      )}
    </>
  );
}

function DugTable({ hole, planned }: Pick<HoleCardProps, 'hole' | 'planned'>) {
  const { situation } = useJobBook();
  const { plan } = situation;
  if (!plan) return null;
  const { depth, width, requiredDepth: required } = hole.dug;
  const least = (m: number | null) =>
    m === null ? 'not known yet' : `at least ${formatLength(m, plan.units)}`;
  return (
    <JudgementTable
      label={`Hole ${hole.hole} as dug`}
      rows={[
        { name: 'depth', tolerance: least(required), ...pick(depth) },
        {
          name: 'width',
          tolerance: `${formatLength(planned.holeDiameter, plan.units)} planned`,
          ...pick(width),
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
