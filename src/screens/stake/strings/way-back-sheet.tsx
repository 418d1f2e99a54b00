import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { PullEnd, Thing } from '../../../job/entry-schema.ts';
import { thingKey } from '../../../job/log.ts';
import { endName, thingName } from '../../../job/words.ts';
import type { JobView } from '../../../judge/view.ts';
import { type ReadString, type WaysBack, waysBack } from '../../../judge/ways-back.ts';
import { capital, small } from '../../../judge/words.ts';
import { readingOn } from '../../../measure/index.ts';
import type { NoTapes, RefindPull, StringBack, TapesBack } from '../../../stakeout/refind-types.ts';
import { Button, CheckField, PlanDrawing, Problem, PullRow, Sheet } from '../../../ui/index.ts';
import { drawnSite } from '../../drawn-site.ts';
import { HoldChoice } from '../../hold-choice.tsx';
import { useJobBook } from '../../job-book.ts';
import { More } from '../../more.tsx';
import { heldTape, heldWords } from '../../rise-words.ts';
import { useHold } from '../../use-hold.ts';

export interface WayBackSheetProps {
  readonly view: JobView;
  readonly hole: string | null;
  readonly onClose: () => void;
}

/** How a hole's planned centre is found again from what still stands, also without A or B. */
export function WayBackSheet({ view, hole, onClose }: WayBackSheetProps) {
  const [chosen, setChosen] = useState(hole);
  const [gone, setGone] = useState<ReadonlySet<string>>(new Set());
  const labels = [...view.sited.keys()];
  const ways = chosen === null ? null : waysBack(view, chosen, gone);
  if (chosen === null || !ways)
    return (
      <Sheet title="Which centre?" onClose={onClose}>
        {labels.map((label) => (
          <Button key={label} onPress={() => setChosen(label)}>
            Hole {label}
          </Button>
        ))}
      </Sheet>
    );
  return (
    <Sheet title={`Find the centre of hole ${chosen}`} onClose={onClose}>
      {ways.tapes ? (
        <Tapes view={view} hole={chosen} tapes={ways.tapes} />
      ) : (
        <Problem text={noTapesWords(chosen, ways.noTapes ?? 'nothing-stands')} />
      )}
      <Strings view={view} hole={chosen} ways={ways} />
      <Gone view={view} ways={ways} gone={gone} onGone={setGone} />
      <Button onPress={() => setChosen(null)}>Another hole</Button>
    </Sheet>
  );
}

const DEGREES = 180 / Math.PI;

interface TapesProps {
  readonly view: JobView;
  readonly hole: string;
  readonly tapes: TapesBack;
}

function Tapes({ view, hole, tapes }: TapesProps) {
  const { situation, assessment } = useJobBook();
  const [how, setHow] = useHold();
  const { units } = view.plan;
  const site = view.sited.get(hole)?.site;
  const [one, other] = tapes.pulls.map(({ from }) => thingName(from.thing, view.plan));
  const to: PullEnd = { thing: { kind: 'hole-stake', hole }, touch: { at: 'centre' } };
  const row = (pull: RefindPull, live: boolean) => (
    <PullRow
      key={thingKey(pull.from.thing)}
      live={live}
      from={`from ${endName(pull.from, view.plan)}`}
      {...heldTape(situation, { from: pull.from, to, expected: pull.expected }, how)}
      units={units}
    />
  );
  return (
    <>
      {tapes.pulls.map((pull) => row(pull, true))}
      <p>
        The centre lies on the {tapes.side} as you walk from {one} to {other}. The tapes cross at{' '}
        {Math.round(tapes.angle * DEGREES)}°: it is found to {small(tapes.error, units)}.
      </p>
      {tapes.proof ? (
        <>
          <p>Prove it: a third tape must read</p>
          {row(tapes.proof, false)}
        </>
      ) : (
        <p>Nothing else in reach proves it: a misread tape would not show. Read both twice.</p>
      )}
      <PlanDrawing
        title={`${view.plan.name}, hole ${hole}`}
        units={units}
        {...drawnSite(situation, assessment.holes, {
          live: hole,
          pulls: site
            ? tapes.pulls.flatMap(({ from }) => {
                const place = view.points.get(thingKey(from.thing))?.fix?.place;
                return place
                  ? [
                      {
                        from: place,
                        to: site,
                        kind: 'live' as const,
                        words: `${thingName(from.thing, view.plan)} to hole ${hole}`,
                      },
                    ]
                  : [];
              })
            : [],
        })}
      />
      <HoldChoice value={how} onChange={setHow} />
    </>
  );
}

