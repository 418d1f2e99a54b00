import { useMemo } from 'preact/hooks';
import type { DepthMark } from '../../job/entry-schema.ts';
import { lengthWords, roundedLength } from '../../job/length.ts';
import { type JobView, viewOf } from '../../judge/view.ts';
import { Button, Keypad, Sheet } from '../../ui/index.ts';
import { formatLength, stepOf, type Units } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { DUG_BOUNDS } from './dug-bounds.ts';
import type { ReadDepth } from './dug-flow.tsx';
import type { MarkAsked, MarkFrom } from './mark-asked.ts';

export interface MarkFlowProps {
  readonly hole: string;
  /** Asks back where the depth from the lip looks like a slip. */
  readonly check: (m: number) => string | null;
  /** What was answered so far, held above. */
  readonly asked: MarkAsked;
  readonly onAsked: (part: Partial<MarkAsked>) => void;
  readonly onDone: (read: ReadDepth) => void;
  readonly onClose: () => void;
}

const MARKS: Record<MarkFrom, { readonly words: string; readonly name: string }> = {
  string: { words: 'A string over the hole', name: 'the string' },
  stake: { words: 'The top of a stake', name: 'the top of the stake' },
  other: { words: 'Another mark', name: 'the mark' },
};
const FROM = Object.keys(MARKS) as MarkFrom[];

/** Takes a depth from something above the lip: how high that is, then from there to the bottom; or by the level's heights. */
export function MarkFlow({ hole, check, asked, onAsked, onDone, onClose }: MarkFlowProps) {
  const { situation } = useJobBook();
  const view = useMemo(() => viewOf(situation), [situation]);
  const { from, above, drafts } = asked;
  const draft = (of: keyof MarkAsked['drafts']) => ({
    draft: drafts[of],
    onDraft: (text: string) => onAsked({ drafts: { ...drafts, [of]: text } }),
  });
  if (!view) return null;
  const { units } = view.plan;
  if (!from)
    return (
      <MarkSheet
        hole={hole}
        level={levelDepth(view, hole)}
        onPick={(picked) => onAsked({ from: picked })}
        onLevel={onDone}
        onClose={onClose}
      />
    );
  const { name } = MARKS[from];
  if (!above)
    return (
      <Keypad
        key="above"
        title={`From the lip up to ${name}, hole ${hole}`}
        units={units}
        hint={`From the downhill lip, the lowest ground at the edge, up to ${name}. 0 where it lies on the lip.`}
        bounds={{ min: 0, ...DUG_BOUNDS }}
        {...draft('above')}
        onDone={(read) => onAsked({ above: read })}
        onClose={() => onAsked({ from: null })}
      />
    );
  return (
    <Keypad
      key="reading"
      title={`From ${name} down, hole ${hole}`}
      units={units}
      hint={`From ${name} to the clean bottom, tape upright. The lip is ${lengthWords(above)} below ${name}.`}
      bounds={{
        min: above.m + stepOf(units),
        minName: `the ${lengthWords(above)} from the lip up to ${name}`,
        max: above.m + DUG_BOUNDS.max,
      }}
      check={(m) => check(m - above.m)}
      {...draft('reading')}
      onDone={(reading) => onDone(depthFrom({ from, reading, above }, units))}
      onClose={() => onAsked({ above: null })}
    />
  );
}

/** What a reading from a mark comes to below the lip, rounded to the units' step. */
const depthFrom = (mark: DepthMark, units: Units): ReadDepth => ({
  depth: roundedLength(mark.reading.m - mark.above.m, units),
  mark,
});

/** The lowest ground at its edge less its bottom, where the level has read both; metres. */
function levelDepth(view: JobView, hole: string): number | null {
  const [ground, bottom] = [view.heights.get(`ground:${hole}`), view.heights.get(`bottom:${hole}`)];
  const depth = ground && bottom ? ground.height - bottom.height : 0;
  return depth > 0 && depth <= DUG_BOUNDS.max ? depth : null;
}

interface MarkSheetProps {
  readonly hole: string;
  readonly level: number | null;
  readonly onPick: (from: MarkFrom) => void;
  readonly onLevel: (read: ReadDepth) => void;
  readonly onClose: () => void;
}

function MarkSheet({ hole, level, onPick, onLevel, onClose }: MarkSheetProps) {
  const { situation } = useJobBook();
  const units = situation.plan?.units ?? 'm';
  const byLevel = () => {
    if (level === null) return;
    const depth = roundedLength(level, units);
    onLevel({ depth, mark: { from: 'level', reading: depth, above: roundedLength(0, units) } });
  };
  return (
    <Sheet title={`Depth of hole ${hole}: from what?`} onClose={onClose}>
      {level !== null && <Button onPress={byLevel}>By the level: {formatLength(level, units)}</Button>}
      {FROM.map((from) => (
        <Button key={from} onPress={() => onPick(from)}>
          {MARKS[from].words}
        </Button>
      ))}
      {level === null && (
        <p>
          By the level: read the rod on the ground at its downhill lip, and on its bottom, under Heights and
          the level.
        </p>
      )}
    </Sheet>
  );
}
