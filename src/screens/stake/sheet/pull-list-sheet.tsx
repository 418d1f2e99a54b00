import { useMemo, useState } from 'preact/hooks';
import type { Hold } from '../../../job/entry-schema.ts';
import type { ListedHole, ListedTape } from '../../../stakeout/index.ts';
import { Button, CheckField, Problem, PullRow, Sheet } from '../../../ui/index.ts';
import { unbroken } from '../../../ui/unbroken.ts';
import { HeightsButton } from '../../heights/heights-button.tsx';
import { HoldChoice } from '../../hold-choice.tsx';
import { useJobBook } from '../../job-book.ts';
import { More } from '../../more.tsx';
import { heldTape, levelTape, otherHeldWords } from '../../rise-words.ts';
import { useAlone } from '../../use-alone.ts';
import { useHold } from '../../use-hold.ts';
import { crossingWords } from '../hole-words.ts';
import {
  ALONE,
  HOOKED,
  isRiseUnknown,
  riseWords,
  sideOfLine,
  slopeAdvice,
  unknownRiseWords,
  wantsSecondHand,
} from './pull-list-words.ts';
import { pullOfTape, pullRows } from './pull-rows.ts';

export interface PullListSheetProps {
  readonly onClose: () => void;
  readonly onPaper: () => void;
}

/** So many holes at once; a plan of hundreds is shown whole when it is asked for. */
const FIRST = 40;

/** Every hole with what both tapes read, in the order of the work, large enough for arm's length. */
export function PullListSheet({ onClose, onPaper }: PullListSheetProps) {
  const { situation } = useJobBook();
  const [alone, setAlone] = useAlone();
  const [how, setHow] = useHold();
  const [all, setAll] = useState(false);
  const rows = useMemo(() => pullRows(situation, alone), [situation, alone]);
  const rise = riseWords(rows, alone);
  // Only advised: how the tape is held is of every pull of the job, not of this list alone.
  const advice = alone && how === 'level' ? slopeAdvice(rows) : null;
  const shown = all ? rows : rows.slice(0, FIRST);
  return (
    <Sheet
      title="Pull list"
      onClose={onClose}
      actions={
        <Button kind="main" onPress={onPaper}>
          Staking sheet for paper
        </Button>
      }
    >
      <p>{HOOKED}</p>
      <CheckField label="I work alone" value={alone} onChange={setAlone} />
      {alone && (
        <More label="How to pull alone">
          {ALONE.map((words) => (
            <p key={words}>{words}</p>
          ))}
        </More>
      )}
      <HoldChoice value={how} onChange={setHow} />
      {advice && <p>{advice}</p>}
      {rise && <p>{rise}</p>}
      {rows.some(isRiseUnknown) && <HeightsButton hole={null} />}
      {shown.map((row) => (
        <ListedHoleRows key={row.hole} row={row} how={how} alone={alone} />
      ))}
      {shown.length < rows.length && (
        <Button onPress={() => setAll(true)}>Show all {rows.length} holes</Button>
      )}
    </Sheet>
  );
}

interface ListedHoleRowsProps {
  readonly row: ListedHole;
  readonly how: Hold['how'];
  readonly alone: boolean;
}

function ListedHoleRows({ row, how, alone }: ListedHoleRowsProps) {
  const { situation, assessment } = useJobBook();
  const { plan } = situation;
  if (!plan) return null;
  const driven = assessment.holes.some(({ hole, staked }) => hole === row.hole && staked.driven);
  const title = `Hole ${row.hole}, ${sideOfLine(row)}`;
  return (
    <section aria-label={title}>
      <h3>
        {title}
        {driven && ', driven'}
      </h3>
      {!row.withinTape && <Problem text={`Hole ${row.hole} is beyond the tape from one of the stakes.`} />}
      {row.tapes.map((tape) => (
        <ListedTapeRow key={tape.from} hole={row.hole} tape={tape} how={how} alone={alone} live={!driven} />
      ))}
      <p>{unbroken(crossingWords(row.crossing, plan.units))}</p>
    </section>
  );
}

interface ListedTapeRowProps {
  readonly hole: string;
  readonly tape: ListedTape;
  readonly how: Hold['how'];
  readonly alone: boolean;
  readonly live: boolean;
}

function ListedTapeRow({ hole, tape, how, alone, live }: ListedTapeRowProps) {
  const { situation } = useJobBook();
  const { plan } = situation;
  if (!plan) return null;
  const pull = pullOfTape(hole, tape);
  const notes = [
    otherHeldWords(situation, pull, how),
    alone && wantsSecondHand(tape, how) ? 'wants a second hand' : null,
  ].filter((words) => words !== null);
  if (how !== 'level' && tape.slope === null)
    return (
      <p>{unbroken(unknownRiseWords(tape.from, levelTape(situation, tape.level).m, plan.units, notes))}</p>
    );
  return (
    <PullRow
      live={live}
      from={`from ${tape.from}’s nail`}
      {...heldTape(situation, pull, how)}
      units={plan.units}
      {...(notes.length > 0 ? { note: notes.join('; ') } : {})}
    />
  );
}
