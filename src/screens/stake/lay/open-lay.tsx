import type { OpenLayProps } from './lay-props.ts';
import { LinesSheet } from './lines-sheet.tsx';
import { OnPegsSheet } from './on-pegs-sheet.tsx';
import { OnStakesSheet } from './on-stakes-sheet.tsx';

/** The sheet that is wanted; all three come in one file. */
export function OpenLay({ open, ...sheet }: OpenLayProps) {
  switch (open) {
    case 'lines':
      return <LinesSheet drafts={sheet.drafts.lines} onClose={sheet.onClose} />;
    case 'stakes':
      return <OnStakesSheet {...sheet} />;
    case 'pegs':
      return <OnPegsSheet {...sheet} />;
  }
}
