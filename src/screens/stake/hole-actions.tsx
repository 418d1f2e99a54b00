import type { Body } from '../../job/entry-schema.ts';
import { Button, ButtonLink, ButtonRow } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { useOpenPull } from '../open-pull.ts';
import type { PullToRead } from '../pull-flow.tsx';
import { hrefOf } from '../route.ts';
import { type HoleTask, holeAfter } from './stake-step.ts';
import type { Stake } from './use-stake.ts';

export interface HoleActionsProps {
  readonly stake: Stake;
  readonly hole: string;
  readonly task: HoleTask;
  readonly fromA: PullToRead;
  readonly fromB: PullToRead;
  readonly log: (body: Body) => Promise<boolean>;
}

/** The one thing to do at this hole, and the way on to another. */
export function HoleActions({ stake, hole, task, fromA, fromB, log }: HoleActionsProps) {
  const openPull = useOpenPull();
  const { jobId } = useJobBook();
  const after = holeAfter(stake.state, hole);
  const href = (label: string | null) => hrefOf({ at: 'job', job: jobId, phase: 'stake', hole: label });
  const stand = (event: 'driven' | 'moved') =>
    void log({ kind: 'stand', thing: { kind: 'hole-stake', hole }, event });
  if (task === 'done')
    return (
      <ButtonLink kind="main" href={href(after)}>
        {after === null ? 'Go on' : `Go on to hole ${after}`}
      </ButtonLink>
    );
  return (
    <>
      {after !== null && (
        <ButtonRow>
          <ButtonLink href={href(after)} label={`Later: go on to hole ${after}`}>
            Later
          </ButtonLink>
        </ButtonRow>
      )}
      {task === 'drive' && (
        <Button key="drive" kind="main" onPress={() => stand('driven')}>
          Stake driven
        </Button>
      )}
      {task === 'from-a' && (
        <Button key="a" kind="main" onPress={() => openPull(fromA)}>
          Read the tape from A
        </Button>
      )}
      {task === 'from-b' && (
        <Button key="b" kind="main" onPress={() => openPull(fromB)}>
          Read the tape from B
        </Button>
      )}
      {task === 'shift' && (
        <Button key="shift" kind="main" onPress={() => stand('moved')}>
          Stake moved
        </Button>
      )}
    </>
  );
}
