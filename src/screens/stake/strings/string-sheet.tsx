import { useState } from 'preact/hooks';
import { add, distance, scale, subtract, type Vec } from '../../../geometry/point.ts';
import { type Length, roundedLength } from '../../../job/length.ts';
import type { JobView } from '../../../judge/view.ts';
import { wayWords } from '../../../judge/words.ts';
import { readingOn } from '../../../measure/index.ts';
import { faceHalf } from '../../../stakeout/string-face.ts';
import type { LaidString } from '../../../stakeout/string-types.ts';
import { forFaces } from '../../../stakeout/strings.ts';
import { Button, ChoiceField, LengthField, PlanDrawing, Problem, PullRow, Sheet } from '../../../ui/index.ts';
import { drawnSite } from '../../drawn-site.ts';
import { HoldChoice } from '../../hold-choice.tsx';
import { useJobBook } from '../../job-book.ts';
import { PullFlow, type PullToRead } from '../../pull-flow.tsx';
import { heldWords } from '../../rise-words.ts';
import { useHold } from '../../use-hold.ts';
import { useLog } from '../../use-log.ts';
import { drawnString } from './drawn-strings.ts';
import { NailAction, NailTapes } from './nail-steps.tsx';
import { OnStringFlow } from './on-string-flow.tsx';
import { StringMarks } from './string-marks.tsx';
import { nailDoubtWords, nailGroundWords, sagWords, standsForWords, stringName } from './string-words.ts';
import { type JobStrings, nailTask, nailThing, presentIn } from './strings-of.ts';

export interface StringSheetProps {
  readonly view: JobView;
  readonly strings: JobStrings;
  readonly string: LaidString;
  readonly onClose: () => void;
}

/** What the string is for: centres, or the faces on one of its sides as one walks from its first nail. */
type For = 'centres' | 'left' | 'right';

/** Room for the figures above it and the main button below, pixels. */
const DRAWING_HEIGHT = 200;

/** One string: drive its two nails, then find each hole's mark along it. */
export function StringSheet({ view, strings, string, onClose }: StringSheetProps) {
  const { situation, assessment } = useJobBook();
  const { units } = view.plan;
  const [what, setWhat] = useState<For>('centres');
  const [gap, setGap] = useState<Length>(() => usualGap(units));
  const [pull, setPull] = useState<PullToRead | null>(null);
  const [mark, setMark] = useState<{ readonly hole: string; readonly at: number } | null>(null);
  const [how, setHow] = useHold();
  const log = useLog();
  const shown = standingFor(string, what, gap.m, strings);
  const present = presentIn(situation);
  const nails = shown.nails.map((nail) => {
    const thing = nailThing(nail);
    return { nail, thing, task: nailTask(situation, present, thing, nail) };
  });
  const next = nails.find(({ task }) => task !== 'done');
  const against = shown.nails
    .map((nail) => nailGroundWords(nail, strings.asked))
    .filter((words) => words !== null);
  const doubt = next && nailDoubtWords(next.nail, shown, units, situation.inHand);
  const [from, to] = nails.map(({ thing }) => thing);
  if (pull) return <PullFlow pull={pull} how={how} onClose={() => setPull(null)} />;
  if (mark && from && to)
    return (
      <OnStringFlow {...{ from, to }} hole={mark.hole} expected={mark.at} onClose={() => setMark(null)} />
    );
  return (
    <Sheet
      title={stringName(string)}
      onClose={onClose}
      actions={
        next && <NailAction key={`${next.nail.label} ${next.task}`} {...next} log={log} onPull={setPull} />
      }
    >
      <p>
        <strong>{standsForWords(shown, view.ground)}</strong>
      </p>
      {against.map((text) => (
        <Problem key={text} text={text} />
      ))}
      {next ? <NailTapes {...next} /> : <StringMarks view={view} string={shown} onRead={setMark} />}
      {doubt && <p>{doubt}</p>}
      <PlanDrawing
        title={`${view.plan.name}, string ${string.label}`}
        units={units}
        maxHeight={DRAWING_HEIGHT}
        {...drawnSite(situation, assessment.holes, { pulls: [drawnString(shown, 'live')] })}
        references={shown.nails.map(({ label, site }, k) => ({
          label,
          place: site,
          awayFrom: shown.nails[1 - k]!.site,
        }))}
      />
      {next && <HoldChoice value={how} onChange={setHow} />}
      <ForField {...{ view, strings, string, what }} onChange={setWhat} />
      {what !== 'centres' && (
        <LengthField
          label="Gap between string and face"
          value={gap}
          units={units}
          bounds={GAP_BOUNDS}
          onChange={setGap}
        />
      )}
      {next && <StringMarks view={view} string={shown} onRead={null} />}
      <PullRow
        from="Nail to nail"
        held={`${shown.nails[0].label} to ${shown.nails[1].label}, ${heldWords(situation, 'level')}`}
        m={readingOn(situation.inHand, shown.length)}
        units={units}
      />
      <p>{sagWords(shown, units)}</p>
      {nails.some(({ task }) => task !== 'drive') && next === undefined && (
        <Button onPress={() => setPull({ from: nailEnd(from!), to: nailEnd(to!), expected: shown.length })}>
          Pull from nail to nail
        </Button>
      )}
    </Sheet>
  );
}

