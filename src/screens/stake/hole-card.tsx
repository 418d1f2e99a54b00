import type { ComponentChildren } from 'preact';
import type { HoleAssessment, Judgement } from '../../judge/types.ts';
import { small } from '../../judge/words.ts';
import type { HolePulls } from '../../stakeout/index.ts';
import { PlanDrawing, Problem, PullRow, VerdictMark } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import type { Units } from '../../units/index.ts';
import { drawnPull, drawnSite } from '../drawn-site.ts';
import { HoldChoice } from '../hold-choice.tsx';
import { useJobBook } from '../job-book.ts';
import type { PullToRead } from '../pull-flow.tsx';
import { riseBetween } from '../rise.ts';
import { heldTape, otherHeldWords, readWords } from '../rise-words.ts';
import { useAlone } from '../use-alone.ts';
import { useHold } from '../use-hold.ts';
import { useLog } from '../use-log.ts';
import { HoleActions } from './hole-actions.tsx';
import { HoleMore } from './hole-more.tsx';
import { aloneWords, crossingWords, sideWords, slopeWords, stationWords } from './hole-words.ts';
import { misreadOf } from './misread.ts';
import { shiftWords } from './shift-words.ts';
import { StakePage, stakeLook } from './stake-page.tsx';
import { pullToStake } from './stake-pulls.ts';
import { type HoleTask, STAKE_A, STAKE_B } from './stake-step.ts';
import { unsurePull } from './unsure-pull.ts';
import type { Stake } from './use-stake.ts';

export interface HoleCardProps {
  readonly stake: Stake;
  readonly hole: string;
  readonly task: HoleTask;
}

/** Leaves the figures, the drawing and the main button on a phone of 844 px together, with Undo above the button. */
const DRAWING_HEIGHT = 180;

/** One hole's stake: where both tapes meet, and what they read when it is driven. */
export function HoleCard({ stake, hole, task }: HoleCardProps) {
  const { situation, assessment } = useJobBook();
  const [how, setHow] = useHold();
  const [alone] = useAlone();
  const { failed, log } = useLog();
  const { plan } = situation;
  const pulls = stake.pulls.get(hole);
  const assessed = assessment.holes.find((each) => each.hole === hole);
  if (!plan || !pulls || !assessed) return null;
  const fromA = pullToStake(STAKE_A, hole, pulls.fromA);
  const fromB = pullToStake(STAKE_B, hole, pulls.fromB);
  const { present } = stake.state;
  const toMend = task === 'shift' || task === 'unsure';
  const misread = toMend ? misreadOf(situation, assessment.findings, present, [fromA, fromB]) : null;
  const unsure = unsurePull(situation, present, assessment.next, fromA, fromB);
  const shown = livePulls(task, fromA, fromB);
  const unknownRise = [fromA, fromB].some(({ from, to }) => riseBetween(situation, from, to) === null);
  const lines = shown.flatMap((pull) => drawnPull(situation, pull, 'live') ?? []);
  return (
    <StakePage
      state={stake.state}
      hole={hole}
      actions={<HoleActions {...{ stake, hole, task, fromA, fromB, misread, unsure, log }} />}
    >
      <h2>{headline(hole, task, assessed, plan.units)}</h2>
      {failed && <Problem text={`Stake ${hole}: not saved; free some space, then tap again.`} />}
      {!pulls.withinTape && (
        <Problem
          text={`Hole ${hole} is beyond the tape from one of the stakes: move A and B nearer, or use a longer tape.`}
        />
      )}
      <StakePullRow name="A" pull={fromA} how={how} live={shown.includes(fromA)} stake={stake} />
      <StakePullRow name="B" pull={fromB} how={how} live={shown.includes(fromB)} stake={stake} />
      {misread && <p>{unbroken(misread.text)}</p>}
      {task === 'shift' && <p>{unbroken(shiftWords(situation, assessed))}</p>}
      {task === 'unsure' && unsure.mind && <p>{unsure.mind}</p>}
      {(task === 'done' || task === 'unsure') && <Why judgement={assessed.staked.position} />}
      <PlanDrawing
        title={`${plan.name}, hole ${hole}`}
        units={plan.units}
        maxHeight={DRAWING_HEIGHT}
        {...drawnSite(situation, assessment.holes, { live: hole, lookOf: stakeLook, pulls: lines })}
      />
      {alone && task === 'drive' && <p>{aloneWords(how, unknownRise)}</p>}
      <WhereWords pulls={pulls} units={plan.units} sloping={how === 'slope' && unknownRise} />
      <HoldChoice value={how} onChange={setHow} />
      <HoleMore stake={stake} hole={hole} fromA={fromA} fromB={fromB} />
    </StakePage>
  );
}

