import { useState } from 'preact/hooks';
import { Button, ChoiceField, Problem, Sheet } from '../../ui/index.ts';
import { TextInput } from '../../ui/text-input.tsx';
import { ok, type Result, refuse, type Units } from '../../units/index.ts';
import { MOST_NAME, UNIT_CHOICES } from '../job-choices.ts';
import { useTyped } from '../use-typed.ts';

export interface NewJobSheetProps {
  /** Why it could not be begun; null while nothing is known against it. */
  readonly problem: string | null;
  readonly onCreate: (name: string, units: Units) => void;
  readonly onClose: () => void;
}

/** Asks the two things that the rest of the job hangs on. */
export function NewJobSheet({ problem, onCreate, onClose }: NewJobSheetProps) {
  const name = useTyped(readName);
  const [units, setUnits] = useState<Units | null>(null);
  const [lacking, setLacking] = useState<string | null>(null);
  const create = () => {
    const text = name.take();
    setLacking(units === null ? 'Units are not chosen: choose what your tape is marked in.' : null);
    if (text !== null && units !== null) onCreate(text, units);
  };
  const trouble = lacking ?? problem;
  return (
    <Sheet
      title="New job"
      onClose={onClose}
      actions={
        <Button kind="main" onPress={create}>
          Begin the plan
        </Button>
      }
    >
      <TextInput label="Name" draft={name.draft} />
      <ChoiceField label="Your tape is marked in" value={units} choices={UNIT_CHOICES} onChange={setUnits} />
      {trouble && <Problem text={trouble} />}
    </Sheet>
  );
}

function readName(text: string): Result<string> {
  const clean = text.trim();
  if (clean === '')
    return refuse('Name', 'Name is empty: type what this job is, such as “Shed, north side”.');
  if (clean.length > MOST_NAME)
    return refuse('Name', `Name has ${clean.length} characters: shorten it to ${MOST_NAME} or fewer.`);
  return ok(clean);
}
