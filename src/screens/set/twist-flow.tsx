import { useState } from 'preact/hooks';
import { type EntryOf, type PullEnd, SIDES, type Side } from '../../job/entry-schema.ts';
import type { Length } from '../../job/length.ts';
import { endName, sideName, thingName, touchName, turningOf } from '../../job/words.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { faceToward } from '../../measure/twist.ts';
import { Button, Keypad, Sheet } from '../../ui/index.ts';
import { StringEndsSheet } from '../stake/string-ends-sheet.tsx';
import { useReading } from './use-reading.tsx';

type From = EntryOf<'twist'>['body']['from'];

export interface TwistFlowProps {
  readonly view: JobView;
  readonly hole: string;
  /** Called once it is on disk, or when the user turns back. */
  readonly onClose: () => void;
}

/** Takes how a square post is turned: off what, then to both edges of the face that looks there. Logged as one entry. */
export function TwistFlow({ view, hole, onClose }: TwistFlowProps) {
  const { save, notSaved } = useReading(onClose);
  const [from, setFrom] = useState<From | 'string' | null>(null);
  const [first, setFirst] = useState<Length | null>(null);
  // As typed: Back leads to the edge before with what was read there.
  const [draft, setDraft] = useState('');
  const sited = view.sited.get(hole);
  if (sited?.section.kind !== 'post') return null;
  if (notSaved) return notSaved;
  if (from === null) return <OffWhatSheet view={view} hole={hole} onPick={setFrom} onClose={onClose} />;
  if (from === 'string')
    return (
      <StringEndsSheet
        of={postOf(hole)}
        onPick={(ends) => setFrom({ by: 'string', ...ends })}
        onClose={() => setFrom(null)}
      />
    );
  const side = faceToward(sited, from, view.measured, [...view.sited.values()]);
  const { section } = sited;
  const width = side === 'front' || side === 'back' ? section.width : section.depth;
  const edge = (corner: Side) => touchName({ at: 'corner', side: corner }, turningOf(view.plan, hole));
  const [anticlockwise, clockwise] = [side, SIDES[(SIDES.indexOf(side) + SIDES.length - 1) % SIDES.length]!];
  const common = { units: view.plan.units, hint: hintFor(view, hole, side, from) } as const;
  if (!first)
    return (
      <Keypad
        {...common}
        title={`To ${edge(anticlockwise)}`}
        bounds={{ max: view.plan.instruments.tapeLength.m, maxName: 'the tape’s length' }}
        draft={draft}
        onDraft={setDraft}
        onDone={setFirst}
        onClose={() => setFrom(null)}
      />
    );
  return (
    <Keypad
      {...common}
      title={`To ${edge(clockwise)}`}
      bounds={{
        min: Math.max(0, first.m - width),
        minName: 'the other edge allows on a face so wide',
        max: first.m + width,
        maxName: 'the other edge allows on a face so wide',
      }}
      expected={first.m}
      onDone={(second) => save({ kind: 'twist', hole, side, from, anticlockwise: first, clockwise: second })}
      onClose={() => setFirst(null)}
    />
  );
}

function hintFor({ plan }: JobView, hole: string, side: Side, from: From): string {
  const face = `the ${sideName(side, turningOf(plan, hole))} face`;
  return from.by === 'string'
    ? `Square off the string to both edges of ${face}.`
    : `Level, from ${endName(from.at, plan)}, to both edges of ${face}: one end of the tape stays where it is.`;
}

interface OffWhatProps extends TwistFlowProps {
  readonly onPick: (from: From | 'string') => void;
}

function OffWhatSheet({ view, hole, onPick, onClose }: OffWhatProps) {
  const name = thingName(postOf(hole), view.plan);
  const places = [...view.points.values()]
    .filter(({ fix }) => fix !== null)
    .map(({ thing }) => thing)
    .filter(({ kind }) => kind === 'stake' || kind === 'nail');
  const end = (thing: PullEnd['thing']): PullEnd => ({ thing, touch: { at: 'nail' } });
  return (
    <Sheet title={`How ${name} is turned`} onClose={onClose}>
      <p>Measure to both edges of one face, off a string or a straightedge, or by tape from one place.</p>
      <Button kind="main" onPress={() => onPick('string')}>
        Off a string or straightedge
      </Button>
      {places.map((thing) => (
        <Button key={thingName(thing)} onPress={() => onPick({ by: 'tape', at: end(thing) })}>
          By tape from {thingName(thing, view.plan)}
        </Button>
      ))}
    </Sheet>
  );
}
