import { useState } from 'preact/hooks';
import { readingOn } from '../measure/index.ts';
import { Keypad, type KeypadProps } from '../ui/index.ts';
import { useJobBook } from './job-book.ts';
import { TapeButton, useHasTapes } from './tape-choice.tsx';
import { TapeSheet } from './tape-sheet.tsx';

/** `expected` is what is there, metres: the tape in hand is shown what it must read for that. */
export type TapedKeypadProps = Omit<KeypadProps, 'draft' | 'onDraft' | 'children'>;

/**
 * A keypad for what a tape reads, which names the tape where the job has tapes of its own; a tap takes another. Another title is
 * another reading and begins anew.
 */
export function TapedKeypad(props: TapedKeypadProps) {
  return <OneTapedReading key={props.title} {...props} />;
}

function OneTapedReading({ expected, ...pad }: TapedKeypadProps) {
  const { inHand } = useJobBook().situation;
  const hasTapes = useHasTapes();
  const [choosing, setChoosing] = useState(false);
  const [draft, setDraft] = useState('');
  if (choosing) return <TapeSheet onClose={() => setChoosing(false)} />;
  return (
    <Keypad
      {...pad}
      {...(expected === undefined ? {} : { expected: readingOn(inHand, expected) })}
      draft={draft}
      onDraft={setDraft}
    >
      {hasTapes && <TapeButton onPress={() => setChoosing(true)} />}
    </Keypad>
  );
}
