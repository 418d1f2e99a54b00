import type { Plan } from '../../job/plan-schema.ts';
import { listWords } from '../../judge/words.ts';
import { Button, ButtonRow, Problem, Sheet } from '../../ui/index.ts';
import { TextInput } from '../../ui/text-input.tsx';
import { ok, type Result, refuse } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { useLog } from '../use-log.ts';
import { useTyped } from '../use-typed.ts';
import { withAsk, withoutAsk } from './asks.ts';

/** As the plan's schema allows. */
const LENGTHS = { least: 2, most: 60 };
const MOST_ASKS = 30;

const readAsk =
  (plan: Plan) =>
  (text: string): Result<string> => {
    const clean = text.trim();
    const field = 'What is asked';
    if (clean === '') return refuse(field, `${field} is empty: type it, such as “conduit sleeve”.`);
    if (clean.length < LENGTHS.least || clean.length > LENGTHS.most)
      return refuse(
        field,
        `${field} has ${clean.length} characters: type ${LENGTHS.least} to ${LENGTHS.most}.`,
      );
    if ((plan.asks ?? []).length >= MOST_ASKS)
      return refuse(field, `${field}: there are ${MOST_ASKS} already; take one away first.`);
    return ok(clean);
  };

export interface AsksSheetProps {
  readonly plan: Plan;
  readonly hole: string;
  readonly onClose: () => void;
}

/** What this job asks for before concrete goes in, besides what every job does: for one hole, or for all. */
export function AsksSheet({ plan, hole, onClose }: AsksSheetProps) {
  const { save } = useJobBook();
  const { failed, log } = useLog();
  const what = useTyped(readAsk(plan));
  const add = async (holes: readonly string[] | null) => {
    const words = what.take();
    if (words === null) return;
    if (await log({ kind: 'plan', plan: withAsk(plan, words, holes) })) onClose();
  };
  return (
    <Sheet
      title="Asked for by this job"
      onClose={onClose}
      actions={
        <ButtonRow>
          <Button onPress={() => void add([hole])}>For hole {hole} alone</Button>
          <Button kind="main" onPress={() => void add(null)}>
            For every hole
          </Button>
        </ButtonRow>
      }
    >
      {failed && save.at === 'failed' && <Problem text={save.text} />}
      <TextInput
        label="What is asked"
        hint="Such as a conduit sleeve, or anchor bolts with their template. The gate stays shut until it is ticked."
        draft={what.draft}
      />
      {(plan.asks ?? []).map(({ what: asked, holes }) => (
        <div key={asked} class="missing-line">
          <p class="ask">
            <strong>{asked}</strong>, {holes ? `hole ${listWords(holes)}` : 'every hole'}
          </p>
          <Button
            label={`No more: ${asked}`}
            onPress={() => void log({ kind: 'plan', plan: withoutAsk(plan, asked) })}
          >
            No more
          </Button>
        </div>
      ))}
    </Sheet>
  );
}
