import { useState } from 'preact/hooks';
import type { PullEnd, Thing, Touch } from '../job/entry-schema.ts';
import { SIDES } from '../job/entry-schema.ts';
import { type Length, typedLength } from '../job/length.ts';
import { thingName, touchName, turningOf } from '../job/words.ts';
import type { Situation } from '../judge/situation.ts';
import { capital } from '../judge/words.ts';
import { Button, ChoiceField, Sheet } from '../ui/index.ts';
import { TextInput } from '../ui/text-input.tsx';
import { formatLength, ok, type Result, type Units } from '../units/index.ts';
import { useJobBook } from './job-book.ts';
import { touchChoices } from './stake/string-things.ts';
import './touch.css';
import type { TouchProps } from './touch-props.ts';

/** What stands in the fields of one end. */
interface EndDraft {
  /** In words, as it is offered. */
  readonly touched: string;
  readonly height: string;
  readonly fault: string | null;
}

/** On each post of a pull: how high above the ground the tape is held, and what it touches there. */
export function TouchSheet({ ends, onDone, onClose }: TouchProps) {
  const { situation } = useJobBook();
  const [from, setFrom] = useState(() => draftOf(ends.from, situation));
  const [to, setTo] = useState(() => draftOf(ends.to, situation));
  const { plan } = situation;
  if (!plan) return null;
  const take = () => {
    const [near, far] = [readEnd(ends.from, from, situation), readEnd(ends.to, to, situation)];
    if (near.ok && far.ok) return onDone({ from: near.value, to: far.value });
    setFrom({ ...from, fault: near.ok ? null : near.problem.text });
    setTo({ ...to, fault: far.ok ? null : far.problem.text });
  };
  return (
    <Sheet
      title="Where the tape touches"
      onClose={onClose}
      actions={
        <Button kind="main" onPress={take}>
          It touches there
        </Button>
      }
    >
      <p>
        On a slope a tape held level often has to touch the lower post well above the ground: then say how
        high. The post’s lean up to there is taken from its plumb readings; without them the pull counts for
        less.
      </p>
      <EndFields end={ends.from} draft={from} onDraft={setFrom} />
      <EndFields end={ends.to} draft={to} onDraft={setTo} />
    </Sheet>
  );
}

interface EndFieldsProps {
  readonly end: PullEnd;
  readonly draft: EndDraft;
  readonly onDraft: (draft: EndDraft) => void;
}

/** Nothing for a stake or a nail. */
function EndFields({ end: { thing }, draft, onDraft }: EndFieldsProps) {
  const { situation } = useJobBook();
  const { plan } = situation;
  if (!plan || thing.kind !== 'post') return null;
  return (
    <div class="touch-choices">
      <TextInput
        label={heightLabel(thing, situation)}
        hint={`Above the ground, such as ${formatLength(EXAMPLE_M, plan.units)}. Empty at the ground.`}
        draft={{
          text: draft.height,
          error: draft.fault,
          edit: (height) => onDraft({ ...draft, height, fault: null }),
          commit: () => {},
        }}
      />
      <ChoiceField
        label={`On ${thingName(thing, plan)} it touches`}
        value={draft.touched}
        choices={postTouches(situation, thing).map(({ words }) => ({ value: words, label: capital(words) }))}
        onChange={(touched) => onDraft({ ...draft, touched })}
      />
    </div>
  );
}

const heightLabel = (thing: Thing, { plan }: Situation): string => `Height on ${thingName(thing, plan)}`;

/** Faces first, then corners, and last the centre, which few can reach. */
function postTouches(situation: Situation, thing: Thing): { touch: Touch; words: string }[] {
  const { plan } = situation;
  const known = touchChoices(situation, thing);
  const square = known.some(({ touch }) => touch.at === 'face');
  const corners =
    square && plan && thing.kind === 'post' ? SIDES.map((side): Touch => ({ at: 'corner', side })) : [];
  const turning = plan && thing.kind === 'post' ? turningOf(plan, thing.hole) : 'grid';
  return [
    ...known.filter(({ touch }) => touch.at !== 'centre'),
    ...corners.map((touch) => ({ touch, words: touchName(touch, turning) })),
    ...known.filter(({ touch }) => touch.at === 'centre'),
  ];
}

function draftOf({ thing, touch, height }: PullEnd, { plan }: Situation): EndDraft {
  const turning = plan && thing.kind === 'post' ? turningOf(plan, thing.hole) : 'grid';
  return { touched: touchName(touch, turning), height: height?.typed ?? '', fault: null };
}

function readEnd(end: PullEnd, { touched, height: text }: EndDraft, situation: Situation): Result<PullEnd> {
  const { thing } = end;
  if (thing.kind !== 'post' || !situation.plan) return ok(end);
  const height = readHeight(text, situation.plan.units, heightLabel(thing, situation));
  if (!height.ok) return height;
  const touch = postTouches(situation, thing).find(({ words }) => words === touched)?.touch ?? end.touch;
  return ok({ thing, touch, ...(height.value ? { height: height.value } : {}) });
}

/** Ten feet, metres: no one holds a tape higher without a ladder, so more is a slip. */
const HIGHEST_M = 3.048;

/** About knee height, metres, for the hint. */
const EXAMPLE_M = 0.61;

/** @returns null at the ground */
function readHeight(text: string, units: Units, field: string): Result<Length | null> {
  if (text.trim() === '') return ok(null);
  const height = typedLength(text, units, field, { min: 0, max: HIGHEST_M });
  return height.ok && height.value.m === 0 ? ok(null) : height;
}
