import type { Hold } from '../../job/entry-schema.ts';
import { Button } from '../../ui/index.ts';
import { HoldChoice } from '../hold-choice.tsx';
import type { SetStep } from './step.ts';

export interface StepOptionsProps {
  readonly step: SetStep;
  readonly how: Hold['how'];
  readonly onHow: (how: Hold['how']) => void;
  readonly setup: string;
  readonly onNewSetup: () => void;
}

/** What has to be said beside a reading: how the tape is held, or where the level stands. */
export function StepOptions({ step, how, onHow, setup, onNewSetup }: StepOptionsProps) {
  switch (step.do) {
    case 'baseline':
    case 'stand':
    case 'pull':
    case 'doubt':
    case 'tell':
      return <HoldChoice value={how} onChange={onHow} />;
    case 'move':
      return step.nudge ? <HoldChoice value={how} onChange={onHow} /> : null;
    case 'rod':
      return (
        <>
          <p>The level is at set-up {setup}. If it was moved or knocked, read the benchmark anew.</p>
          <Button onPress={onNewSetup}>The level was moved</Button>
        </>
      );
    default:
      return null;
  }
}
