/** One hole as it is seen from the side; heights above the benchmark, metres. */
export interface ProfiledHole {
  readonly label: string;
  /** Along the unrolled outline, metres. */
  readonly at: number;
  readonly postWidth: number;
  readonly holeWidth: number;
  readonly ground: number;
  /** False where nobody measured it: it is drawn level, and broken. */
  readonly groundMeasured: boolean;
  /** Of the hole; null where neither a reading nor a rule says how deep it goes. */
  readonly bottom: number | null;
  readonly dug: boolean;
  /** Thickness. */
  readonly gravel: number;
  readonly top: number;
  readonly topMeasured: boolean;
  /** Null where there is no cut to mark. */
  readonly cut: number | null;
  /** A pier is concrete from the bottom to its top. */
  readonly kind: 'post' | 'pier';
}

export interface Profiled {
  /** Each line is a run of holes side by side; a ring is one run. */
  readonly lines: readonly (readonly ProfiledHole[])[];
  /** Below the ground, metres; null while it is not known. */
  readonly frost: number | null;
}
