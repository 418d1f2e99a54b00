import { useMemo } from 'preact/hooks';
import { type JobView, middleOf, viewOf } from '../../judge/view.ts';
import { RodFlow } from '../heights/rod-flow.tsx';
import { useJobBook } from '../job-book.ts';
import { PullFlow } from '../pull-flow.tsx';
import { StringFlow } from '../stake/string-flow.tsx';
import { useHold } from '../use-hold.ts';
import { groundSight } from './ground-step.ts';
import { middlePull } from './middle-step.ts';
import type { OpenDigProps } from './open-dig.ts';
import { OwnDepthSheet } from './own-depth-sheet.tsx';

/** What is entered about a hole less often than its size: its middle, the ground before it is dug, a depth of its own. */
export function MoreFlows({ open, onClose }: OpenDigProps) {
  const { situation } = useJobBook();
  const view = useMemo(() => viewOf(situation), [situation]);
  if (!view) return null;
  const { hole, take } = open;
  switch (take) {
    case 'middle':
      return <MiddleFlow view={view} hole={hole} onClose={onClose} />;
    case 'string':
      return <StringFlow thing={middleOf(hole)} onClose={onClose} />;
    case 'ground':
      return <GroundFlow view={view} hole={hole} onClose={onClose} />;
    case 'own-depth':
      return <OwnDepthSheet plan={view.plan} hole={hole} onClose={onClose} />;
    default:
      return null;
  }
}

interface FlowProps {
  readonly view: JobView;
  readonly hole: string;
  readonly onClose: () => void;
}

function MiddleFlow({ view, hole, onClose }: FlowProps) {
  const [how] = useHold();
  // As it was when it was opened: the reading that is logged changes what comes next.
  const pull = useMemo(() => middlePull(view, hole), []);
  return pull && <PullFlow pull={pull} how={how} onClose={onClose} />;
}

function GroundFlow({ view, hole, onClose }: FlowProps) {
  const { jobId } = useJobBook();
  // As the button that opened it named it.
  const sight = useMemo(() => groundSight(view, jobId, hole), []);
  return sight && <RodFlow view={view} {...sight} expected={null} onClose={onClose} />;
}
