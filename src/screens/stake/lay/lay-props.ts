/** What is open of the ground and what stands on it. */
export type OpenLay = 'lines' | 'stakes' | 'pegs';

export interface LaySheetProps {
  readonly onClose: () => void;
  /** The plan lies on what is there. */
  readonly onLaid: () => void;
}

export interface OpenLayProps extends LaySheetProps {
  readonly open: OpenLay;
}
