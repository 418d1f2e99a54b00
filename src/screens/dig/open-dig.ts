/** What is being entered about a hole; `shaved`: it is another hole since, and its size is read again. */
export interface OpenDig {
  readonly take: 'dug' | 'shaved' | 'decide' | 'middle' | 'string' | 'ground' | 'own-depth';
  readonly hole: string;
}

export interface OpenDigProps {
  readonly open: OpenDig;
  readonly onClose: () => void;
}