const nailEnd = (thing: ReturnType<typeof nailThing>) => ({ thing, touch: { at: 'nail' } }) as const;

/** No post may touch the string, or it pushes the string out for the next: an eighth of an inch, or 3 mm. */
const USUAL_GAP = 0.003175;
const usualGap = (units: JobView['plan']['units']): Length => roundedLength(USUAL_GAP, units);
/** A gap is no gap any more where a square would have to bridge it: six inches. */
const GAP_BOUNDS = { min: 0, max: 0.15, maxName: 'any gap that a rule can bridge' };

/** Unit vector square to a string, to the left of a walk from its first nail. */
function leftOf({ nails: [one, other] }: LaidString): Vec {
  const line = subtract(other.site, one.site);
  const run = distance(one.site, other.site);
  return { x: -line.y / run, y: line.x / run };
}

const holesOf = ({ marks }: LaidString, { asked }: JobStrings) =>
  asked.holes.filter(({ label }) => marks.some(({ hole }) => hole === label));

function halfOf(string: LaidString, strings: JobStrings): ReturnType<typeof faceHalf> {
  return faceHalf(holesOf(string, strings), subtract(string.nails[1].site, string.nails[0].site));
}

function standingFor(string: LaidString, what: For, gap: number, strings: JobStrings): LaidString {
  const half = halfOf(string, strings);
  if (what === 'centres' || typeof half !== 'number') return string;
  return forFaces(string, half, gap, scale(leftOf(string), what === 'left' ? 1 : -1), strings.asked);
}

interface ForFieldProps extends Pick<StringSheetProps, 'view' | 'strings' | 'string'> {
  readonly what: For;
  readonly onChange: (what: For) => void;
}

const NO_FACE = {
  turned: 'It cannot stand for faces: no face of these posts runs along it.',
  'sizes-differ': 'It cannot stand for faces: what it passes differs in size.',
} as const;

/** Centres or faces, and which faces, told by where they look. */
function ForField({ view, strings, string, what, onChange }: ForFieldProps) {
  const half = halfOf(string, strings);
  if (typeof half !== 'number') return <p>{NO_FACE[half]}</p>;
  const left = leftOf(string);
  const middle = scale(add(string.nails[0].site, string.nails[1].site), 1 / 2);
  const way = (aside: Vec) => `Faces ${wayWords(middle, aside, view.ground)}`;
  return (
    <ChoiceField
      label="The string stands for"
      value={what}
      choices={[
        { value: 'centres', label: 'Centres' },
        { value: 'left', label: way(left) },
        { value: 'right', label: way(scale(left, -1)) },
      ]}
      onChange={onChange}
    />
  );
}
