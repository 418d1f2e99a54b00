import { thingName } from '../../job/words.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { capital } from '../../judge/words.ts';
import { FIELDS } from '../../plan/index.ts';
import { Button, LengthField } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { More } from '../more.tsx';
import { FROM_ZERO } from '../plan/limits.ts';
import { withoutSeat } from '../plan/plan-edits.ts';
import { usePlanEdits } from '../plan/use-plan-edits.ts';
import { type PaperTable, PaperTableView } from './paper-table.tsx';

interface SeatsSectionProps {
  readonly view: JobView;
  readonly highest: string | null;
  readonly tables: readonly [seats: PaperTable, falls: PaperTable];
}

/** Where joists or beams lie on tops that are not cut: how high, what is packed under them, how they fall from post to post. */
export function SeatsSection({ view, highest, tables: [seats, falls] }: SeatsSectionProps) {
  const { plan, change, saveAgain } = usePlanEdits(view.plan);
  if (highest === null) return null;
  const name = capital(thingName(postOf(highest), view.plan));
  return (
    <More label="Where the beams lie">
      {saveAgain && <Button onPress={saveAgain}>Save the plan again</Button>}
      <p>
        {unbroken(
          `As the tops stand now. ${name} stands highest above its height in the plan; packed up so much, the others carry the beams as drawn.`,
        )}
      </p>
      <PaperTableView {...seats} />
      {falls.rows.length > 0 && <PaperTableView {...falls} />}
      <div class="no-print">
        <LengthField
          label={FIELDS.seat}
          hint="Where the posts are notched; empty where the beams lie on the tops."
          value={plan.deck?.seat ?? null}
          units={plan.units}
          bounds={FROM_ZERO}
          onChange={(seat) => change((before) => ({ ...before, deck: { ...before.deck, seat } }))}
        />
        {plan.deck?.seat && <Button onPress={() => change(withoutSeat)}>Back to beams on the tops</Button>}
      </div>
    </More>
  );
}
