import { requiredDepthOf } from '../../build/index.ts';
import { type Length, typedLength } from '../../job/length.ts';
import type { Plan } from '../../job/plan-schema.ts';
import { Button, ButtonRow, Problem, Sheet } from '../../ui/index.ts';
import { TextInput } from '../../ui/text-input.tsx';
import { unbroken } from '../../ui/unbroken.ts';
import { ok, type Result, refuse, type Units } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { useLog } from '../use-log.ts';
import { useTyped } from '../use-typed.ts';
import { DUG_BOUNDS } from './dug-bounds.ts';
import { withOwnDepth } from './own-depth.ts';

/** As the plan's schema allows. */
const MOST_WHY = 200;

const readDepth =
  (units: Units) =>
  (text: string): Result<Length> =>
    text.trim() === ''
      ? refuse('Depth', 'Depth of this hole is empty: type how deep it is to be, gravel and all.')
      : typedLength(text, units, 'Depth of this hole', DUG_BOUNDS);

function readWhy(text: string): Result<string> {
  const clean = text.trim();
  if (clean === '')
    return refuse('Why', 'Why is empty: say why this hole is to have another depth, such as “ledge”.');
  if (clean.length > MOST_WHY)
    return refuse('Why', `Why has ${clean.length} characters: shorten it to ${MOST_WHY} or fewer.`);
  return ok(clean);
}

export interface OwnDepthSheetProps {
  readonly plan: Plan;
  readonly hole: string;
  readonly onClose: () => void;
}

/** Gives one hole another depth than the rules ask, with the reason; it goes into the plan. */
export function OwnDepthSheet({ plan, hole, onClose }: OwnDepthSheetProps) {
  const { save } = useJobBook();
  const { failed, log } = useLog();
  const depth = useTyped(readDepth(plan.units));
  const why = useTyped(readWhy);
  const own = Object.hasOwn(plan.overrides, hole) ? plan.overrides[hole] : undefined;
  const write = async (next: Plan) => {
    if (await log({ kind: 'plan', plan: next })) onClose();
  };
  const done = () => {
    const [length, words] = [depth.take(), why.take()];
    if (length && words !== null) void write(withOwnDepth(plan, hole, { depth: length, why: words }));
  };
  return (
    <Sheet
      title={`Another depth for hole ${hole}`}
      onClose={onClose}
      actions={
        <ButtonRow>
          {own?.depth && (
            <Button onPress={() => void write(withOwnDepth(plan, hole, null))}>Back to the rules</Button>
          )}
          <Button kind="main" onPress={done}>
            Put it in the plan
          </Button>
        </ButtonRow>
      }
    >
      {failed && save.at === 'failed' && <Problem text={save.text} />}
      <p>{unbroken(`Now: ${requiredDepthOf(plan, hole).text}`)}</p>
      <TextInput
        label="Depth of this hole"
        hint="From the downhill lip, gravel and all."
        draft={depth.draft}
      />
      <TextInput label="Why" draft={why.draft} lines={2} />
      <p>
        Less than the rules ask is never right by itself: the dig’s gate and the pour’s then wait for whoever
        is responsible for the structure to agree.
      </p>
    </Sheet>
  );
}
