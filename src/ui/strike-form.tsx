import { useState } from 'preact/hooks';
import { Button } from './button.tsx';
import { ChoiceField } from './choice-field.tsx';
import { Problem } from './problem.tsx';
import { Sheet } from './sheet.tsx';
import { TextField } from './text-field.tsx';

export interface StrikeFormProps {
  /** The entry in words: `A to stake 4: 18′ 6 5/16″`. */
  readonly what: string;
  readonly onStrike: (reason: string) => void;
  readonly onClose: () => void;
}

const REASONS = ['misread', 'mistyped', 'wrong hole', 'wrong place on the post', 'other'] as const;
type Reason = (typeof REASONS)[number];

/** A strike's reason may have 500 characters; this leaves room for the chosen word before the user's own. */
const MOST_WORDS = 450;

/** Asks why an entry is struck. Struck entries stay in the log, with this reason. */
export function StrikeForm({ what, onStrike, onClose }: StrikeFormProps) {
  const [reason, setReason] = useState<Reason | null>(null);
  const [words, setWords] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const strike = () => {
    if (reason === null) return setProblem('Reason is not chosen: choose why this entry is struck.');
    if (reason === 'other' && words === '') return setProblem('In your words is empty: say why.');
    onStrike(words === '' ? reason : reason === 'other' ? words : `${reason}: ${words}`);
  };
  const actions = (
    <Button kind="danger" onPress={strike}>
      Strike it
    </Button>
  );
  return (
    <Sheet title="Strike an entry" onClose={onClose} actions={actions}>
      <p class="strike-what">{what}</p>
      <p>It stays in the log, struck through, and no longer counts.</p>
      <ChoiceField
        label="Reason"
        value={reason}
        choices={REASONS.map((value) => ({ value, label: value }))}
        onChange={setReason}
      />
      <TextField label="In your words" value={words} onChange={setWords} maxLength={MOST_WORDS} />
      {problem && <Problem text={problem} />}
    </Sheet>
  );
}
