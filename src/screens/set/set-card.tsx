import type { Hold } from '../../job/entry-schema.ts';
import { lengthWords } from '../../job/length.ts';
import type { Plan } from '../../job/plan-schema.ts';
import { endName, sideName, thingName, turningOf } from '../../job/words.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { Figure, Problem, VerdictMark } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { HELD } from '../hold-choice.tsx';
import { useJobBook } from '../job-book.ts';
import { isGuarded } from '../looks.ts';
import { HoleNotReady } from './hole-not-ready.tsx';
import { MoveCard } from './move-card.tsx';
import { RaiseCaution } from './raise-caution.tsx';
import './set.css';
import type { DoubtStep, SetStep } from './step.ts';
import { TapeRow } from './tape-row.tsx';

export interface SetCardProps<S extends SetStep = SetStep> {
  readonly step: S;
  readonly hole: HoleAssessment;
  readonly plan: Plan;
  readonly how: Hold['how'];
}

type CardOf<Do extends SetStep['do']> = SetCardProps<Extract<SetStep, { do: Do }>>;

/** The next thing to do about a post, in one sentence with its numbers. */
export function SetCard({ step, ...rest }: SetCardProps) {
  switch (step.do) {
    case 'lay':
      return <h2>First say where A and B stand</h2>;
    case 'baseline':
      return <BaselineCard step={step} {...rest} />;
    case 'stand':
      return <StandCard step={step} {...rest} />;
    case 'pull':
      return <PullCard step={step} {...rest} />;
    case 'doubt':
      return <DoubtCard step={step} {...rest} />;
    case 'tell':
      return <TellCard step={step} {...rest} />;
    case 'move':
      return <MoveCard step={step} {...rest} />;
    case 'plumb':
      return <PlumbCard step={step} {...rest} />;
    case 'rod':
      return <RodCard step={step} {...rest} />;
    case 'done':
      return <DoneCard {...rest} />;
  }
}

const nameOf = (hole: HoleAssessment, plan: Plan): string =>
  thingName({ kind: 'post', hole: hole.hole }, plan);

function BaselineCard({ step, plan, how }: CardOf<'baseline'>) {
  return (
    <>
      <h2>First read the tape from A to B</h2>
      <TapeRow pull={step.pull} plan={plan} how={how} />
      <p>Every place hangs on it.</p>
    </>
  );
}

function StandCard({ step, hole, plan, how }: CardOf<'stand'>) {
  return (
    <>
      <Undecided hole={hole} />
      <HoleNotReady hole={hole} />
      <h2>Stand {nameOf(hole, plan)} where both tapes meet</h2>
      {step.hold.map((pull) => (
        <TapeRow key={endName(pull.from, plan)} pull={pull} plan={plan} how={how} />
      ))}
      <RaiseCaution hole={hole.hole} />
    </>
  );
}

/** What nobody has decided on yet: it is said before a post stands in the hole. */
function Undecided({ hole }: Pick<SetCardProps, 'hole'>) {
  if (hole.dug.at === null) return null;
  const waiting = hole.pourGate.items.filter(({ decision }) => decision);
  return (
    <>
      {waiting.map(({ item, text }) => (
        <Problem key={item} text={`No decision is logged. ${text}`} />
      ))}
    </>
  );
}

function PullCard({ step, hole, plan, how }: CardOf<'pull'>) {
  return (
    <>
      <h2>
        Measure {nameOf(hole, plan)} from {thingName(step.pull.from.thing, plan)}
      </h2>
      <TapeRow pull={step.pull} plan={plan} how={how} />
      {step.why && <p>{unbroken(step.why)}</p>}
    </>
  );
}

const DOUBT_HEAD: Record<DoubtStep['again'], (post: string) => string> = {
  'not-yet': (post) => `A tape to ${post} looks misread: pull it again`,
  apart: (post) => `Two tapes to ${post} disagree: strike the wrong one`,
  alike: (post) => `A tape to ${post} reads the same twice, and does not fit`,
};

function DoubtCard({ step, hole, plan, how }: CardOf<'doubt'>) {
  const { reading, hold } = step.entry.body;
  return (
    <>
      <h2>{DOUBT_HEAD[step.again](nameOf(hole, plan))}</h2>
      <p>
        Read as <strong>{unbroken(lengthWords(reading))}</strong>, {HELD[hold.how]}. By everything else it is:
      </p>
      <TapeRow pull={step.pull} plan={plan} how={how} />
      {step.again === 'alike' && (
        <p>
          So the tape may touch another face than this, or a stake or a post has moved since it was pulled to.
          Look at both ends; then strike what is wrong, or measure from something else.
        </p>
      )}
    </>
  );
}

function TellCard({ step, hole, plan, how }: CardOf<'tell'>) {
  return (
    <>
      <h2>
        Measure {nameOf(hole, plan)} from {thingName(step.pull.from.thing, plan)}
      </h2>
      <TapeRow pull={step.pull} plan={plan} how={how} />
      <p>One of the tapes to it is misread, and this one should tell which.</p>
    </>
  );
}

function PlumbCard({ step, hole, plan }: CardOf<'plumb'>) {
  const post = nameOf(hole, plan);
  const face = `the ${sideName(step.side, turningOf(plan, hole.hole))} face of ${post}`;
  if (!step.again) return <h2>Hold the level on {face}</h2>;
  return (
    <>
      <h2>Once more, to check: hold the level on {face}</h2>
      <p>The face opposite is logged. This one shows whether that was misread.</p>
    </>
  );
}

const ROD_AGAIN = {
  benchmark: 'The first reading is logged. Every top hangs on it, and a second shows whether it was misread.',
  top: 'The first reading is logged. A second shows whether it was misread.',
};

function RodCard({ step, hole, plan }: CardOf<'rod'>) {
  const where = step.on.point === 'benchmark' ? 'the benchmark' : `the top of ${nameOf(hole, plan)}`;
  return (
    <>
      <h2>{step.again ? `Once more, to check: read the rod on ${where}` : `Read the rod on ${where}`}</h2>
      {step.expected !== null && (
        <p class="set-rod">
          At the right height it reads <Figure m={step.expected} units={plan.units} />
        </p>
      )}
      {step.again && <p>{ROD_AGAIN[step.on.point === 'benchmark' ? 'benchmark' : 'top']}</p>}
    </>
  );
}

/** Nothing more is to be read: what it comes to. A post in concrete that is out is said to be so before all else. */
function DoneCard({ hole, plan }: Omit<SetCardProps, 'step'>) {
  const { verdict, headline } = hole.set;
  const { beyondPulls } = useJobBook().assessment;
  const beyond = beyondPulls.filter(({ thing }) => thing.kind === 'post' && thing.hole === hole.hole);
  return (
    <>
      <h2 class="set-out">
        <VerdictMark verdict={verdict} checked={isGuarded(hole)}>
          {unbroken(hole.poured && verdict === 'out' ? `In concrete, and out. ${headline}` : headline)}
        </VerdictMark>
      </h2>
      {beyond.map(({ text }) => (
        <p key={text}>{unbroken(text)}</p>
      ))}
      {hole.poured && verdict === 'out' && (
        <p>
          What is done about {nameOf(hole, plan)} is for whoever is responsible to decide. The frame can be
          cut to where it stands.
        </p>
      )}
    </>
  );
}
