import { useState } from 'preact/hooks';
import { Button } from '../../ui/button.tsx';
import { ChoiceField } from '../../ui/choice-field.tsx';
import { Problem } from '../../ui/problem.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { TextField } from '../../ui/text-field.tsx';
import type { Units } from '../../units/index.ts';
import { MOST_NAME, UNIT_CHOICES } from '../job-choices.ts';

export interface NewJobSheetProps {
  readonly onCreate: (name: string, units: Units) => void;
  readonly onClose: () => void;
}

/** Asks the two things that the rest of the job hangs on. */
export function NewJobSheet({ onCreate, onClose }: NewJobSheetProps) {
  const [name, setName] = useState('');
  const [units, setUnits] = useState<Units | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const create = () => {
    if (name === '') return setProblem('Name is empty: type what this job is, such as “Shed, north side”.');
    if (units === null) return setProblem('Units are not chosen: choose what your tape is marked in.');
    onCreate(name, units);
  };
  const actions = (
    <Button kind="main" onPress={create}>
      Begin the plan
    </Button>
  );
  return (
    <Sheet title="New job" onClose={onClose} actions={actions}>
      {problem && <Problem text={problem} />}
      <TextField label="Name" value={name} onChange={setName} maxLength={MOST_NAME} required />
      <ChoiceField label="Your tape is marked in" value={units} choices={UNIT_CHOICES} onChange={setUnits} />
    </Sheet>
  );
}
