import { Button, ButtonRow, PlanDrawing, Problem, PullRow } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { drawnSite } from '../drawn-site.ts';
import { useJobBook } from '../job-book.ts';
import { levelTape } from '../rise-words.ts';
import { useLog } from '../use-log.ts';
import { useMovePlaces } from './move-places.ts';
import { lieWords } from './place-words.ts';
import { ListButton } from './sheet/list-button.tsx';
import { StakePage } from './stake-page.tsx';

/** Drive reference stake A, then B. */
export function ReferenceCard({ stake }: { readonly stake: 'A' | 'B' }) {
  const { situation, assessment } = useJobBook();
  const movePlaces = useMovePlaces();
  const { failed, log } = useLog();
  const { plan, laid } = situation;
  if (!plan || !laid) return null;
  const driven = () => void log({ kind: 'stand', thing: { kind: 'stake', label: stake }, event: 'driven' });
  return (
    <StakePage
      actions={
        <>
          <ButtonRow>
            <Button onPress={() => movePlaces('A and B')}>Move A and B</Button>
          </ButtonRow>
          <Button kind="main" onPress={driven}>
            Stake {stake} driven
          </Button>
        </>
      }
    >
      {stake === 'A' ? (
        <h2>Drive stake A, with a nail in its top</h2>
      ) : (
        <h2>Drive stake B, with a nail in its top</h2>
      )}
      {failed && (
        <Problem text={`Stake ${stake}: not saved; free some space, then tap Stake ${stake} driven again.`} />
      )}
      {stake === 'B' && (
        <PullRow
          live
          from="from A’s nail"
          to="to B’s nail"
          {...levelTape(situation, laid.baseline)}
          units={plan.units}
        />
      )}
      <p>{unbroken(lieWords(laid.motion, plan.units))}</p>
      <PlanDrawing
        title={`${plan.name}, A and B`}
        units={plan.units}
        {...drawnSite(situation, assessment.holes)}
      />
      <p>
        Drive it deep, where neither spoil nor barrow will touch it: every place hangs on these two until the
        last post is set. A stake that stands already, or a nail in something firm, will do.
      </p>
      <ListButton />
    </StakePage>
  );
}
