import type { Hold } from '../../job/entry-schema.ts';
import type { Plan } from '../../job/plan-schema.ts';
import { endName, thingName } from '../../job/words.ts';
import type { HoleAssessment, LevelReading, PlumbNudge, Verdict } from '../../judge/types.ts';
import { capital, leanWords } from '../../judge/words.ts';
import { Figure, VerdictMark } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { formatSmall } from '../../units/index.ts';
import type { SetStep } from './step.ts';
import { TapeRow } from './tape-row.tsx';

export interface MoveCardProps {
  readonly step: Extract<SetStep, { do: 'move' }>;
  readonly hole: HoleAssessment;
  readonly plan: Plan;
  readonly how: Hold['how'];
}

/** A post that is out, or too near the edge to tell, and still loose: by how much, which way to move it, and what it reads when it is right. */
export function MoveCard({ step, hole, plan, how }: MoveCardProps) {
  const { nudge, part, rod, why } = step;
  const post = thingName({ kind: 'post', hole: hole.hole }, plan);
  if (nudge)
    return (
      <>
        <OutHead {...placeHead(hole, post, formatSmall(nudge.distance, plan.units))} />
        <p class="set-nudge">{unbroken(nudge.words)} It is right when these read:</p>
        <div class="set-holds">
          {nudge.readings.map(({ from, to, reading }) => (
            <TapeRow key={endName(from, plan)} pull={{ from, to, expected: reading }} plan={plan} how={how} />
          ))}
        </div>
        <Levels readings={nudge.levels} />
      </>
    );
  const lean = part === 'plumb' && !hole.poured ? hole.set.plumbNudge : null;
  if (lean) {
    const near = hole.set.plumb.verdict === 'in' ? ': in, but only just' : '';
    const head = `${capital(post)} leans ${leanOf(hole, plan)}${near}`;
    return <PushTop nudge={lean} text={head} verdict={hole.set.plumb.verdict} />;
  }
  return (
    <>
      <OutHead {...(part === 'top' ? topHead(hole, post, why, plan) : { text: why, verdict: 'out' })} />
      {hole.poured && (
        <p>
          It is poured. Push it while the concrete is wet, or leave it so and let whoever is responsible
          decide.
        </p>
      )}
      {!hole.poured && part === 'plumb' && (
        <p class="set-nudge">
          Push its top until the bubble is in the middle on two faces side by side, and brace it. Then it is
          measured anew: its foot may have moved too.
        </p>
      )}
      {part === 'top' && (
        <p class="set-nudge">
          {rod === null ? (
            'Lift or lower it'
          ) : (
            <>
              Lift or lower it until the rod reads <Figure m={rod} units={plan.units} size="text" />
            </>
          )}
          ; then it is measured anew. A top that is to be cut can be left so.
        </p>
      )}
    </>
  );
}

/** As a level shows it: `3/4″ in 4′`. */
const leanOf = ({ set }: HoleAssessment, { units }: Plan): string => leanWords(set.plumb.error ?? 0, units);

/** Which way the top goes and how far; then it is measured anew, for its foot may have moved too. */
function PushTop({ nudge, ...head }: { readonly nudge: PlumbNudge } & Head) {
  return (
    <>
      <OutHead {...head} />
      <p class="set-nudge">{unbroken(nudge.words)} It is right when the level reads:</p>
      <Levels readings={nudge.levels} />
      <p>Brace it. Then it is measured anew: its foot may have moved too.</p>
    </>
  );
}

function Levels({ readings }: { readonly readings: readonly LevelReading[] }) {
  if (readings.length === 0) return null;
  return (
    <ul class="set-levels">
      {readings.map(({ side, words }) => (
        <li key={side}>{unbroken(words)}</li>
      ))}
    </ul>
  );
}

interface Head {
  readonly text: string;
  readonly verdict: Verdict;
}

/** What is too near the edge to tell is pushed as well, and not called out. */
function placeHead({ set }: HoleAssessment, post: string, off: string): Head {
  const { verdict } = set.position;
  const near = verdict === 'in' ? 'is in, but only just' : 'may be in or out';
  const words = verdict === 'out' ? `is out by ${off}` : `${near}: it measures ${off} off its mark`;
  return { verdict, text: `${capital(post)} ${words}` };
}

/** Why it is out, or that it is in only just. */
function topHead({ set: { level } }: HoleAssessment, post: string, why: string, plan: Plan): Head {
  const { verdict, error } = level;
  if (verdict !== 'in' || error === null) return { verdict, text: why };
  const off = `${formatSmall(Math.abs(error), plan.units)} too ${error > 0 ? 'high' : 'low'}`;
  return { verdict, text: `The top of ${post} is ${off}: in, but only just` };
}

function OutHead({ text, verdict }: Head) {
  return (
    <h2 class="set-out">
      <VerdictMark verdict={verdict}>{unbroken(text)}</VerdictMark>
    </h2>
  );
}
