import { useMemo } from 'preact/hooks';
import type { Plan, Supplies } from '../../job/plan-schema.ts';
import { gateReason } from '../../judge/gate-reasons.ts';
import { viewOf } from '../../judge/view.ts';
import { capital } from '../../judge/words.ts';
import { Button, NumberField, Problem, Sheet } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { withoutTime } from '../plan/plan-edits.ts';
import { usePlanEdits } from '../plan/use-plan-edits.ts';
import { AsksSheet } from './asks-sheet.tsx';
import type { PourMoreProps } from './more-props.ts';

/** What is seldom wanted in the Pour phase, in a file of its own. */
export function PourMoreSheet({ more, hole, onClose }: PourMoreProps) {
  const { situation } = useJobBook();
  const view = useMemo(() => viewOf(situation), [situation]);
  if (!view) return null;
  switch (more) {
    case 'why':
      return <WhySheet hole={hole} onClose={onClose} />;
    case 'asks':
      return <AsksSheet plan={view.plan} hole={hole} onClose={onClose} />;
    case 'times':
      return <TimesSheet stands={view.plan} onClose={onClose} />;
  }
}

/** Why each item of the gate is asked, and where that comes from. */
function WhySheet({ hole, onClose }: Omit<PourMoreProps, 'more'>) {
  const { assessment } = useJobBook();
  const assessed = assessment.holes.find((each) => each.hole === hole);
  const items = assessed?.pourGate.items ?? [];
  return (
    <Sheet title={`Why each is asked of hole ${hole}`} onClose={onClose}>
      <dl>
        {items.map(({ item, asked, green }) => {
          const { name, reason, source } = gateReason(item);
          return (
            <div key={`${item}:${asked ?? ''}`}>
              <dt>
                <strong>{capital(asked ?? name)}</strong>, {green ? 'done' : 'missing'}
              </dt>
              <dd>
                {reason} From: {source}.
              </dd>
            </div>
          );
        })}
      </dl>
    </Sheet>
  );
}

/** A day: no bag prints more, minutes. */
const MOST_MINUTES = 24 * 60;

/** What the bag says of its own concrete. Nothing is put in for it: one mix stiffens in minutes, another in hours. */
function TimesSheet({ stands, onClose }: { readonly stands: Plan; readonly onClose: () => void }) {
  const { plan, change, saveAgain } = usePlanEdits(stands);
  const { workingTime, setTime } = plan.supplies ?? {};
  const say = (part: Supplies) =>
    change((before) => ({ ...before, supplies: { ...before.supplies, ...part } }));
  const crossed = workingTime !== undefined && setTime !== undefined && setTime <= workingTime;
  const bounds = { min: 1, max: MOST_MINUTES, suffix: 'minutes' } as const;
  return (
    <Sheet title="Times on the bag" onClose={onClose}>
      {saveAgain && <Button onPress={saveAgain}>Save the plan again</Button>}
      <NumberField
        label="Working time"
        hint="From the water until it must not be moved any more, as printed on the bag."
        value={workingTime ?? null}
        {...bounds}
        onChange={(minutes) => say({ workingTime: minutes })}
      />
      {workingTime !== undefined && (
        <Button onPress={() => change((before) => withoutTime(before, 'workingTime'))}>
          Back to no working time
        </Button>
      )}
      <NumberField
        label="Set time"
        hint="From the water until it is set, as printed on the bag."
        value={setTime ?? null}
        {...bounds}
        onChange={(minutes) => say({ setTime: minutes })}
      />
      {setTime !== undefined && (
        <Button onPress={() => change((before) => withoutTime(before, 'setTime'))}>
          Back to no set time
        </Button>
      )}
      {crossed && (
        <Problem text="Set time: it is not after the working time; look at the bag again and type both." />
      )}
      <p>In the cold both are longer, in the sun shorter: the post tells, not the clock.</p>
    </Sheet>
  );
}
