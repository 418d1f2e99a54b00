import { useLayoutEffect, useRef } from 'preact/hooks';
import { Button, ButtonLink } from '../../ui/index.ts';
import { REPEAT_TAP_MS } from '../../ui/repeat-tap.ts';
import { ActionRow } from '../action-row.tsx';
import { useJobBook } from '../job-book.ts';
import { hrefOf } from '../route.ts';
import type { SetStep } from './step.ts';
import type { SetWork } from './use-set-work.ts';

export type SetActionsProps = Pick<SetWork, 'hole' | 'step' | 'nextHref' | 'onFlow' | 'onLeave' | 'onLog'>;

/** The one thing to do about this post, and the way past it. */
export function SetActions({ hole, step, nextHref, onFlow, onLeave, onLog }: SetActionsProps) {
  const { jobId } = useJobBook();
  const pourHref = hrefOf({ at: 'job', job: jobId, phase: 'pour', hole: hole?.hole ?? null });
  if (!hole || !step || step.do === 'lay')
    return (
      <ButtonLink kind="main" href={pourHref}>
        Go to Pour
      </ButtonLink>
    );
  if (step.do === 'done') return <DoneActions pourHref={pourHref} nextHref={nextHref} />;
  const beside =
    step.do === 'move' ? (
      <Button onPress={onLeave}>Leave it so</Button>
    ) : (
      nextHref && <ButtonLink href={nextHref}>Later</ButtonLink>
    );
  return (
    <ActionRow beside={beside}>
      <StepAction step={step} hole={hole.hole} onFlow={onFlow} onLog={onLog} />
    </ActionRow>
  );
}

interface StepActionProps extends Pick<SetActionsProps, 'onFlow' | 'onLog'> {
  readonly step: Exclude<SetStep, { do: 'lay' | 'done' }>;
  readonly hole: string;
}

function StepAction({ step, hole, onFlow, onLog }: StepActionProps) {
  const thing = { kind: 'post', hole } as const;
  // One and the same button from step to step: it knows of the tap just before, so half a double tap presses nothing new.
  const main = (press: () => void, words: string) => (
    <Button kind="main" onPress={press}>
      {words}
    </Button>
  );
  switch (step.do) {
    case 'stand':
      return main(() => onLog({ kind: 'stand', thing, event: 'set' }), 'It stands');
    case 'move':
      return <MovedButton onPress={() => onLog({ kind: 'stand', thing, event: 'nudged' })} />;
    case 'doubt':
      if (step.again !== 'not-yet')
        return main(() => onFlow({ take: 'strike', entry: step.entry }), 'Choose and strike');
      return main(() => onFlow({ take: 'pull', pull: step.pull }), 'Enter the tape');
    case 'baseline':
    case 'pull':
    case 'tell':
      return main(() => onFlow({ take: 'pull', pull: step.pull }), 'Enter the tape');
    case 'plumb':
      return main(() => onFlow({ take: 'plumb', side: step.side }), 'Enter plumb');
    case 'rod':
      return main(() => onFlow({ take: 'rod', on: step.on, expected: step.expected }), 'Enter the rod');
  }
}

/**
 * Drops every reading of the post, so it must be meant: it does nothing in the moment after it has come up under the thumb
 * that took the last reading.
 */
function MovedButton({ onPress }: { readonly onPress: () => void }) {
  const shownAt = useRef(0);
  useLayoutEffect(() => {
    shownAt.current = performance.now();
  }, []);
  const press = () => {
    if (performance.now() - shownAt.current >= REPEAT_TAP_MS) onPress();
  };
  return (
    <Button kind="main" onPress={press}>
      It is moved
    </Button>
  );
}

function DoneActions({
  pourHref,
  nextHref,
}: {
  readonly pourHref: string;
  readonly nextHref: string | null;
}) {
  if (nextHref === null)
    return (
      <ButtonLink kind="main" href={pourHref}>
        Go to Pour
      </ButtonLink>
    );
  return (
    <ActionRow beside={<ButtonLink href={pourHref}>Pour</ButtonLink>}>
      <ButtonLink kind="main" href={nextHref}>
        Next post
      </ButtonLink>
    </ActionRow>
  );
}
