import { useState } from 'preact/hooks';
import { pointsFromCsv } from '../../plan/index.ts';
import { Button, FilePick, Sheet } from '../../ui/index.ts';
import { TextInput } from '../../ui/text-input.tsx';
import { EXAMPLES } from '../../units/index.ts';
import type { GroupFor } from './group-for.ts';
import { withPoints } from './plan-edits.ts';

export interface CsvSheetProps extends GroupFor {
  readonly onClose: () => void;
}

/** Lines of the box: enough to see the header and a few holes. */
const BOX_LINES = 7;

/** Brings in a list of points, pasted or out of a file; it is looked at before it takes the place of the holes. A list that cannot be read stays in the box with the reason. */
export function CsvSheet({ plan, change, onClose }: CsvSheetProps) {
  const [text, setText] = useState('');
  const [error, setError] = useState<string | null>(null);
  const use = () => {
    const points = pointsFromCsv(text, plan.units);
    if (!points.ok) return setError(points.problem.text);
    change((before) => withPoints(before, points.value));
    onClose();
  };
  const open = async (file: File) => {
    setText(await file.text());
    setError(null);
  };
  const example = EXAMPLES[plan.units];
  return (
    <Sheet
      title="Bring in a list"
      onClose={onClose}
      actions={
        <Button kind="main" onPress={use}>
          Use this list
        </Button>
      }
    >
      <p>It takes the place of all the holes there are now.</p>
      <TextInput
        label="List of holes"
        hint={`First line: label,right,front. Then a line for each hole, such as: 1,${example},${example}`}
        lines={BOX_LINES}
        draft={{ text, error, edit: setText, commit: () => {} }}
      />
      <FilePick
        label="Open a CSV file"
        accept=".csv,.txt,text/csv,text/plain"
        onFile={(file) => void open(file)}
      />
    </Sheet>
  );
}
