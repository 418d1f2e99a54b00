/** What every phase's screen is given. */
export interface PhaseProps {
  /** The hole in the address; without one the screen proposes the next thing to do. */
  readonly hole: string | null;
}
