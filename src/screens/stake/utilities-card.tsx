import { Button, Caution, Problem } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { handDigWords } from '../hand-dig.ts';
import { useJobBook } from '../job-book.ts';
import { useLog } from '../use-log.ts';
import { ListButton } from './sheet/list-button.tsx';
import { StakePage } from './stake-page.tsx';

/** Before the first stake is driven: nobody knows what lies in the ground until it is marked. */
export function UtilitiesCard() {
  const { failed, log } = useLog();
  const { plan } = useJobBook().situation;
  const marked = () => void log({ kind: 'check', item: 'utilities', done: true });
  return (
    <StakePage
      actions={
        <Button kind="main" onPress={marked}>
          Utilities are marked
        </Button>
      }
    >
      <h2>First have buried utilities marked</h2>
      {failed && (
        <Problem text="Utilities: not saved; free some space, then tap Utilities are marked again." />
      )}
      <Caution title="what lies in the ground">
        <ul class="points">
          <li>
            Ask the local one-call service some working days before you drive a stake or dig: in the USA that
            is 811. Elsewhere ask the town’s building office which service marks lines there.
          </li>
          <li>
            Private lines are not marked by it: your own power, gas, water, drains and irrigation. Find out
            where they run, or have them found.
          </li>
          <li>Marks are not exact and say nothing of depth.</li>
          {plan && <li>{unbroken(handDigWords(plan.units))}</li>}
          <li>Local rules decide how long to wait, and how long marks hold.</li>
        </ul>
      </Caution>
      <p>Go on when every owner has marked its lines or said that it has none here.</p>
      <ListButton />
    </StakePage>
  );
}
