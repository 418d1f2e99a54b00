import type { Units } from '../units/index.ts';
import { Figure } from './figure.tsx';
import { unbroken } from './unbroken.ts';

export interface PullRowProps {
  /** What the zero end touches: `from A’s nail`. */
  readonly from: string;
  /** What the other end touches, when the card's own words do not say it: `to the nail in stake 4`. */
  readonly to?: string;
  /** How the tape is held: `tape level`. A length is never shown without it. */
  readonly held: string;
  /** Metres, as the tape reads. */
  readonly m: number;
  readonly units: Units;
  /** The pull that is being made now. */
  readonly live?: boolean;
  /** A reading already taken, in words: `read 18′ 6 1/4″`. */
  readonly note?: string;
}

/** One pull: what it touches, how it is held, and its length in large figures. */
export function PullRow({ from, to, held, m, units, live = false, note }: PullRowProps) {
  return (
    <div class={live ? 'pull-row pull-row-live' : 'pull-row'}>
      <p class="pull-row-words">
        <span class="pull-row-ends">
          {from}
          {to && ` ${to}`}
        </span>{' '}
        <span class="pull-row-held">{held}</span>
        {note && <span class="pull-row-note"> {unbroken(note)}</span>}
      </p>
      <Figure m={m} units={units} />
    </div>
  );
}
