import { useState } from 'preact/hooks';
import type { CutTo } from '../../build/cuts.ts';
import type { Length } from '../../job/length.ts';
import type { AsBuilt } from '../../judge/as-built.ts';
import { cutMarks, seatsAsBuilt } from '../../judge/cut-marks.ts';
import type { JobView } from '../../judge/view.ts';
import { Caution } from '../../ui/index.ts';
import { Profile } from '../../ui/profile/profile.tsx';
import { unbroken } from '../../ui/unbroken.ts';
import { useJobBook } from '../job-book.ts';
import { More } from '../more.tsx';
import { CutsSection, cutSentences } from './cuts-section.tsx';
import { frameCautions, heightWords } from './frame-cautions.ts';
import {
  cornersTable,
  cutsTable,
  diagonalsTable,
  fallsTable,
  seatsTable,
  sidesTable,
} from './frame-tables.ts';
import { PaperSheet } from './paper-sheet.tsx';
import { asText, PaperTableView } from './paper-table.tsx';
import { profileOf } from './profile-of.ts';
import { RoundSection } from './round-section.tsx';
import { SeatsSection } from './seats-section.tsx';
import { SquareSection } from './square-section.tsx';

export interface FrameSheetProps {
  readonly view: JobView;
  readonly built: AsBuilt;
  readonly onClose: () => void;
}

const TITLE = 'Frame and cuts';
const MEANS =
  'Cut to these, not to the drawing. Centres: from the middle of one post to the middle of the other. Faces: along that line, from face to face. After ± stands what holds the truth 19 times in 20.';
const SAW =
  'Saw set to: off a square cut, half of what the two beams deviate from one straight line. It holds for two beams of one width that meet over the middle of the post.';

/** What the beams and the tops are cut to: the posts as they stand, with what is still in doubt said first. */
export function FrameSheet({ view, built, onClose }: FrameSheetProps) {
  const { assessment } = useJobBook();
  const [to, setTo] = useState<CutTo>('plan');
  const [line, setLine] = useState<Length | null>(null);
  const cuts = cutMarks(view, to);
  const seats = seatsAsBuilt(view);
  const cautions = frameCautions(view, assessment, built);
  const tables = {
    sides: sidesTable(view, built.frame),
    corners: cornersTable(view, built.frame),
    diagonals: diagonalsTable(view, built.frame),
    cuts: cutsTable(view, cuts, line?.m ?? null),
    seats: seatsTable(view, seats),
    falls: fallsTable(view, seats),
  };
  const text = () =>
    asText(
      `${view.plan.name}: ${TITLE}`,
      [...cautions, MEANS, heightWords(view, built), SAW, ...cutSentences(view, cuts, to)],
      Object.values(tables),
    );
  return (
    <PaperSheet title={TITLE} job={view.plan.name} text={text} onClose={onClose}>
      {cautions.length > 0 && (
        <Caution title="before you cut">
          <ul class="points">
            {cautions.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </Caution>
      )}
      <p>{MEANS}</p>
      <p>{heightWords(view, built)}</p>
      <PaperTableView {...tables.sides} />
      {tables.corners.rows.length > 0 && (
        <>
          <PaperTableView {...tables.corners} />
          <p>{SAW}</p>
        </>
      )}
      {tables.diagonals.rows.length > 0 && (
        <More label={`Diagonals: ${tables.diagonals.rows.length}`}>
          <PaperTableView {...tables.diagonals} />
        </More>
      )}
      <SquareSection view={view} built={built} />
      <RoundSection view={view} built={built} />
      <CutsSection view={view} cuts={cuts} to={to} onTo={setTo} line={line} onLine={setLine}>
        {cutSentences(view, cuts, to).map((words) => (
          <p key={words}>{unbroken(words)}</p>
        ))}
        <PaperTableView {...tables.cuts} />
      </CutsSection>
      {tables.seats.rows.length > 1 && (
        <SeatsSection view={view} highest={seats.highest} tables={[tables.seats, tables.falls]} />
      )}
      <h3>The posts unrolled, from the side</h3>
      <Profile title={view.plan.name} units={view.plan.units} {...profileOf(view, cuts)} />
    </PaperSheet>
  );
}
