import { useState } from 'preact/hooks';
import type { EntryOf, PlumbRead, Side } from '../../job/entry-schema.ts';
import { type Length, lengthWords, roundedLength } from '../../job/length.ts';
import { sideName, thingName, turningOf } from '../../job/words.ts';
import { levelErrorWords, plumbReaderOf } from '../../judge/level-error.ts';
import { plumbDoubt } from '../../judge/plumb-belief.ts';
import type { JobView } from '../../judge/view.ts';
import { Keypad } from '../../ui/index.ts';
import { Amount, type Asked, type LevelRead } from './plumb-amount.tsx';
import { DoubtSheet, WaySheet } from './plumb-way-sheet.tsx';
import { useReading } from './use-reading.tsx';

type Plumb = EntryOf<'plumb'>['body'];

export interface PlumbFlowProps {
  readonly view: JobView;
  readonly hole: string;
  readonly side: Side;
  /** The plumb reading before this one, whose level and whose way of reading are taken to be the same; null before the first. */
  readonly last: Plumb | null;
  /** Called once it is on disk, or when the user turns back. */
  readonly onClose: () => void;
}

/**
 * Takes one plumb reading on one face: which way the top leans, and by how much over what length of level; on demand once more
 * with the level turned end for end. Logged as one entry. Back leads to the question before.
 */
export function PlumbFlow({ view, hole, side, last, onClose }: PlumbFlowProps) {
  const { save, notSaved } = useReading(onClose);
  const [over, setOver] = useState<Length | null>(last?.over ?? null);
  const [otherLevel, setOtherLevel] = useState(false);
  const [turning, setTurning] = useState(false);
  const [first, setFirst] = useState<LevelRead | null>(null);
  const [asked, setAsked] = useState<Asked>({ leans: null, by: last?.read?.by ?? 'gap', gapDraft: '' });
  // What was answered before the level was turned: Back leads there again, with all that was typed.
  const [upright, setUpright] = useState<Asked | null>(null);
  const unturned = () => {
    if (upright) setAsked(upright);
    setFirst(null);
  };
  if (notSaved) return notSaved;
  if (over === null || otherLevel)
    return (
      <Keypad
        title="Length of the level"
        units={view.plan.units}
        hint="The length along the post over which the gap is read: as a rule the whole level."
        bounds={LEVEL_LENGTHS}
        onDone={(length) => {
          setOver(length);
          setOtherLevel(false);
        }}
        onClose={over === null ? onClose : () => setOtherLevel(false)}
      />
    );
  const error = plumbReaderOf(view).errorOf(over.m);
  const take = (read: LevelRead) => {
    if (turning && !first) {
      setUpright(asked);
      setAsked((before) => ({ ...before, leans: null, gapDraft: '' }));
      return setFirst(read);
    }
    const mark = error && !turning ? { markUp: true as const } : {};
    const entry = first ? { ...first, turned: read } : { ...read, ...mark };
    return save({ kind: 'plumb', hole, side, over, ...entry });
  };
  return (
    <OneWay
      key={first ? 'turned' : 'first'}
      view={view}
      hole={hole}
      side={side}
      over={over}
      usual={last?.read ?? null}
      asked={asked}
      onAsked={(part) => setAsked((before) => ({ ...before, ...part }))}
      end={turning ? (first ? 'down' : 'up') : error ? 'up' : null}
      error={error && !turning ? levelErrorWords(view, error) : null}
      own={error && !turning ? error.slope : 0}
      onRead={take}
      onOtherLevel={() => setOtherLevel(true)}
      {...(turning ? {} : { onTurn: () => setTurning(true) })}
      onClose={first ? unturned : turning ? () => setTurning(false) : onClose}
    />
  );
}

/** Shorter than a torpedo level or longer than a plank level is a slip. */
const LEVEL_LENGTHS = { min: 0.15, max: 4, maxName: 'any level' };

interface OneWayProps extends Pick<PlumbFlowProps, 'view' | 'hole' | 'side' | 'onClose'> {
  readonly over: Length;
  /** How the level was read last; a gap when null. */
  readonly usual: PlumbRead | null;
  readonly asked: Asked;
  readonly onAsked: (part: Partial<Asked>) => void;
  /** Which way its marked end has to look; null where that is of no account. */
  readonly end: 'up' | 'down' | null;
  /** What the level is known to be wrong by, in words; and as it is taken off, out positive, metres per metre. */
  readonly error: string | null;
  readonly own: number;
  readonly onRead: (read: LevelRead) => unknown;
  readonly onOtherLevel: () => void;
  readonly onTurn?: () => void;
}

/** The level held one way: which way the top leans, then by how much, then a question back where that is hard to believe. */
function OneWay({
  view,
  hole,
  side,
  over,
  usual,
  asked,
  onAsked,
  own,
  onRead,
  onClose,
  ...way
}: OneWayProps) {
  const { units } = view.plan;
  const { leans } = asked;
  const [doubt, setDoubt] = useState<string | null>(null);
  const face = `the ${sideName(side, turningOf(view.plan, hole))} face of ${thingName({ kind: 'post', hole }, view.plan)}`;
  const doubtOf = (gap: number, leaning: Plumb['leans'], read?: PlumbRead) =>
    plumbDoubt(view, { hole, side, shown: ((leaning === 'in' ? -1 : 1) * gap) / over.m, own, read });
  const plumb: LevelRead = { offset: roundedLength(0, units), leans: 'none' };
  if (doubt)
    return (
      <DoubtSheet
        face={face}
        doubt={doubt}
        onKeep={() => void onRead(plumb)}
        onAgain={() => setDoubt(null)}
      />
    );
  if (leans === null)
    return (
      <WaySheet
        face={face}
        over={lengthWords(over)}
        {...way}
        onPlumb={() => {
          const question = doubtOf(0, 'none');
          if (question) setDoubt(question);
          else void onRead(plumb);
        }}
        onLeans={(leaning) => onAsked({ leans: leaning })}
        onClose={onClose}
      />
    );
  return (
    <Amount
      face={face}
      leans={leans}
      check={(gap, read) => doubtOf(gap, leans, read)}
      {...{ units, over, usual, asked, onAsked, onRead }}
    />
  );
}
