import { useState } from 'preact/hooks';
import type { GroundLine } from '../../../job/place-schema.ts';
import { groundLinesOf } from '../../../judge/situation.ts';
import { Button, PlanDrawing, Problem, Sheet } from '../../../ui/index.ts';
import { unbroken } from '../../../ui/unbroken.ts';
import { drawnLine } from '../../drawn-site.ts';
import { useJobBook } from '../../job-book.ts';
import { useLog } from '../../use-log.ts';
import { drawnStakes } from './drawn-stakes.ts';
import type { LayDrafts } from './lay-props.ts';
import { LineSheet } from './line-sheet.tsx';

/** Which line is open, by its place in the list; one past the end adds one. */
type Open = number | null;

export interface LinesSheetProps {
  readonly drafts: LayDrafts['lines'];
  readonly onClose: () => void;
}

/** Lines on the ground: what each keeps from the structure, by the plan and as set. */
export function LinesSheet({ drafts, onClose }: LinesSheetProps) {
  const { situation, assessment } = useJobBook();
  const { log } = useLog();
  const [open, setOpen] = useState<Open>(null);
  const { plan, holes, laid, measured } = situation;
  if (!plan) return null;
  const lines = plan.lines ?? [];
  const ground = groundLinesOf(situation);
  const stakes = laid && { motion: laid.motion, baseline: measured?.baseline?.length ?? laid.baseline };
  const save = (at: number) => async (line: GroundLine | null) => {
    const next = line
      ? [...lines.slice(0, at), line, ...lines.slice(at + 1)]
      : lines.filter((_, i) => i !== at);
    const { lines: _, ...rest } = plan;
    const saved = await log({ kind: 'plan', plan: next.length > 0 ? { ...rest, lines: next } : rest });
    // Drafts go by the place in the list, and that may be another line's now.
    if (saved) drafts.clear();
    return saved;
  };
  if (open !== null)
    return (
      <LineSheet
        key={open}
        line={lines[open] ?? null}
        taken={lines.filter((_, i) => i !== open).map(({ name }) => name)}
        stakes={stakes}
        held={heldIn(drafts, open)}
        onSave={save(open)}
        onClose={() => setOpen(null)}
      />
    );
  return (
    <Sheet
      title="Lines on the ground"
      onClose={onClose}
      actions={
        <Button kind="main" onPress={() => setOpen(lines.length)}>
          Add a line
        </Button>
      }
    >
      {lines.length === 0 && (
        <p>
          A boundary or a house that posts and the deck must keep off, or ground where no stake can stand. The
          places of A, B and further stakes mind them.
        </p>
      )}
      {ground.problems.map(({ text }) => (
        <Problem key={text} text={text} />
      ))}
      {ground.lines.length > 0 && (
        <PlanDrawing
          title={`${plan.name}, lines on the ground`}
          units={plan.units}
          holes={holes.map((hole) => ({ ...hole, state: 'planned' as const }))}
          front={Math.PI / 2}
          lines={ground.lines.map((line) => drawnLine(line))}
          {...drawnStakes(situation)}
        />
      )}
      {assessment.lines.map(({ line, text, asSetText }) => (
        <p key={line}>
          {unbroken(
            text === '' ? `${line}: posts can stand on both sides of it.` : `${text} ${asSetText}`.trim(),
          )}
        </p>
      ))}
      {ground.waiting.map((name) => (
        <p key={name}>{name} is told from A and B, and these have no place yet.</p>
      ))}
      {lines.map(({ name }, i) => (
        <Button key={name} onPress={() => setOpen(i)}>
          Change {name}
        </Button>
      ))}
      {lines.length > 0 && (
        <p>Worked out from the plan and from where you say the line runs: no survey of a boundary.</p>
      )}
    </Sheet>
  );
}

function heldIn(drafts: LayDrafts['lines'], at: number) {
  const held = drafts.get(at) ?? { now: null };
  drafts.set(at, held);
  return held;
}
