import type { ComponentChildren } from 'preact';
import type { Cuts, CutTo } from '../../build/cuts.ts';
import type { Length } from '../../job/length.ts';
import { thingName } from '../../job/words.ts';
import { told } from '../../judge/frame-words.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { capital, listWords, small } from '../../judge/words.ts';
import { type Choice, ChoiceField, LengthField } from '../../ui/index.ts';
import { smallStep } from '../../units/index.ts';
import { ANY_HEIGHT } from '../plan/limits.ts';

export interface CutsSectionProps {
  readonly view: JobView;
  readonly cuts: Cuts;
  readonly to: CutTo;
  readonly onTo: (to: CutTo) => void;
  readonly line: Length | null;
  readonly onLine: (line: Length) => void;
  readonly children: ComponentChildren;
}

const TO: readonly Choice<CutTo>[] = [
  { value: 'plan', label: 'The plan’s heights' },
  { value: 'shortest', label: 'The shortest post' },
];

/** Where each top is marked and cut, from itself or from a level line round all the posts. */
export function CutsSection({ view, cuts, to, onTo, line, onLine, children }: CutsSectionProps) {
  const { units } = view.plan;
  return (
    <>
      <h3>Tops</h3>
      {cuts.governs !== null && (
        <div class="no-print">
          <ChoiceField label="Cut to" value={to} choices={TO} onChange={onTo} />
          <LengthField
            label="Level line above the benchmark"
            hint="Leave it empty to mark from the tops."
            value={line}
            units={units}
            bounds={ANY_HEIGHT}
            onChange={onLine}
          />
        </div>
      )}
      {children}
    </>
  );
}

/** Which post governs, which are too short and by how much, and what to do after the saw. */
export function cutSentences(view: JobView, { cuts, governs, shift }: Cuts, to: CutTo): string[] {
  const { units } = view.plan;
  const name = (hole: string) => thingName(postOf(hole), view.plan);
  if (governs === null) return ['No top is measured: read the rod on the tops, then the cuts stand here.'];
  const short = cuts.filter(({ off, sigma }) => {
    const said = told({ is: off, sigma }, smallStep(units));
    return said.is < -said.half;
  });
  const tooShort = listWords(short.map(({ hole, off }) => `${name(hole)} by ${small(off, units)}`));
  const loose = view.book.pours(governs).length === 0;
  return [
    to === 'shortest'
      ? `${capital(name(governs))} governs: it stands least above its height in the plan. Every cut lies ${shiftWords(shift, units)}, so that it needs none.`
      : `${capital(name(governs))} stands least above its height in the plan: it governs if all are cut to one line.`,
    ...(loose
      ? [
          `${capital(name(governs))} is not in concrete: it can still be raised, and then another governs. One in concrete cannot.`,
        ]
      : [`${capital(name(governs))} is in concrete and cannot be raised.`]),
    ...(short.length > 0 && to === 'plan'
      ? [`Too short for the plan: ${tooShort}. Cut all to the shortest post, or ask whoever designed it.`]
      : []),
    'Mark all tops from one level line, on two faces of each. After the saw read the rod on every top again, and strike what was read before.',
  ];
}

function shiftWords(shift: number, units: JobView['plan']['units']): string {
  if (small(shift, units) === small(0, units)) return 'at the plan’s height';
  return `${small(shift, units)} ${shift > 0 ? 'above' : 'below'} the plan’s height`;
}
