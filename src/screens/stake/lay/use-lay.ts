import type { Body, PullEnd, Thing } from '../../../job/entry-schema.ts';
import type { Length } from '../../../job/length.ts';
import type { PlanPlace } from '../../../job/place-schema.ts';
import type { LaidOn, LaidOnPegs, LaidOnStakes } from '../../../plan/index.ts';
import { placeOf } from '../../../plan/index.ts';
import { type Log, useLog } from '../../use-log.ts';
import { STAKE_A, STAKE_B } from '../stake-step.ts';

/** Digits after the point, of metres: a tenth of a millimetre, finer than any tape, so that nothing is lost by rounding. */
const DIGITS = 4;

const fine = (m: number): Length => {
  const typed = m.toFixed(DIGITS);
  return { m: Number(typed), typed, units: 'm' };
};
const finePlace = ({ x, y }: LaidOn['a']): PlanPlace => ({ right: fine(x), front: fine(y) });

/** Where A and B will be logged to stand. */
export const placesIn = (on: LaidOn) => {
  const [a, b] = [finePlace(on.a), finePlace(on.b)];
  return { site: { a, b }, a: placeOf(a), b: placeOf(b) };
};

const hole = (label: string): Thing => ({ kind: 'hole-stake', hole: label });

/** What is logged of a plan that is laid on what is there: the places of A and B, what stands, and the tapes that were read. */
function bodiesOf(laid: LaidOnStakes | LaidOnPegs, on: LaidOn): Body[] {
  const pegs = laid.on === 'pegs' ? laid.pegs : [];
  const things = [STAKE_A, STAKE_B, ...pegs.map((peg) => hole(peg.hole))];
  return [
    { kind: 'site', ...placesIn(on).site, chosenBy: 'user', laid },
    ...things.map((thing): Body => ({ kind: 'stand', thing, event: 'driven', note: 'there already' })),
    pulled(STAKE_A, STAKE_B, laid.baseline),
    ...pegs.flatMap((peg) => [
      pulled(STAKE_A, hole(peg.hole), peg.fromA),
      pulled(STAKE_B, hole(peg.hole), peg.fromB),
    ]),
  ];
}

const pulled = (from: Thing, to: Thing, reading: Length): Body => ({
  kind: 'pull',
  from: nail(from),
  to: nail(to),
  reading,
  hold: { how: 'level' },
});
const nail = (thing: Thing): PullEnd => ({ thing, touch: { at: 'nail' } });

export interface Lay {
  readonly failed: Log['failed'];
  /** Resolves to true once all of it is on disk. What failed half way is begun again by the next try. */
  lay(laid: LaidOnStakes | LaidOnPegs, on: LaidOn): Promise<boolean>;
}

export function useLay(): Lay {
  const { failed, log } = useLog();
  const lay = async (laid: LaidOnStakes | LaidOnPegs, on: LaidOn) => {
    for (const body of bodiesOf(laid, on)) if (!(await log(body))) return false;
    return true;
  };
  return { failed, lay };
}
