import type { HoleAssessment } from '../../judge/types.ts';
import { Button, ButtonLink, ButtonRow } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { hrefOf } from '../route.ts';
import { useLog } from '../use-log.ts';
import type { OpenFlow } from './set-flow.tsx';
import type { SetStep } from './set-step.ts';

export interface SetActionsProps {
  readonly hole: HoleAssessment | null;
  readonly step: SetStep | null;
  /** The next hole that wants something; null when none does. */
  readonly nextHref: string | null;
  readonly onFlow: (flow: OpenFlow) => void;
  readonly onLeave: () => void;
}

/** The one thing to do about this post, and the way past it. */
export function SetActions({ hole, step, nextHref, onFlow, onLeave }: SetActionsProps) {
  const { jobId } = useJobBook();
  const { log } = useLog();
  const pourHref = hrefOf({ at: 'job', job: jobId, phase: 'pour', hole: hole?.hole ?? null });
  if (!hole || !step || step.do === 'lay') {
    return (
      <ButtonLink kind="main" href={pourHref}>
        Go to Pour
      </ButtonLink>
    );
  }
  const thing = { kind: 'post', hole: hole.hole } as const;
  const later = nextHref && <ButtonLink href={nextHref}>Later</ButtonLink>;
  switch (step.do) {
    case 'stand':
      return (
        <ButtonRow>
          {later}
          <Button kind="main" onPress={() => void log({ kind: 'stand', thing, event: 'set' })}>
            It stands
          </Button>
        </ButtonRow>
      );
    case 'pull':
      return (
        <ButtonRow>
          {later}
          <Button kind="main" onPress={() => onFlow({ take: 'pull', pull: step.pull })}>
            Enter the tape
          </Button>
        </ButtonRow>
      );
    case 'doubt':
      return (
        <ButtonRow>
          {later}
          {step.again ? (
            <Button kind="main" onPress={() => onFlow({ take: 'strike', entry: step.entry })}>
              Choose and strike
            </Button>
          ) : (
            <Button kind="main" onPress={() => onFlow({ take: 'pull', pull: step.pull })}>
              Enter the tape
            </Button>
          )}
        </ButtonRow>
      );
    case 'move':
      return (
        <ButtonRow>
          <Button onPress={onLeave}>Leave it so</Button>
          <Button kind="main" onPress={() => void log({ kind: 'stand', thing, event: 'nudged' })}>
            It is moved
          </Button>
        </ButtonRow>
      );
    case 'plumb':
      return (
        <ButtonRow>
          {later}
          <Button kind="main" onPress={() => onFlow({ take: 'plumb', side: step.side })}>
            Enter plumb
          </Button>
        </ButtonRow>
      );
    case 'rod':
      return (
        <ButtonRow>
          {later}
          <Button kind="main" onPress={() => onFlow({ take: 'rod', on: step.on, expected: step.expected })}>
            Enter the rod
          </Button>
        </ButtonRow>
      );
    case 'done':
      return (
        <ButtonRow>
          <ButtonLink href={pourHref}>Pour</ButtonLink>
          {nextHref ? (
            <ButtonLink kind="main" href={nextHref}>
              Next post
            </ButtonLink>
          ) : null}
        </ButtonRow>
      );
  }
}
