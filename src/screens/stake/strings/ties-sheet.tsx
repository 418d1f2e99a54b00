import { useState } from 'preact/hooks';
import { recordedTies, TIES_WANTED, tiesWords } from '../../../judge/recorded-ties.ts';
import { type JobView, stakeOf, stands } from '../../../judge/view.ts';
import { capital, small } from '../../../judge/words.ts';
import type { OffsetPair } from '../../../stakeout/tie-offsets.ts';
import { tiesOf } from '../../../stakeout/ties.ts';
import { Button, type DrawnPull, PlanDrawing, PullRow, Sheet } from '../../../ui/index.ts';
import { unbroken } from '../../../ui/unbroken.ts';
import { drawnSite } from '../../drawn-site.ts';
import { useJobBook } from '../../job-book.ts';
import { PullFlow, type PullToRead } from '../../pull-flow.tsx';
import { levelTape } from '../../rise-words.ts';
import { useHold } from '../../use-hold.ts';
import { useLog } from '../../use-log.ts';
import { drawnNear } from './drawn-strings.ts';
import { NailAction } from './nail-steps.tsx';
import { OnStringFlow } from './on-string-flow.tsx';
import { crossingWords, offsetWords } from './string-words.ts';
import { type JobStrings, nailTask, offsetStake, presentIn } from './strings-of.ts';
import type { OpenStrings } from './strings-props.ts';

export interface TiesSheetProps {
  readonly view: JobView;
  readonly strings: JobStrings;
  readonly hole: string;
  readonly onOpen: (open: OpenStrings) => void;
  readonly onClose: () => void;
}

/** Room for what is said above it, pixels. */
const DRAWING_HEIGHT = 260;
/** So far round the hole is drawn: its offset stakes and its neighbours, metres. */
const TIES_REACH = 2.6;

/** The ways back to one hole, to be made while its stake stands: what is read of them, and how to make more. */
export function TiesSheet({ view, strings, hole, onOpen, onClose }: TiesSheetProps) {
  const { situation, assessment } = useJobBook();
  const [pull, setPull] = useState<PullToRead | null>(null);
  const [reading, setReading] = useState<OffsetPair | null>(null);
  const [how] = useHold();
  const log = useLog();
  const sited = view.sited.get(hole);
  if (!sited) return null;
  const ties = tiesOf(sited, strings.asked, strings.plan);
  const read = recordedTies(view, hole);
  const { units } = view.plan;
  if (pull) return <PullFlow pull={pull} how={how} onClose={() => setPull(null)} />;
  if (reading) {
    const [from, to] = reading.stakes.map(offsetStake);
    return (
      <OnStringFlow
        {...{ from: from!, to: to!, hole }}
        expected={reading.away}
        onClose={() => setReading(null)}
      />
    );
  }
  const mayRead = stands(view, stakeOf(hole)) && !view.dugHoles.has(hole);
  const over = strings.plan.strings.filter(({ marks }) => marks.some((mark) => mark.hole === hole));
  const crossing = ties.strings;
  return (
    <Sheet title={`Ties of hole ${hole}`} onClose={onClose}>
      <p>
        <strong>{readWords(read.length)}</strong>
        {read.length > 0 && ` ${capital(tiesWords(read))}.`}
      </p>
      {!mayRead && (
        <p>
          {view.dugHoles.has(hole)
            ? 'The hole is dug: its stake is gone.'
            : 'Drive its stake first: a tie is read to the nail in it.'}
        </p>
      )}
      <PlanDrawing
        title={`${view.plan.name}, ties of hole ${hole}`}
        units={units}
        maxHeight={DRAWING_HEIGHT}
        {...drawnSite(situation, assessment.holes, {
          live: hole,
          pulls: [
            ...over
              .filter(({ label }) => crossing?.strings.includes(label))
              .map((string) => drawnNear(string, sited.site, TIES_REACH)),
            ...ties.offsets.map(inLine),
          ],
        })}
        references={ties.offsets.flatMap(({ stakes }) =>
          stakes.map(({ label, site }) => ({ label: label.slice(-1), place: site, awayFrom: sited.site })),
        )}
        focus={{ at: sited.site, reach: TIES_REACH }}
      />
      {ties.offsets.map((pair) => (
        <OffsetPairPart
          key={pair.stakes[0].label}
          {...{ view, pair, hole, log, mayRead }}
          onPull={setPull}
          onRead={() => setReading(pair)}
        />
      ))}
      <h3>Strings</h3>
      {crossing && <p>{crossingWords(crossing)} Read the nail in its stake along each: either is a tie.</p>}
      {over.map(({ label }) => (
        <Button key={label} onPress={() => onOpen({ at: 'string', label })}>
          String {label}
        </Button>
      ))}
      <h3>Tapes from A and B</h3>
      <p>
        {ties.tapes
          ? `Both tapes, as read to its stake, find it again while A and B stand: to ${small(ties.tapes.crossing.drms, units)}. That is one tie.`
          : 'Tapes from A and B do not reach here, or cross too flat: they are no tie.'}
      </p>
    </Sheet>
  );
}

/** Two offset stakes lie in one line with the hole, and the drawing shows it. */
const inLine = ({ stakes: [one, other] }: OffsetPair): DrawnPull => ({
  from: one.site,
  to: other.site,
  kind: 'check',
  words: `${one.label} and ${other.label} in line with the hole`,
});

const readWords = (count: number): string =>
  count >= TIES_WANTED
    ? `${count} ties are read: this hole may be dug and found again.`
    : `${count === 0 ? 'No tie is' : 'One tie is'} read; two are wanted, for one may be knocked.`;

interface OffsetPairPartProps {
  readonly view: JobView;
  readonly pair: OffsetPair;
  readonly hole: string;
  readonly log: ReturnType<typeof useLog>;
  readonly mayRead: boolean;
  readonly onPull: (pull: PullToRead) => void;
  readonly onRead: () => void;
}

/** Two offset stakes in line with the hole: where they go, and one reading that makes them a tie. */
function OffsetPairPart({ view, pair, hole, log, mayRead, onPull, onRead }: OffsetPairPartProps) {
  const { situation } = useJobBook();
  const present = presentIn(situation);
  const stakes = pair.stakes.map((nail) => {
    const thing = offsetStake(nail);
    return { nail, thing, task: nailTask(situation, present, thing, nail) };
  });
  const undriven = stakes.find(({ task }) => task === 'drive');
  const [one, other] = pair.stakes;
  const site = view.sited.get(hole);
  return (
    <section>
      <h3>
        Offset stakes {one.label} and {other.label}
      </h3>
      {site && <p>{unbroken(offsetWords(pair, site, view.ground, situation.inHand))}</p>}
      <PullRow
        live
        from={`nail in stake ${hole}`}
        to={`to ${one.label}`}
        {...levelTape(situation, pair.away)}
        units={view.plan.units}
      />
      <p>
        Keep them in line: stretch a string from {one.label} to {other.label} over the nail. Throw the spoil
        elsewhere.
      </p>
      {mayRead && undriven && <NailAction {...undriven} kind="plain" log={log} onPull={onPull} />}
      {mayRead && !undriven && (
        <Button onPress={onRead}>
          Read {one.label} to the nail in stake {hole}: a tie
        </Button>
      )}
    </section>
  );
}
