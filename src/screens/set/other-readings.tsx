import { type Body, SIDES } from '../../job/entry-schema.ts';
import { endName, sideName, thingName, turningOf } from '../../job/words.ts';
import { possiblePulls } from '../../judge/possible-pulls.ts';
import { pullPlan } from '../../judge/pull-ends.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { capital } from '../../judge/words.ts';
import { Button } from '../../ui/index.ts';
import { rodAtTarget } from '../heights/rod-belief.ts';
import { More } from '../more.tsx';
import type { OpenFlow } from './set-flow.tsx';

export interface OtherReadingsProps {
  readonly view: JobView;
  readonly hole: HoleAssessment;
  readonly setup: string;
  readonly onFlow: (flow: OpenFlow) => void;
  readonly onLog: (body: Body) => void;
}

/** Every reading that could be taken of this post, for whoever wants another than the one proposed. */
export function OtherReadings({ view, hole, setup, onFlow, onLog }: OtherReadingsProps) {
  if (!hole.set.done || !hole.designed) return null;
  const post = postOf(hole.hole);
  const name = thingName(post, view.plan);
  const turning = turningOf(view.plan, hole.hole);
  const at = hole.set.at?.place ?? hole.designed;
  const pulls = possiblePulls(view, post, at).map(({ from, fromAt }) =>
    pullPlan(view, from, fromAt, post, at),
  );
  const expected = rodAtTarget(view, hole.hole, setup);
  return (
    <More label={`Other readings of ${name}`}>
      {pulls.map(({ from, to, expected: level }) => (
        <Button
          key={endName(from, view.plan)}
          onPress={() => onFlow({ take: 'pull', pull: { from, to, expected: level } })}
        >
          Tape from {endName(from, view.plan)}
        </Button>
      ))}
      <Button onPress={() => onFlow({ take: 'string' })}>Measured off a string</Button>
      {hole.set.twist && <Button onPress={() => onFlow({ take: 'faces' })}>What each face reads</Button>}
      {SIDES.map((side) => (
        <Button key={side} onPress={() => onFlow({ take: 'plumb', side })}>
          Plumb, {sideName(side, turning)} face
        </Button>
      ))}
      {hole.set.twist && <Button onPress={() => onFlow({ take: 'twist' })}>How it is turned</Button>}
      <Button onPress={() => onFlow({ take: 'rod', on: { point: 'benchmark' }, expected: null })}>
        Rod on the benchmark
      </Button>
      <Button onPress={() => onFlow({ take: 'rod', on: { point: 'top', hole: hole.hole }, expected })}>
        Rod on the top of {name}
      </Button>
      <p>If {name} was moved or knocked, what was read of it no longer counts.</p>
      <Button onPress={() => onLog({ kind: 'stand', thing: post, event: 'moved' })}>
        {capital(name)} was moved
      </Button>
    </More>
  );
}
