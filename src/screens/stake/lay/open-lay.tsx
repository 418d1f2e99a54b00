import type { OpenLayProps } from './lay-props.ts';
import { LinesSheet } from './lines-sheet.tsx';
import { OnPegsSheet } from './on-pegs-sheet.tsx';
import { OnStakesSheet } from './on-stakes-sheet.tsx';

/** The sheet that is wanted; all three come in one file. */
export function OpenLay({ open, onClose, onLaid }: OpenLayProps) {
  switch (open) {
    case 'lines':
      return <LinesSheet onClose={onClose} />;
    case 'stakes':
      return <OnStakesSheet onClose={onClose} onLaid={onLaid} />;
    case 'pegs':
      return <OnPegsSheet onClose={onClose} onLaid={onLaid} />;
  }
}
