import type { EntryOf, PlumbRead } from '../../job/entry-schema.ts';
import { type Length, lengthWords } from '../../job/length.ts';
import { plumbGap } from '../../job/plumb-gap.ts';
import { Button, ButtonRow, Keypad } from '../../ui/index.ts';
import type { Units } from '../../units/index.ts';
import { lazily } from '../lazily.tsx';
import { Opening } from '../opening.tsx';
import { part } from '../part.ts';
import type { PlumbReadSheetProps } from './plumb-read-sheet.tsx';

type Plumb = EntryOf<'plumb'>['body'];
type Way = Exclude<Plumb['leans'], 'none'>;

/** One reading of a level: what one entry holds of it, or one of two where the level was turned. */
export type LevelRead = Pick<Plumb, 'offset' | 'leans' | 'read'>;

/** What was answered so far: it outlives a reading that could not be saved. */
export interface Asked {
  readonly leans: Way | null;
  readonly by: PlumbRead['by'] | 'gap';
  readonly gapDraft: string;
}

const ReadSheet = lazily<PlumbReadSheetProps>(
  part(async () => (await import('./plumb-read-sheet.tsx')).PlumbReadSheet),
  ({ title, onClose }) => <Opening title={title} onClose={onClose} />,
);

interface AmountProps {
  readonly face: string;
  readonly leans: Way;
  readonly units: Units;
  readonly over: Length;
  /** How the level was read last; a gap when null. */
  readonly usual: PlumbRead | null;
  readonly asked: Asked;
  readonly onAsked: (part: Partial<Asked>) => void;
  /** Asks back where a gap is hard to believe. */
  readonly check: (gap: number, read?: PlumbRead) => string | null;
  readonly onRead: (read: LevelRead) => unknown;
}

/** By how much the top leans: the gap that brings the bubble to the middle, degrees, or marks of the vial. */
export function Amount({ face, leans, units, over, usual, asked, onAsked, check, onRead }: AmountProps) {
  const { by, gapDraft } = asked;
  if (by !== 'gap')
    return (
      <ReadSheet
        title={`${by === 'degrees' ? 'Degrees' : 'Marks'}, ${face}`}
        by={by}
        usual={usual}
        units={units}
        check={(read) => check(plumbGap(read, over.m).m, read)}
        onRead={(read) => {
          const offset = plumbGap(read, over.m);
          return onRead({ offset, leans: offset.m === 0 ? 'none' : leans, read });
        }}
        onGap={() => onAsked({ by: 'gap' })}
        onClose={() => onAsked({ leans: null })}
      />
    );
  return (
    <Keypad
      title={`Gap, ${face}`}
      units={units}
      from="inches"
      hint={`Bubble in the middle: the gap between the level’s ${leans === 'out' ? 'lower' : 'upper'} end and the post, over ${lengthWords(over)}.`}
      bounds={{ max: over.m, maxName: 'the level itself, and a lean of 45°' }}
      check={(gap) => check(gap)}
      draft={gapDraft}
      onDraft={(draft) => onAsked({ gapDraft: draft })}
      onDone={(gap) => void onRead({ offset: gap, leans: gap.m === 0 ? 'none' : leans })}
      onClose={() => onAsked({ leans: null })}
    >
      <ButtonRow>
        <Button onPress={() => onAsked({ by: 'degrees' })}>In degrees</Button>
        <Button onPress={() => onAsked({ by: 'bubble' })}>By its marks</Button>
      </ButtonRow>
    </Keypad>
  );
}
