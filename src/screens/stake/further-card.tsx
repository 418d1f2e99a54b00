import { distance } from '../../geometry/point.ts';
import { ofKind, thingKey } from '../../job/log.ts';
import { stakeName } from '../../judge/moved-words.ts';
import { capital } from '../../judge/words.ts';
import type { SitedReference } from '../../plan/hole.ts';
import { Button, ButtonRow, PlanDrawing, Problem, PullRow } from '../../ui/index.ts';
import { drawnPull, drawnSite, stakePlaces } from '../drawn-site.ts';
import { HoldChoice } from '../hold-choice.tsx';
import { useJobBook } from '../job-book.ts';
import { useOpenPull } from '../open-pull.ts';
import { heldTape } from '../rise-words.ts';
import { useHold } from '../use-hold.ts';
import { useLog } from '../use-log.ts';
import { StakePage } from './stake-page.tsx';
import { nailPull } from './stake-pulls.ts';
import { type FurtherTask, STAKE_A, STAKE_B } from './stake-step.ts';
import type { Stake } from './use-stake.ts';

export interface FurtherCardProps {
  readonly stake: Stake;
  readonly reference: SitedReference;
  readonly task: FurtherTask;
}

/** Drive a further stake at its two tape lengths, then read both back: from then on it can be pulled from. */
export function FurtherCard({ stake, reference, task }: FurtherCardProps) {
  const { situation, assessment, strike } = useJobBook();
  const openPull = useOpenPull();
  const [how, setHow] = useHold();
  const { failed, log } = useLog();
  const { plan } = situation;
  const places = stakePlaces(situation);
  if (!plan || !places) return null;
  const name = stakeName(reference.thing);
  const fromA = nailPull(STAKE_A, reference.thing, distance(places.a, reference.site));
  const fromB = nailPull(STAKE_B, reference.thing, distance(places.b, reference.site));
  const wanted = task === 'from-a' ? [fromA] : task === 'from-b' ? [fromB] : [fromA, fromB];
  const doWithout = () => {
    const entry = ofKind(situation.entries, 'reference').findLast(
      ({ body }) => thingKey(body.thing) === thingKey(reference.thing),
    );
    if (entry) void strike(entry.id, `Done without ${name}`);
  };
  const driven = () => void log({ kind: 'stand', thing: reference.thing, event: 'driven' });
  return (
    <StakePage
      state={stake.state}
      actions={
        <>
          <ButtonRow>
            <Button onPress={doWithout}>Do without {name}</Button>
          </ButtonRow>
          {task === 'drive' ? (
            <Button kind="main" onPress={driven}>
              {capital(name)} driven
            </Button>
          ) : (
            <Button kind="main" onPress={() => openPull(wanted[0]!)}>
              Read the tape from {task === 'from-a' ? 'A' : 'B'}
            </Button>
          )}
        </>
      }
    >
      <h2>{headOf(reference, task)}</h2>
      {failed && <Problem text={`${capital(name)}: not saved; free some space, then tap again.`} />}
      {wanted.map((pull) => (
        <PullRow
          key={thingKey(pull.from.thing)}
          live
          from={`from ${pull.from.thing === STAKE_A ? 'A’s' : 'B’s'} nail`}
          to={task === 'drive' ? `to ${name}` : `to ${name}’s nail`}
          {...heldTape(situation, pull, task === 'drive' ? 'level' : how)}
          units={plan.units}
        />
      ))}
      <p>
        {task === 'drive'
          ? 'It need not stand to the mark: where it stands is worked out from what you read. What counts is that it stands fast, where nobody walks.'
          : 'Planned. Read what is really there: nail to nail.'}
      </p>
      <PlanDrawing
        title={`${plan.name}, ${name}`}
        units={plan.units}
        {...drawnSite(situation, assessment.holes, {
          pulls: wanted.flatMap((pull) => drawnPull(situation, pull, 'live') ?? []),
        })}
      />
      {task !== 'drive' && <HoldChoice value={how} onChange={setHow} />}
    </StakePage>
  );
}

function headOf({ thing }: SitedReference, task: FurtherTask): string {
  const name = stakeName(thing);
  if (task !== 'drive') return `Pull the tape from ${task === 'from-a' ? 'A' : 'B'} to ${name}`;
  return thing.kind === 'nail'
    ? `Drive ${name} into something that stands fast`
    : `Drive ${name}, with a nail in its top`;
}
