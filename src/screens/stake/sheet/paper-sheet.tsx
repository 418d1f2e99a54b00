import { useMemo, useState } from 'preact/hooks';
import drawingStyle from '../../../ui/css/drawing.css?inline';
import marksStyle from '../../../ui/css/marks.css?inline';
import tokensStyle from '../../../ui/css/tokens.css?inline';
import { Button } from '../../../ui/index.ts';
import { PaperFrame } from '../../build/paper-sheet.tsx';
import { useJobBook } from '../../job-book.ts';
import { handOut, type Outcome } from '../../record/back-up.ts';
import { download } from '../../record/download.ts';
import { whenWords } from '../../record/when.ts';
import { useAlone } from '../../use-alone.ts';
import { sheetFile } from './sheet-file.ts';
import './staking.css';
import pageStyle from './staking.css?inline';
import { StakingPaper } from './staking-paper.tsx';
import { stakingSheet } from './staking-sheet.ts';

/** For the file alone: in the app it would set the margins of whatever is printed after. */
const FILE_PAGE = '@page { margin: 12mm; }';

/** The same rules as on the screen go into the file, so that it needs nothing else. */
const STYLE = [tokensStyle, drawingStyle, marksStyle, pageStyle, FILE_PAGE].join('\n');

/** The staking sheet on the screen, and the ways out of the phone: paper, or a file. */
export function PaperSheetOfStaking({ onClose }: { readonly onClose: () => void }) {
  const { situation, assessment, log } = useJobBook();
  const [alone] = useAlone();
  const [said, setSaid] = useState('');
  const sheet = useMemo(
    () =>
      stakingSheet({
        situation,
        assessment,
        alone,
        at: whenWords(new Date().toISOString()),
        entries: log.length,
      }),
    [situation, assessment, alone, log],
  );
  const { plan } = situation;
  if (!sheet || !plan) return null;
  const { units } = plan;
  const give = () => {
    const file = sheetFile(sheet, units, STYLE);
    void handOut(file, navigator, download).then((out) => setSaid(outcomeWords(out)));
  };
  return (
    <PaperFrame
      title="Staking sheet"
      said={said}
      beside={<Button onPress={give}>Share or save</Button>}
      onClose={onClose}
    >
      <StakingPaper sheet={sheet} units={units} />
    </PaperFrame>
  );
}

function outcomeWords(outcome: Outcome): string {
  switch (outcome.how) {
    case 'shared':
      return `“${outcome.name}” was handed to the app you chose.`;
    case 'download':
      return `A download of “${outcome.name}” was started: look among your downloads.`;
    case 'closed':
      return 'Not shared: sharing was closed before a place was chosen.';
  }
}
