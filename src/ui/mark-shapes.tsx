import type { Verdict } from '../judge/types.ts';

/** How far a hole has come. */
export type HoleState = 'planned' | 'staked' | 'dug' | 'set' | 'poured';

export interface HoleLook {
  readonly state: HoleState;
  readonly verdict?: Verdict;
  /** False: no spare reading guards it. Then its mark is hollow, never filled. */
  readonly checked?: boolean;
  /** Read before its concrete went in and not since: then what was in is not said to be in, and has no tick. */
  readonly beforePour?: boolean;
  /** It waits for a decision: that is its word. */
  readonly undecided?: boolean;
}

const VERDICT_WORDS: Record<Verdict, string> = {
  in: 'in',
  out: 'out',
  unsure: 'unsure',
  unmeasured: 'unmeasured',
};

/** `in`, `out`, `unsure` or `unmeasured`, and `, unchecked` where no spare reading guards what was measured. */
export function verdictWord(verdict: Verdict, checked = true): string {
  return checked || verdict === 'unmeasured'
    ? VERDICT_WORDS[verdict]
    : `${VERDICT_WORDS[verdict]}, unchecked`;
}

/** A hole's verdict in words; null where it has none: `in`, `out, unchecked`, `in before the pour`, `waits for a decision`. */
export function lookWord({
  verdict,
  checked,
  beforePour = false,
  undecided = false,
}: HoleLook): string | null {
  if (undecided) return 'waits for a decision';
  if (verdict === undefined) return null;
  const word = verdictWord(verdict, checked);
  return beforePour && verdict === 'in' ? `${word} before the pour` : word;
}

/** A hole's state and verdict in words: `set, out`, `staked, unmeasured`, `planned`. */
export function holeWords(look: HoleLook): string {
  const word = lookWord(look);
  return word === null ? look.state : `${look.state}, ${word}`;
}

export interface ShapeProps {
  /** Centre and half size, in the svg's own units. */
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/**
 * Tick in a disc, cross in a square, question mark in a triangle, dashed hollow ring. Hollow when unchecked; and what is in and
 * unchecked has no tick, but a ring that is half filled: in the sun a tick is a tick.
 */
export function VerdictShape({
  x,
  y,
  r,
  verdict,
  checked = true,
}: ShapeProps & { readonly verdict: Verdict; readonly checked?: boolean }) {
  const fill = checked ? 'shape-filled' : 'shape-hollow';
  return (
    <g class={`shape shape-${verdict} ${fill}`} transform={`translate(${x} ${y}) scale(${r / 12})`}>
      {verdict === 'in' && !checked && (
        <>
          <circle class="shape-body" r="11" />
          <path class="shape-half" d="M0 -11 A11 11 0 0 0 0 11 Z" />
        </>
      )}
      {verdict === 'in' && checked && (
        <>
          <circle class="shape-body" r="11" />
          <path class="shape-sign" d="M-5.5 0.5 L-1.5 4.5 L5.5 -4" />
        </>
      )}
      {verdict === 'out' && (
        <>
          <rect class="shape-body" x="-11" y="-11" width="22" height="22" />
          <path class="shape-sign" d="M-5 -5 L5 5 M5 -5 L-5 5" />
        </>
      )}
      {verdict === 'unsure' && (
        <>
          <path class="shape-body" d="M0 -12 L13 11 L-13 11 Z" />
          <path class="shape-sign" d="M-3.4 -1.6 A3.5 3.5 0 1 1 1.2 1.2 Q0 1.8 0 4" />
          <circle class="shape-dot" cy="7.4" r="1.5" />
        </>
      )}
      {verdict === 'unmeasured' && <circle class="shape-dashed" r="10.5" />}
    </g>
  );
}

/**
 * A hole by its state where there is no verdict to show. Planned: dashed ring. Staked: ring with a nail in it. Dug: a dark
 * hole. Set or poured and not measured: a post in a dashed ring.
 */
function StateShape({ x, y, r, state }: ShapeProps & { readonly state: HoleState }) {
  return (
    <g class="shape shape-state" transform={`translate(${x} ${y}) scale(${r / 12})`}>
      {state === 'planned' && <circle class="shape-dashed" r="10.5" />}
      {state === 'staked' && (
        <>
          <circle class="shape-ring" r="10.5" />
          <circle class="shape-dot" r="3" />
        </>
      )}
      {state === 'dug' && (
        <>
          <circle class="shape-ring" r="10.5" />
          <circle class="shape-dot" r="7" />
        </>
      )}
      {(state === 'set' || state === 'poured') && (
        <>
          <circle class="shape-dashed" r="10.5" />
          <rect class="shape-dot" x="-4.5" y="-4.5" width="9" height="9" />
        </>
      )}
    </g>
  );
}

/** The verdict's shape where something was measured, else the state's. */
export function HoleShape({
  x,
  y,
  r,
  state,
  verdict,
  checked = true,
  beforePour = false,
}: ShapeProps & HoleLook) {
  return verdict === undefined || verdict === 'unmeasured' ? (
    <StateShape x={x} y={y} r={r} state={state} />
  ) : (
    <VerdictShape
      x={x}
      y={y}
      r={r}
      verdict={verdict}
      checked={checked && !(beforePour && verdict === 'in')}
    />
  );
}
