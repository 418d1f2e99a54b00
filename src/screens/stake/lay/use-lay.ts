import type { Body, PullEnd, Thing } from '../../../job/entry-schema.ts';
import type { Length } from '../../../job/length.ts';
import type { PlanPlace } from '../../../job/place-schema.ts';
import type { LaidOn, LaidOnPegs, LaidOnStakes } from '../../../plan/index.ts';
import { layPlan, placeOf } from '../../../plan/index.ts';
import type { Result } from '../../../units/index.ts';
import { useJobBook } from '../../job-book.ts';
import { tapeLogged } from '../../tape-logged.ts';
import { type Log, useLog } from '../../use-log.ts';
import { STAKE_A, STAKE_B } from '../stake-step.ts';
import { fine } from './fine.ts';

const finePlace = ({ x, y }: LaidOn['a']): PlanPlace => ({ right: fine(x), front: fine(y) });

/** Where A and B will be logged to stand. */
export const placesIn = (on: LaidOn) => {
  const [a, b] = [finePlace(on.a), finePlace(on.b)];
  return { site: { a, b }, a: placeOf(a), b: placeOf(b) };
};

/** Refuses what would lie nowhere once its places are logged, so that it never is. */
export function checkLaid<On extends LaidOn>(on: Result<On>): Result<On> {
  if (!on.ok) return on;
  const laid = layPlan(placesIn(on.value).site, []);
  return laid.ok ? on : laid;
}

const hole = (label: string): Thing => ({ kind: 'hole-stake', hole: label });

type ByTape = ReturnType<typeof tapeLogged>;

/** What is logged of a plan that is laid on what is there: the places of A and B, what stands, and the tapes that were read. */
function bodiesOf(laid: LaidOnStakes | LaidOnPegs, on: LaidOn, by: ByTape): Body[] {
  const pulled = (from: Thing, to: Thing, reading: Length): Body => ({
    kind: 'pull',
    from: nail(from),
    to: nail(to),
    reading,
    hold: { how: 'level' },
    ...by,
  });
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

const nail = (thing: Thing): PullEnd => ({ thing, touch: { at: 'nail' } });

export interface Lay {
  readonly failed: Log['failed'];
  /** `laid` as typed, `on` by what is there. Resolves to true once all of it is on disk. What failed half way is begun again by the next try. */
  lay(laid: LaidOnStakes | LaidOnPegs, on: LaidOn): Promise<boolean>;
}

export function useLay(): Lay {
  const { inHand } = useJobBook().situation;
  const { failed, log } = useLog();
  const lay = async (laid: LaidOnStakes | LaidOnPegs, on: LaidOn) => {
    for (const body of bodiesOf(laid, on, tapeLogged(inHand))) if (!(await log(body))) return false;
    return true;
  };
  return { failed, lay };
}
