import { useState } from 'preact/hooks';
import type { Body, Hold } from '../../job/entry-schema.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { useJobBook } from '../job-book.ts';
import { hrefOf } from '../route.ts';
import { useHold } from '../use-hold.ts';
import { useLog } from '../use-log.ts';
import { useStartAtTop } from '../use-start-at-top.ts';
import type { SetBook } from './set-book.ts';
import type { OpenFlow } from './set-flow.tsx';
import { type SetMemory, useSetMemory } from './set-memory.ts';
import { nextHole, stepsOf } from './set-order.ts';
import type { SetStep } from './step.ts';

/** What the Set screen shows, and what can be done on it. */
export interface SetWork {
  /** The post at hand and what is to be done about it; null when no post wants anything. */
  readonly hole: HoleAssessment | null;
  readonly step: SetStep | null;
  /** The next post that wants something; null when none does. */
  readonly nextHref: string | null;
  readonly memory: SetMemory;
  readonly how: Hold['how'];
  readonly onHow: (how: Hold['how']) => void;
  readonly flow: OpenFlow | null;
  readonly onFlow: (flow: OpenFlow | null) => void;
  readonly onLog: (body: Body) => void;
  readonly onLeave: () => void;
}

/**
 * @param focused the hole that the address names, if any. Without one the screen opens on what is most urgent, and stays with the
 *   post that was worked on: after its last reading its verdict is said before another post comes up
 */
export function useSetWork(book: SetBook, focused: string | null): SetWork {
  const { view } = book;
  const { jobId, assessment } = useJobBook();
  const { log } = useLog();
  const memory = useSetMemory(view);
  const [how, onHow] = useHold();
  const [flow, setFlow] = useState<OpenFlow | null>(null);
  const [worked, setWorked] = useState<string | null>(null);
  const byLabel = new Map(assessment.holes.map((hole) => [hole.hole, hole]));
  const stepOf = stepsOf(book, memory);
  const label =
    [focused, worked].find((each) => each !== null && byLabel.has(each)) ??
    nextHole(view, assessment.holes, stepOf);
  const hole = label === null ? null : (byLabel.get(label) ?? null);
  const step = hole && stepOf(hole);
  const next = nextHole(view, assessment.holes, stepOf, label);
  useStartAtTop(`${label} ${step?.do}`);
  return {
    hole,
    step,
    nextHref: next === null ? null : hrefOf({ at: 'job', job: jobId, phase: 'set', hole: next }),
    memory,
    how,
    onHow,
    flow,
    onFlow: (opened) => {
      setWorked(label);
      setFlow(opened);
    },
    onLog: (body) => {
      setWorked(label);
      void log(body);
    },
    onLeave: () => hole && step?.do === 'move' && memory.onLeave(hole.hole, step.part),
  };
}
