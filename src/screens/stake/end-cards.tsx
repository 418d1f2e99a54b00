import type { HoleAssessment } from '../../judge/types.ts';
import { listWords } from '../../judge/words.ts';
import { Button, ButtonLink, PlanDrawing, Problem } from '../../ui/index.ts';
import { drawnSite } from '../drawn-site.ts';
import { useJobBook } from '../job-book.ts';
import { hrefOf } from '../route.ts';
import { useLog } from '../use-log.ts';
import { StakeTable } from './proof-cards.tsx';
import { StakePage, stakeLook } from './stake-page.tsx';
import type { Stake } from './use-stake.ts';

/** Digging takes the stake away: two ways back to every centre, before. */
export function TiesCard({ stake, holes }: { readonly stake: Stake; readonly holes: readonly string[] }) {
  const { assessment, situation } = useJobBook();
  const { failed, log } = useLog();
  const [only] = holes;
  const lone = holes.length === 1 && only !== undefined;
  const set = () => void log({ kind: 'check', item: 'ties', done: true, ...(lone ? { hole: only } : {}) });
  return (
    <StakePage
      state={stake.state}
      actions={
        <Button kind="main" onPress={set}>
          Two ways back are set
        </Button>
      }
    >
      <h2>Set two ways back to {lone ? `the centre of hole ${only}` : 'every centre'} before you dig</h2>
      {failed && <Problem text="Ties: not saved; free some space, then tap Two ways back are set again." />}
      <p>Digging takes the stake away. For {holesWords(holes)}:</p>
      <ul class="points">
        <li>
          Either drive two offset stakes, one on each side in line with the nail, farther out than spoil will
          lie. Measure nail to nail, and write hole, length and side on each.
        </li>
        <li>
          Or stretch two strings that cross over the nail, each between nails beyond the spoil, and mark where
          they lie, so that they come off and go back.
        </li>
        <li>
          Paint a cross with long arms through the nail: what is left of it shows where the bar or auger
          wandered.
        </li>
      </ul>
      {situation.plan && <StakeTable holes={assessment.holes} units={situation.plan.units} />}
    </StakePage>
  );
}

/** Beyond this a list of labels says less than its number. */
const MOST_LISTED = 12;

const holesWords = (labels: readonly string[]): string =>
  labels.length > MOST_LISTED
    ? `${labels.length} holes`
    : `${labels.length === 1 ? 'hole' : 'holes'} ${listWords(labels)}`;

/** Staked, and ready to dig; or as near to it as the user wanted. */
export function DoneCard({ stake }: { readonly stake: Stake }) {
  const { jobId, assessment, situation } = useJobBook();
  const { plan } = situation;
  if (!plan) return null;
  const open = assessment.holes.filter(
    ({ dug, staked }) => dug.at === null && !(staked.position.verdict === 'in' && staked.position.checked),
  );
  return (
    <StakePage
      state={stake.state}
      actions={
        <ButtonLink kind="main" href={hrefOf({ at: 'job', job: jobId, phase: 'dig', hole: null })}>
          Go to Dig
        </ButtonLink>
      }
    >
      <h2>{doneWords(assessment.holes, open)}</h2>
      <StakeTable holes={assessment.holes} units={plan.units} />
      <PlanDrawing
        title={`${plan.name}, all stakes`}
        units={plan.units}
        {...drawnSite(situation, assessment.holes, { lookOf: stakeLook })}
      />
    </StakePage>
  );
}

/** A dug hole's stake is gone: nothing is claimed of it any more. */
function doneWords(holes: readonly HoleAssessment[], open: readonly HoleAssessment[]): string {
  if (open.length > 0) return 'Staked, with some stakes not proved';
  return holes.every(({ dug }) => dug.at !== null)
    ? 'Every hole is dug: the stakes have done their work'
    : 'Every stake that still stands is in and checked';
}
