import { useState } from 'preact/hooks';
import type { Plan } from '../../job/plan-schema.ts';
import { lengthsOf, quantitiesOf } from '../../judge/supplies.ts';
import type { JobView } from '../../judge/view.ts';
import { Button, Caution } from '../../ui/index.ts';
import { Profile } from '../../ui/profile/profile.tsx';
import { unbroken } from '../../ui/unbroken.ts';
import { More } from '../more.tsx';
import { usePlanEdits } from '../plan/use-plan-edits.ts';
import { BoughtSheet } from './bought-sheet.tsx';
import { ConcreteFields, PostFields } from './buy-fields.tsx';
import { fillTable, lengthsTable, shortWords } from './buy-tables.ts';
import { bagWords, buySentences, shoppingWords, usedWords } from './buy-words.ts';
import { PaperSheet } from './paper-sheet.tsx';
import { asText, PaperTableView } from './paper-table.tsx';
import { profileOf } from './profile-of.ts';

export interface BuySheetProps {
  readonly view: JobView;
  /** The plan that is on disk. */
  readonly stands: Plan;
  readonly onClose: () => void;
}

const TITLE = 'To buy';

/** Posts by stock length, concrete, bags and gravel: as dug where holes are dug, else as planned. */
export function BuySheet({ view, stands, onClose }: BuySheetProps) {
  const { plan, change, saveAgain } = usePlanEdits(stands);
  const [single, setSingle] = useState(false);
  const lengths = lengthsOf(view);
  const all = quantitiesOf(view);
  const shopping = shoppingWords(view, lengths, all);
  const sentences = buySentences(view, lengths, all);
  const short = shortWords(view, lengths);
  const concrete = [bagWords(view, all), usedWords(all)].filter((words) => words !== '');
  const tables = [lengthsTable(view, lengths), fillTable(view, all)] as const;
  const text = () =>
    asText(
      `${plan.name}: ${TITLE}`,
      [...shopping.map((line) => `- ${line}`), ...(short ? [short] : []), ...sentences, ...concrete],
      tables,
    );
  return (
    <PaperSheet title={TITLE} job={plan.name} text={text} onClose={onClose}>
      {saveAgain && <Button onPress={saveAgain}>Save the plan again</Button>}
      {short && (
        <Caution title="too short">
          <p>{unbroken(short)}</p>
        </Caution>
      )}
      <ul class="record-list">
        {shopping.map((line) => (
          <li key={line}>{unbroken(line)}</li>
        ))}
      </ul>
      {[...sentences, ...concrete].map((words) => (
        <p key={words}>{unbroken(words)}</p>
      ))}
      <div class="paper-choices no-print">
        <More label="Posts: stock, spare, bought">
          <PostFields plan={plan} change={change} />
        </More>
        <More label="Concrete: bags, waste, tube, bell">
          <ConcreteFields plan={plan} change={change} />
        </More>
      </div>
      {tables[0].rows.length > 0 && <PaperTableView {...tables[0]} />}
      {plan.supplies?.bought && (
        <div class="no-print">
          <Button onPress={() => setSingle(true)}>A single post of another length</Button>
        </div>
      )}
      <PaperTableView {...tables[1]} />
      <h3>The posts unrolled, from the side</h3>
      <Profile title={plan.name} units={plan.units} {...profileOf(view, null)} />
      {single && <BoughtSheet view={view} plan={plan} change={change} onClose={() => setSingle(false)} />}
    </PaperSheet>
  );
}
