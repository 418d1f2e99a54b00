import { useMemo } from 'preact/hooks';
import { requiredDepthOf } from '../../build/index.ts';
import { heightPointName } from '../../job/words.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { viewOf } from '../../judge/view.ts';
import type { Hole } from '../../plan/index.ts';
import { Button, ButtonLink, ButtonRow, GateList, Problem, PullRow } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { formatSmall } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { hrefOf, type Phase } from '../route.ts';
import { useLog } from '../use-log.ts';
import { DigPage } from './dig-page.tsx';
import { gateWay } from './dig-step.ts';
import { roundedUp } from './dig-words.ts';
import { groundSight } from './ground-step.ts';
import type { OpenDig } from './open-dig.ts';

export interface HoleCardProps {
  readonly hole: HoleAssessment;
  readonly planned: Hole;
  /** The hole to go on to; null when no other wants anything. */
  readonly next: string | null;
  /** Opens what is entered about the hole. */
  readonly onOpen: (open: OpenDig['take']) => void;
}

/** What is missing before this hole may be dug, and the way to mend it. */
export function GateCard({ hole, onOpen }: HoleCardProps) {
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
            <Button onPress={() => onOpen('dug')}>It is dug already</Button>
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
          {way === 'decide' && (
            <Button kind="main" onPress={() => onOpen('decide')}>
              Enter the decision
            </Button>
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

/** How deep and how wide, and why. Where a level is in use, the ground is read while it is still there. */
export function ReadyCard({ hole, planned, next, onOpen }: HoleCardProps) {
  const { jobId, situation } = useJobBook();
  const view = useMemo(() => viewOf(situation), [situation]);
  const ground = view && groundSight(view, jobId, hole.hole);
  const asDug = () => onOpen('dug');
  return (
    <DigPage
      hole={hole.hole}
      actions={
        ground ? (
          <>
            <ButtonRow>
              <Button onPress={asDug}>Log as-dug</Button>
            </ButtonRow>
            <Button kind="main" onPress={() => onOpen('ground')}>
              Read the rod on {heightPointName(ground.on, situation.plan)}
            </Button>
          </>
        ) : (
          <>
            <LaterRow next={next} />
            <Button kind="main" onPress={asDug}>
              Log as-dug
            </Button>
          </>
        )
      }
    >
      <h2>Dig hole {hole.hole}, with its sides upright</h2>
      <Target hole={hole} planned={planned} />
      {ground && (
        <p>
          Before it is dug: the heights of A, of B and of the lowest ground at the edge of this hole tell how
          long its post has to be.
        </p>
      )}
      <Button onPress={() => onOpen('own-depth')}>Another depth for this hole</Button>
    </DigPage>
  );
}

/** Depth and width to reach, in large figures. */
function Target({ hole, planned }: Pick<HoleCardProps, 'hole' | 'planned'>) {
  const { situation } = useJobBook();
  const { plan } = situation;
  const { aimDepth } = hole.dug;
  if (!plan) return null;
  const { depth, text } = requiredDepthOf(plan, hole.hole);
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

export function LaterRow({ next }: { readonly next: string | null }) {
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
