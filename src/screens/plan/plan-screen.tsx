import { useState } from 'preact/hooks';
import type { Plan } from '../../job/plan-schema.ts';
import { groundLinesOf } from '../../judge/situation.ts';
import { defaultPlan } from '../../plan/index.ts';
import { Button, ButtonLink, ChoiceField, PlanDrawing } from '../../ui/index.ts';
import { BuyButton } from '../build/buy-button.tsx';
import { drawnLine, stateOf } from '../drawn-site.ts';
import { useJobBook } from '../job-book.ts';
import { UNIT_CHOICES } from '../job-choices.ts';
import { JobFrame } from '../job-frame.tsx';
import type { PhaseProps } from '../phase-props.ts';
import { hrefOf } from '../route.ts';
import { LinesButton } from '../stake/lay/lay-buttons.tsx';
import { HeightsGroup } from './heights-group.tsx';
import { HoldsGroup } from './holds-group.tsx';
import { HoleSheet } from './hole-sheet.tsx';
import { InstrumentsGroup } from './instruments-group.tsx';
import { NameGroup } from './name-group.tsx';
import { PlanCautions } from './plan-cautions.tsx';
import { PlanTrouble } from './plan-trouble.tsx';
import { RulesGroup } from './rules-group.tsx';
import { ShapeGroup } from './shape-group.tsx';
import { SingleGroup } from './single-group.tsx';
import { SizeGroup } from './size-group.tsx';
import { TolerancesGroup } from './tolerances-group.tsx';
import { usePlanEdits } from './use-plan-edits.ts';
import './plan.css';

/** The drawing, put in a few numbers at a time, in the order in which a person reads them off a sheet. */
export function PlanScreen({ hole }: PhaseProps) {
  // The phase before it may have been scrolled far.
  const { jobId, situation } = useJobBook();
  const stake = hrefOf({ at: 'job', job: jobId, phase: 'stake', hole: null });
  const { plan } = situation;
  if (!plan)
    return (
      <JobFrame phase="plan">
        <NoPlan />
      </JobFrame>
    );
  return (
    <JobFrame
      phase="plan"
      actions={
        <ButtonLink kind="main" href={stake}>
          Go to Stake
        </ButtonLink>
      }
    >
      <PlanFields stands={plan} first={hole} />
    </JobFrame>
  );
}

interface PlanFieldsProps {
  /** The plan that is on disk. */
  readonly stands: Plan;
  /** The hole whose sheet is open at first. */
  readonly first: string | null;
}

function PlanFields({ stands, first }: PlanFieldsProps) {
  const { situation, assessment } = useJobBook();
  const states = new Map(assessment.holes.map((each) => [each.hole, stateOf(each)]));
  const { plan, change, saveAgain } = usePlanEdits(stands);
  const [hole, setHole] = useState(first);
  const labels = new Set(situation.holes.map(({ label }) => label));
  const lines = groundLinesOf(situation).lines.map((line) => drawnLine(line));
  const fields = { plan, change };
  return (
    <>
      {saveAgain && <Button onPress={saveAgain}>Save the plan again</Button>}
      <PlanTrouble />
      <PlanDrawing
        title={plan.name}
        units={plan.units}
        holes={situation.holes.map((planned) => ({
          ...planned,
          state: states.get(planned.label) ?? 'planned',
        }))}
        lines={lines}
        onHole={setHole}
      />
      <ShapeGroup {...fields} />
      <SizeGroup {...fields} />
      <HoldsGroup {...fields} />
      <HeightsGroup {...fields} />
      <RulesGroup {...fields} />
      <TolerancesGroup {...fields} />
      <InstrumentsGroup {...fields} />
      <SingleGroup plan={plan} onHole={setHole} />
      <PlanCautions />
      <NameGroup {...fields} />
      <LinesButton />
      <BuyButton />
      {hole !== null && (labels.has(hole) || Object.hasOwn(plan.overrides, hole)) && (
        <HoleSheet {...fields} hole={hole} onClose={() => setHole(null)} />
      )}
    </>
  );
}

/** Every plan entry was struck: the job has a log, and nothing to hold it against. */
function NoPlan() {
  const { append } = useJobBook();
  return (
    <>
      <p>
        No plan stands: every plan in the field book is struck. Begin one again; the field book keeps the
        rest.
      </p>
      <ChoiceField
        label="Your tape is marked in"
        value={null}
        choices={UNIT_CHOICES}
        onChange={(units) => void append({ kind: 'plan', plan: defaultPlan(units) })}
      />
    </>
  );
}
