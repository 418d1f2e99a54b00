import type { OpenListProps } from './list-props.ts';
import { PaperSheetOfStaking } from './paper-sheet.tsx';
import { PullListSheet } from './pull-list-sheet.tsx';

/** The pull list, and one tap further the staking sheet. */
export function ListSheet({ open, onOpen }: OpenListProps) {
  return open === 'list' ? (
    <PullListSheet onClose={() => onOpen(null)} onPaper={() => onOpen('paper')} />
  ) : (
    <PaperSheetOfStaking onClose={() => onOpen('list')} />
  );
}
