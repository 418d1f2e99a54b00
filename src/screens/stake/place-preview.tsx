import type { RigidMotion } from '../../geometry/rigid.ts';
import type { Instruments } from '../../job/plan-schema.ts';
import { groundLinesOf } from '../../judge/situation.ts';
import { small } from '../../judge/words.ts';
import { type LaidLine, layPlan } from '../../plan/index.ts';
import type { Crossing, StakeChoice } from '../../stakeout/index.ts';
import { type Drawn, PlanDrawing, Problem } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import type { Units } from '../../units/index.ts';
import { drawnLine } from '../drawn-site.ts';
import { useJobBook } from '../job-book.ts';
import { expectedEllipse } from './expected-ellipse.ts';
import { flattestWords, lieWords, typedPlace, worstWords } from './place-words.ts';

export interface PlacePreviewProps {
  readonly choice: StakeChoice;
  /** On the ground, plan frame; as the job has them when absent. */
  readonly lines?: readonly LaidLine[];
}

/** What a choice of A and B gives: drawn with the doubt of every hole, the worst of them in words, what is wrong with it. */
export function PlacePreview({ choice, lines }: PlacePreviewProps) {
  const { situation } = useJobBook();
  const { plan } = situation;
  if (!plan) return null;
  const motion = motionOf(choice, plan.units);
  const flattest = flattestWords(choice);
  return (
    <>
      {choice.objections.map((text) => (
        <Problem key={text} text={text} />
      ))}
      <PlanDrawing
        title={`${plan.name}, A and B, with how well each hole will be fixed`}
        units={plan.units}
        {...drawnChoice(choice, situation.holes, plan.instruments)}
        lines={(lines ?? groundLinesOf(situation).lines).map((line) => drawnLine(line))}
      />
      <p>{unbroken([worstWords(choice, plan.units), flattest].filter((text) => text !== '').join(' '))}</p>
      {motion && <p>{unbroken(lieWords(motion, plan.units))}</p>}
    </>
  );
}

function motionOf({ a, b }: StakeChoice, units: Units): RigidMotion | null {
  const laid = layPlan({ a: typedPlace(a, units), b: typedPlace(b, units) }, []);
  return laid.ok ? laid.value.motion : null;
}

type Holes = ReturnType<typeof useJobBook>['situation']['holes'];

/** In the plan frame, where the choice is made. */
function drawnChoice({ a, b }: StakeChoice, holes: Holes, instruments: Instruments): Drawn {
  return {
    stakes: { a, b },
    front: Math.PI / 2,
    holes: holes.map((hole) => {
      const ellipse = expectedEllipse(hole.place, a, b, instruments);
      return { ...hole, state: 'planned', ...(ellipse ? { ellipse } : {}) };
    }),
  };
}

/** Every hole with how good two tapes will make it. */
export function PerHole({
  choice: { perHole },
  units,
}: {
  readonly choice: StakeChoice;
  readonly units: Units;
}) {
  return (
    <ul aria-label="How good each hole will be">
      {perHole.map(({ hole, crossing, withinTape }) => (
        <li key={hole}>
          Hole {hole}: {withinTape ? goodWords(crossing, units) : 'beyond the tape'}
        </li>
      ))}
    </ul>
  );
}

const goodWords = ({ drms, grade }: Crossing, units: Units): string =>
  Number.isFinite(drms)
    ? `good to ${small(drms, units)}${grade === 'poor' ? ', a poor crossing' : ''}`
    : 'not fixed';
