import type { Body, Thing } from '../../job/entry-schema.ts';
import { endName } from '../../job/words.ts';
import { stakeName } from '../../judge/moved-words.ts';
import type { MovedAssessment, MovedStake } from '../../judge/types.ts';
import { capital, listWords } from '../../judge/words.ts';
import { Button, ButtonRow, PlanDrawing, Problem, PullRow } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { drawnPull, drawnSite } from '../drawn-site.ts';
import { useJobBook } from '../job-book.ts';
import { LoggedEntry } from '../logged-entry.tsx';
import { More } from '../more.tsx';
import { useOpenPull } from '../open-pull.ts';
import { heldTape, levelTape } from '../rise-words.ts';
import { useHold } from '../use-hold.ts';
import { useLog } from '../use-log.ts';
import { StakePage } from './stake-page.tsx';
import type { Stake } from './use-stake.ts';

export interface MovedCardProps {
  readonly stake: Stake;
  readonly moved: MovedAssessment;
  /** The user goes on without settling it. */
  readonly onLater: () => void;
}

/** A stake seems to have moved: pulls that tell which, or what to do with the one that did. */
export function MovedCard(props: MovedCardProps) {
  const { stake, moved, onLater } = props;
  const { situation } = useJobBook();
  const openPull = useOpenPull();
  const [how] = useHold();
  const settle = useSettle();
  const { plan } = situation;
  const [first, second] = moved.suspects;
  if (!plan || !first) return null;
  const [tell] = moved.tells;
  const known = second === undefined && tell === undefined;
  return (
    <StakePage
      state={stake.state}
      about={first.since}
      actions={
        <>
          <ButtonRow>
            {known && <Button onPress={() => void settle.drivenBack(first)}>I drove it back</Button>}
            <Button onPress={onLater}>Later</Button>
          </ButtonRow>
          {known ? (
            <Button kind="main" onPress={() => void settle.moved(first)}>
              Go on from where it is now
            </Button>
          ) : (
            <Button kind="main" onPress={() => openPull(tell ?? againOf(situation, first))}>
              {tell ? 'Read the tape' : 'Read that pull again'}
            </Button>
          )}
        </>
      }
    >
      <h2>{headOf(moved)}</h2>
      {settle.failed && <Problem text="Not saved; free some space, then tap again." />}
      <p>{unbroken(moved.text)}</p>
      {moved.tells.map((pull) => (
        <PullRow
          key={pull.text}
          live={pull === tell}
          from={`from ${endName(pull.from, plan)}`}
          to={`to ${endName(pull.to, plan)}`}
          {...heldTape(situation, pull, how)}
          units={plan.units}
        />
      ))}
      {known && <WayBack suspect={first} />}
      <MovedDrawing moved={moved} />
      <Other moved={moved} known={known} settle={settle} />
    </StakePage>
  );
}

function headOf({ suspects, tells, orMisread }: MovedAssessment): string {
  const names = listWords(
    suspects.map(({ stake }) => stakeName(stake)),
    'or',
  );
  if (suspects.length > 1)
    return tells.length > 0 ? `Which moved: ${names}?` : `${capital(names)} seems to have moved`;
  return orMisread ? `${capital(names)} may have moved` : `${capital(names)} has moved`;
}

/** What the tapes read when the stake stands where it stood. */
function WayBack({ suspect: { putBack } }: { readonly suspect: MovedStake }) {
  const { situation } = useJobBook();
  const { plan } = situation;
  if (!plan || !putBack) return null;
  return (
    <section aria-label="Where it stood">
      <p>{putBack.words}</p>
      {putBack.readings.map(({ from, to, reading }) => (
        <PullRow
          key={endName(from, plan)}
          live
          from={`from ${endName(from, plan)}`}
          to={`to ${endName(to, plan)}`}
          {...levelTape(situation, reading)}
          units={plan.units}
        />
      ))}
    </section>
  );
}

function MovedDrawing({ moved }: { readonly moved: MovedAssessment }) {
  const { situation, assessment } = useJobBook();
  const wanted =
    moved.tells.length > 0 ? moved.tells : moved.suspects.flatMap(({ putBack }) => putBack?.readings ?? []);
  return (
    <PlanDrawing
      title={`${situation.plan?.name ?? ''}, what to pull`}
      units={situation.plan?.units ?? 'm'}
      {...drawnSite(situation, assessment.holes, {
        pulls: wanted.flatMap((pull) => drawnPull(situation, pull, 'live') ?? []),
      })}
    />
  );
}

interface OtherProps {
  readonly moved: MovedAssessment;
  readonly known: boolean;
  readonly settle: Settle;
}

/** Whoever saw it happen need not pull; and what was misread is struck. */
function Other({ moved, known, settle }: OtherProps) {
  const { situation } = useJobBook();
  const since = new Set(moved.suspects.map((suspect) => suspect.since));
  const readings = situation.entries.filter(({ id }) => since.has(id));
  return (
    <More label="I saw what happened">
      {!known &&
        moved.suspects.map((suspect) => (
          <Button key={stakeName(suspect.stake)} onPress={() => void settle.moved(suspect)}>
            {capital(stakeName(suspect.stake))} moved: go on from where it is now
          </Button>
        ))}
      <p>A pull that was misread is struck, and made again:</p>
      <ul>
        {readings.map((entry) => (
          <LoggedEntry key={entry.id} entry={entry} />
        ))}
      </ul>
    </More>
  );
}

interface Settle {
  readonly failed: boolean;
  moved(suspect: MovedStake): Promise<boolean>;
  drivenBack(suspect: MovedStake): Promise<boolean>;
}

/**
 * What is logged: that the stake moved, before the pull that found it elsewhere, so that the pulls since belong to where it
 * stands now; and where it was driven back, that it was driven once more, so that it is pulled to anew.
 */
function useSettle(): Settle {
  const { failed, log } = useLog();
  const moved = ({ stake, since }: MovedStake) => log(standOf(stake, 'moved', since));
  const drivenBack = async (suspect: MovedStake) =>
    (await moved(suspect)) && (await log(standOf(suspect.stake, 'driven')));
  return { failed, moved, drivenBack };
}

const standOf = (thing: Thing, event: 'moved' | 'driven', since?: string): Body => ({
  kind: 'stand',
  thing,
  event,
  ...(since === undefined ? {} : { since }),
});

/** The pull that found it elsewhere, once more. */
function againOf({ entries }: ReturnType<typeof useJobBook>['situation'], { since, stake }: MovedStake) {
  const found = entries.find(({ id }) => id === since)?.body;
  if (found?.kind === 'pull') return { from: found.from, to: found.to };
  const end = { thing: stake, touch: { at: 'nail' } } as const;
  return { from: end, to: end };
}