function livePulls(task: HoleTask, fromA: PullToRead, fromB: PullToRead): PullToRead[] {
  if (task === 'from-a') return [fromA];
  if (task === 'from-b') return [fromB];
  return task === 'drive' || task === 'shift' ? [fromA, fromB] : [];
}

function headline(
  hole: string,
  task: HoleTask,
  { staked, dug }: HoleAssessment,
  units: Units,
): ComponentChildren {
  if (dug.at !== null) return `Hole ${hole} is dug: its stake has done its work`;
  switch (task) {
    case 'drive':
      return `Hole ${hole}: drive a stake where both tapes meet`;
    case 'from-a':
      return `Stake ${hole}: read the tape back from A`;
    case 'from-b':
      return `Stake ${hole}: read the tape back from B`;
    default:
      return <StakeVerdict hole={hole} position={staked.position} units={units} />;
  }
}

function StakeVerdict({
  hole,
  position,
  units,
}: {
  readonly hole: string;
  readonly position: Judgement;
  readonly units: Units;
}) {
  const { verdict, checked, error } = position;
  const off = verdict === 'out' && error !== null ? ` by ${small(error, units)}` : '';
  const guard = checked || verdict === 'unmeasured' ? '' : ', unchecked';
  return (
    <VerdictMark verdict={verdict} checked={checked}>
      Stake {hole} is {verdict}
      {off}
      {guard}
    </VerdictMark>
  );
}

const Why = ({ judgement }: { readonly judgement: Judgement }) =>
  judgement.why ? <p>{judgement.why}</p> : null;

interface StakePullRowProps {
  readonly name: 'A' | 'B';
  readonly pull: PullToRead;
  readonly how: 'level' | 'slope';
  readonly live: boolean;
  readonly stake: Stake;
}

function StakePullRow({ name, pull, how, live, stake }: StakePullRowProps) {
  const { situation } = useJobBook();
  const { plan } = situation;
  if (!plan || pull.expected === undefined) return null;
  const { from, to, expected } = pull;
  const done = stake.state.present.pull(pull.from.thing, pull.to.thing);
  const notes = [
    otherHeldWords(situation, { from, to, expected }, how),
    done && readWords(situation, done.body),
  ].filter((words) => words !== null);
  return (
    <PullRow
      live={live}
      from={`from ${name}’s nail`}
      {...heldTape(situation, { from, to, expected }, how)}
      units={plan.units}
      {...(notes.length > 0 ? { note: notes.join('; ') } : {})}
    />
  );
}

interface WhereWordsProps {
  readonly pulls: HolePulls;
  readonly units: Units;
  readonly sloping: boolean;
}

function WhereWords({ pulls, units, sloping }: WhereWordsProps) {
  return (
    <>
      <p>
        {sideWords(pulls)} {unbroken(crossingWords(pulls.crossing, units))}
      </p>
      <p>{unbroken(stationWords(pulls, units))}</p>
      {sloping && <p>{unbroken(slopeWords(Math.max(pulls.fromA, pulls.fromB), units))}</p>}
    </>
  );
}
