import { useState } from 'preact/hooks';
import { describeEntry, endName } from '../../job/words.ts';
import type { HoleAssessment, NextPull } from '../../judge/types.ts';
import type { PlannedPull } from '../../stakeout/index.ts';
import { Button, ButtonRow, JudgementTable, PlanDrawing, PullRow, StrikeForm } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { formatSmall, type Units } from '../../units/index.ts';
import { drawnPull, drawnSite } from '../drawn-site.ts';
import { HoldChoice } from '../hold-choice.tsx';
import { useJobBook } from '../job-book.ts';
import { useOpenPull } from '../open-pull.ts';
import type { PullToRead } from '../pull-flow.tsx';
import { heldTape } from '../rise-words.ts';
import { useHold } from '../use-hold.ts';
import { nameOf } from './check-list.tsx';
import { checkWords } from './check-words.ts';
import type { LoggedPull } from './present.ts';
import { StakePage, stakeLook } from './stake-page.tsx';
import type { Stake } from './use-stake.ts';

export interface ProofCardProps {
  readonly stake: Stake;
  /** The user goes on although not every stake is in and checked. */
  readonly onGoOn: () => void;
}

/** One check pull between two stakes, before anybody digs. */
export function CheckCard({ stake, pull, onGoOn }: ProofCardProps & { readonly pull: PlannedPull }) {
  const { plan } = useJobBook().situation;
  const { checks, present } = stake.state;
  return (
    <PullCard
      stake={stake}
      onGoOn={onGoOn}
      pull={pull}
      headline={`Check pull: ${nameOf(pull)}`}
      text={plan ? checkWords(checks(), pull, present, plan.units) : ''}
    />
  );
}

/** All check pulls are read, and still not every stake is in and guarded: what came of it, and the pull that helps most. */
export function SettleCard({ stake, pull, onGoOn }: ProofCardProps & { readonly pull: NextPull | null }) {
  const { situation, assessment } = useJobBook();
  const { plan } = situation;
  if (!plan) return null;
  // A finding on top ends with the pull that would tell.
  const told = pull !== null && assessment.findings.some(({ text }) => text.includes(pull.text));
  if (pull)
    return (
      <PullCard
        stake={stake}
        onGoOn={onGoOn}
        pull={pull}
        headline="Not every stake is in and checked: make this pull"
        text={told ? '' : pull.text}
      />
    );
  return (
    <StakePage
      state={stake.state}
      actions={
        <Button kind="main" onPress={onGoOn}>
          Go on as it is
        </Button>
      }
    >
      <h2>Not every stake is in and checked</h2>
      <StakeTable holes={assessment.holes} units={plan.units} />
    </StakePage>
  );
}

/** A pull was made again and shows the first one wrong: one of the two has to go, for both bend the places. */
export function StrikeCard({ stake, entry }: { readonly stake: Stake; readonly entry: LoggedPull }) {
  const { situation, strike } = useJobBook();
  const [striking, setStriking] = useState(false);
  const { plan } = situation;
  const again = stake.state.present.pull(entry.body.from.thing, entry.body.to.thing);
  if (!plan || !again) return null;
  const what = describeEntry(entry, plan);
  return (
    <StakePage
      state={stake.state}
      about={entry.id}
      actions={
        <Button kind="main" onPress={() => setStriking(true)}>
          Strike the first reading
        </Button>
      }
    >
      <h2>The second reading shows the first one wrong</h2>
      <p>First: {what}.</p>
      <p>Second: {describeEntry(again, plan)}.</p>
      {striking && (
        <StrikeForm
          what={what}
          onStrike={async (reason) => {
            if (await strike(entry.id, reason)) setStriking(false);
          }}
          onClose={() => setStriking(false)}
        />
      )}
    </StakePage>
  );
}

interface PullCardProps extends ProofCardProps {
  readonly pull: PullToRead & { readonly expected: number };
  readonly headline: string;
  readonly text: string;
}

function PullCard({ stake, pull, headline, text, onGoOn }: PullCardProps) {
  const { situation, assessment } = useJobBook();
  const openPull = useOpenPull();
  const [how, setHow] = useHold();
  const { plan } = situation;
  if (!plan) return null;
  const line = drawnPull(situation, pull, 'live');
  const { held, m } = heldTape(situation, pull, how);
  return (
    <StakePage
      state={stake.state}
      actions={
        <>
          <ButtonRow>
            <Button onPress={onGoOn}>Go on without</Button>
          </ButtonRow>
          <Button kind="main" onPress={() => openPull(pull)}>
            Read the tape
          </Button>
        </>
      }
    >
      <h2>{unbroken(headline)}</h2>
      <PullRow
        live
        from={`from ${endName(pull.from, plan)}`}
        to={`to ${endName(pull.to, plan)}`}
        held={`nail to nail, ${held}`}
        m={m}
        units={plan.units}
      />
      {text && <p>{unbroken(text)}</p>}
      <PlanDrawing
        title={plan.name}
        units={plan.units}
        {...drawnSite(situation, assessment.holes, { lookOf: stakeLook, pulls: line ? [line] : [] })}
      />
      <HoldChoice value={how} onChange={setHow} />
    </StakePage>
  );
}

/** Every stake that is not in and checked, with why. */
export function StakeTable({
  holes,
  units,
}: {
  readonly holes: readonly HoleAssessment[];
  readonly units: Units;
}) {
  const open = holes.filter(
    ({ dug, staked: { driven, position } }) =>
      driven && dug.at === null && !(position.verdict === 'in' && position.checked),
  );
  if (open.length === 0) return null;
  return (
    <JudgementTable
      label="Stakes that are not in and checked yet"
      rows={open.map(({ hole, staked: { position } }) => ({
        name: `stake ${hole}`,
        tolerance: `± ${formatSmall(position.tolerance, units)}`,
        verdict: position.verdict,
        checked: position.checked,
        text: position.text,
        why: position.why,
      }))}
    />
  );
}
