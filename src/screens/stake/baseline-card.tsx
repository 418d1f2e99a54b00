import { Button, PlanDrawing, PullRow } from '../../ui/index.ts';
import { drawnPull, drawnSite } from '../drawn-site.ts';
import { HoldChoice } from '../hold-choice.tsx';
import { useJobBook } from '../job-book.ts';
import { useOpenPull } from '../open-pull.ts';
import { heldTape } from '../rise-words.ts';
import { useHold } from '../use-hold.ts';
import { ListButton } from './sheet/list-button.tsx';
import { StakePage } from './stake-page.tsx';
import { baselinePull } from './stake-pulls.ts';

/** Pull A–B: every place hangs on it. */
export function BaselineCard() {
  const { situation, assessment } = useJobBook();
  const openPull = useOpenPull();
  const [how, setHow] = useHold();
  const { plan, laid } = situation;
  if (!plan || !laid) return null;
  const pull = baselinePull(laid.baseline);
  const line = drawnPull(situation, pull, 'live');
  return (
    <StakePage
      actions={
        <Button kind="main" onPress={() => openPull(pull)}>
          Read the tape from A to B
        </Button>
      }
    >
      <h2>Pull the tape from A to B</h2>
      <PullRow
        live
        from="from A’s nail"
        to="to B’s nail"
        {...heldTape(situation, { ...pull, expected: laid.baseline }, how)}
        units={plan.units}
      />
      <p>
        Planned. Read what is really there: B need not stand to the mark, for lengths from B are worked out
        anew from what you read.
      </p>
      <PlanDrawing
        title={`${plan.name}, the line from A to B`}
        units={plan.units}
        {...drawnSite(situation, assessment.holes, { pulls: line ? [line] : [] })}
      />
      <HoldChoice value={how} onChange={setHow} />
      <ListButton />
    </StakePage>
  );
}