interface StringsProps {
  readonly view: JobView;
  readonly hole: string;
  readonly ways: WaysBack;
}

/** Strings that were read to its stake, and the best one by what is measured. */
function Strings({ view, ways }: StringsProps) {
  const { string, read } = ways;
  const { units } = view.plan;
  if (!string && read.length === 0) return null;
  return (
    <>
      <h3>By a string</h3>
      {read.map((each) => (
        <StringRow key={thingKey(each.from)} view={view} back={asBack(each)}>
          As read before the hole was dug.
        </StringRow>
      ))}
      {string && read.every(({ from }) => thingKey(from) !== thingKey(string.from)) && (
        <StringRow view={view} back={string}>
          It is found to {small(string.error, units)}.
        </StringRow>
      )}
    </>
  );
}

/** Nearer to a string than this, a centre is on it: the thickness of a pencil mark. */
const ON_STRING = 0.003;

const asBack = ({ from, to, station, offset }: ReadString): Omit<StringBack, 'how' | 'error'> => ({
  from,
  to,
  station,
  offset: Math.abs(offset),
  side: Math.abs(offset) < ON_STRING ? 'on' : offset > 0 ? 'left' : 'right',
});

interface StringRowProps {
  readonly view: JobView;
  readonly back: Omit<StringBack, 'how' | 'error'>;
  readonly children: ComponentChildren;
}

function StringRow({ view, back, children }: StringRowProps) {
  const { units } = view.plan;
  const [from, to] = [back.from, back.to].map((thing) => thingName(thing, view.plan));
  return (
    <>
      <PullRow
        from={`string ${from} to ${to}, from ${from}`}
        held={`along it, ${heldWords(view, 'level')}`}
        m={readingOn(view.inHand, back.station)}
        units={units}
      />
      <p>
        {back.side === 'on'
          ? 'The centre lies on the string.'
          : `The centre lies ${small(back.offset, units)} square off it, to the ${back.side} as you walk from ${from} to ${to}.`}{' '}
        {children}
      </p>
    </>
  );
}

interface GoneProps {
  readonly view: JobView;
  readonly ways: WaysBack;
  readonly gone: ReadonlySet<string>;
  readonly onGone: (gone: ReadonlySet<string>) => void;
}

/** What was knocked or pulled out since: nothing is pulled from it any more. */
function Gone({ view, ways, gone, onGone }: GoneProps) {
  const toggle = (thing: Thing) => {
    const next = new Set(gone);
    if (!next.delete(thingKey(thing))) next.add(thingKey(thing));
    onGone(next);
  };
  return (
    <More label="Something is gone or was knocked">
      {ways.standing.map((thing) => (
        <CheckField
          key={thingKey(thing)}
          label={`${capital(thingName(thing, view.plan))} is gone`}
          value={gone.has(thingKey(thing))}
          onChange={() => toggle(thing)}
        />
      ))}
    </More>
  );
}

const WHY_NO_TAPES: Record<NoTapes, string> = {
  'nothing-stands': 'nothing that was measured stands any more',
  'one-stands': 'only one thing that was measured still stands, and one tape finds no place',
  'beyond-tape': 'what still stands is beyond the tape',
  blocked: 'posts stand in the way of all tapes but one',
  'in-line': 'what still stands lies nearly in one line with it, where tapes cross too flat',
};

const noTapesWords = (hole: string, why: NoTapes): string =>
  `No two tapes find the centre of hole ${hole}: ${WHY_NO_TAPES[why]}. Drive a further stake and pull to it from what stands, or use a string.`;
