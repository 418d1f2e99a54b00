import { useState } from 'preact/hooks';
import { NothingYet } from '../nothing-yet.tsx';
import { OpenPullContext } from '../open-pull.ts';
import type { PhaseProps } from '../phase-props.ts';
import { PullFlow, type PullToRead } from '../pull-flow.tsx';
import { useAlone } from '../use-alone.ts';
import { useHold } from '../use-hold.ts';
import { useStartAtTop } from '../use-start-at-top.ts';
import { BaselineCard } from './baseline-card.tsx';
import { nameOf } from './check-list.tsx';
import { DoneCard, TiesCard } from './end-cards.tsx';
import { FurtherCard } from './further-card.tsx';
import { FurtherPlaceCard } from './further-place-card.tsx';
import { HoleCard } from './hole-card.tsx';
import { LayScope } from './lay/lay-buttons.tsx';
import { MovePlacesContext, type Placing } from './move-places.ts';
import { MovedCard } from './moved-card.tsx';
import { PlaceCard } from './place-card.tsx';
import { CheckCard, SettleCard, StrikeCard } from './proof-cards.tsx';
import { ReferenceCard } from './reference-card.tsx';
import { ListScope } from './sheet/list-button.tsx';
import type { StakeStep } from './stake-step.ts';
import { usePastMoved } from './use-past-moved.ts';
import { type Stake, useStake } from './use-stake.ts';
import { UtilitiesCard } from './utilities-card.tsx';

/** From the plan to proved stakes: always the one card for what comes next, or for the hole in the address. */
export function StakeScreen({ hole }: PhaseProps) {
  const [goOn, setGoOn] = useState(false);
  const [pastMoved, onPastMoved] = usePastMoved();
  const [placing, setPlacing] = useState<Placing | null>(null);
  const [pull, setPull] = useState<PullToRead | null>(null);
  const [how] = useHold();
  const [alone] = useAlone();
  const stake = useStake(hole, { goOn, pastMoved, alone });
  // A hole or phase of its own starts this screen afresh, and the last one may have been scrolled far.
  useStartAtTop(cardKey(stake.step, placing));
  return (
    <OpenPullContext.Provider value={setPull}>
      <MovePlacesContext.Provider value={setPlacing}>
        <ListScope>
          <LayScope onLaid={() => setPlacing(null)}>
            {placing === 'A and B' ? (
              <PlaceCard onClose={() => setPlacing(null)} />
            ) : placing === 'further' ? (
              <FurtherPlaceCard onClose={() => setPlacing(null)} />
            ) : (
              <StakeCard stake={stake} onGoOn={() => setGoOn(true)} onPastMoved={onPastMoved} />
            )}
          </LayScope>
        </ListScope>
        {pull && <PullFlow pull={pull} how={how} onClose={() => setPull(null)} />}
      </MovePlacesContext.Provider>
    </OpenPullContext.Provider>
  );
}

/** Which card is shown; the tasks of one hole share one. */
const cardKey = (step: StakeStep, placing: Placing | null): string =>
  placing !== null
    ? placing
    : step.at === 'hole'
      ? `hole ${step.hole} ${step.task}`
      : step.at === 'check'
        ? `check ${nameOf(step.pull)}`
        : step.at === 'further'
          ? `further ${step.reference.thing.label} ${step.task}`
          : step.at;

interface StakeCardProps {
  readonly stake: Stake;
  readonly onGoOn: () => void;
  readonly onPastMoved: () => void;
}

function StakeCard({ stake, onGoOn, onPastMoved }: StakeCardProps) {
  const { step } = stake;
  switch (step.at) {
    case 'plan':
      return <NothingYet phase="stake" lead="plan" text="First the plan: it has no holes to stake yet." />;
    case 'place':
      return <PlaceCard />;
    case 'utilities':
      return <UtilitiesCard />;
    case 'reference':
      return <ReferenceCard key={step.stake} stake={step.stake} />;
    case 'baseline':
      return <BaselineCard />;
    case 'moved':
      return <MovedCard stake={stake} moved={step.moved} onLater={onPastMoved} />;
    case 'further':
      return <FurtherCard stake={stake} reference={step.reference} task={step.task} />;
    case 'hole':
      return <HoleCard key={step.hole} stake={stake} hole={step.hole} task={step.task} />;
    case 'strike':
      return <StrikeCard key={step.entry.id} stake={stake} entry={step.entry} />;
    case 'check':
      return <CheckCard stake={stake} pull={step.pull} onGoOn={onGoOn} />;
    case 'settle':
      return <SettleCard stake={stake} pull={step.pull} onGoOn={onGoOn} />;
    case 'ties':
      return <TiesCard stake={stake} holes={step.holes} />;
    case 'done':
      return <DoneCard stake={stake} />;
  }
}
