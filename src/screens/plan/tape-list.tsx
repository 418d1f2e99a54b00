import { useState } from 'preact/hooks';
import type { TapeSpec } from '../../job/plan-schema.ts';
import { Button } from '../../ui/index.ts';
import type { GroupFor } from './group-for.ts';
import { tapeLine } from './plan-text.ts';
import { TapeFieldsSheet } from './tape-fields-sheet.tsx';

/** The tapes that do not read true. A job needs none: a tape that is not listed is taken as printed. */
export function TapeList({ plan, change }: GroupFor) {
  const [open, setOpen] = useState<{ readonly before: TapeSpec | null } | null>(null);
  const tapes = plan.instruments.tapes ?? [];
  return (
    <>
      <p>
        A tape that is known to read wrong is listed here; then every length that you are told to hold is what
        that tape must read.
      </p>
      {tapes.map((tape) => (
        <Button key={tape.label} onPress={() => setOpen({ before: tape })}>
          {tapeLine(tape, plan.units)}
        </Button>
      ))}
      <Button onPress={() => setOpen({ before: null })}>Add a tape that reads wrong</Button>
      {open && (
        <TapeFieldsSheet plan={plan} before={open.before} change={change} onClose={() => setOpen(null)} />
      )}
    </>
  );
}
