import type { ComponentChildren } from 'preact';
import type { HoleAssessment } from '../../judge/types.ts';
import { type HoleLook, HoleStrip } from '../../ui/index.ts';
import { stateOf } from '../drawn-site.ts';
import { HeightsButton } from '../heights/heights-button.tsx';
import { useJobBook } from '../job-book.ts';
import { JobFrame } from '../job-frame.tsx';
import { NextReadings } from '../next-readings.tsx';
import { hrefOf } from '../route.ts';
import { SessionCheck } from '../session-check.tsx';
import { CheckList, FurtherPulls } from './check-list.tsx';
import { Findings, NearLine } from './findings.tsx';
import '../cards.css';
import { LineMore } from './line-more.tsx';
import { ListButton } from './sheet/list-button.tsx';
import { StakeJustRead } from './stake-just-read.tsx';
import type { StakeState } from './stake-step.ts';
import { StringsButton } from './strings/strings-button.tsx';

export interface StakePageProps {
  readonly actions?: ComponentChildren;
  readonly children: ComponentChildren;
  /** With it the holes, the check pulls and the line A–B are one tap away; without it only the card is shown. */
  readonly state?: StakeState;
  /** The hole that the card is about. */
  readonly hole?: string;
  /** Id of the entry that the card is about: what is wrong with it is the card's to say. */
  readonly about?: string;
}

/** A hole as the Stake phase shows it: by its stake's verdict until the hole is dug. */
export function stakeLook(hole: HoleAssessment): HoleLook {
  const { driven, position } = hole.staked;
  const state = stateOf(hole);
  if (!driven || state !== 'staked' || position.verdict === 'unmeasured') return { state };
  return { state, verdict: position.verdict, checked: position.checked };
}

/** The frame of every card of the Stake phase: what is wrong on top, the card, the holes, and what is one tap further. */
export function StakePage({ actions, children, state, hole, about }: StakePageProps) {
  const { jobId, assessment } = useJobBook();
  const href = (label: string) => hrefOf({ at: 'job', job: jobId, phase: 'stake', hole: label });
  return (
    <JobFrame phase="stake" actions={actions}>
      <Findings about={about ?? null} lines={!state} />
      {hole !== undefined && <NearLine hole={hole} />}
      <SessionCheck />
      <StakeJustRead hole={hole ?? null} />
      {children}
      {state && (
        <>
          <HoleStrip
            label="Stakes of the holes"
            holes={assessment.holes.map((each) => ({
              label: each.hole,
              href: href(each.hole),
              current: each.hole === hole,
              ...stakeLook(each),
            }))}
          />
          <ListButton />
          <CheckList state={state} />
          <FurtherPulls state={state} />
          <NextReadings />
          <StringsButton hole={hole ?? null} />
          <LineMore />
          <HeightsButton hole={hole ?? null} />
        </>
      )}
    </JobFrame>
  );
}
