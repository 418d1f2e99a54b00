/** What is seldom wanted in the Pour phase. */
export type PourMore = 'why' | 'asks' | 'times';

export interface PourMoreProps {
  readonly more: PourMore;
  readonly hole: string;
  readonly onClose: () => void;
}
