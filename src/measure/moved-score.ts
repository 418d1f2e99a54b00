import type { Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import type { Moment } from './moments.ts';
import type { Solution } from './solution.ts';
import { solveInPlace } from './sparse-cholesky.ts';

/** A moment and the fall of χ² that a move of its stake then would bring. */
export interface Scored {
  readonly moment: Moment;
  readonly stake: Thing;
  readonly fall: number;
}

/**
 * How much χ² would fall if a stake had moved at a moment, by the score test (Rao 1948; Lagrange multiplier): with C the
 * derivatives of the readings since then by the stake's place, g = CᵀWr and S = CᵀWC − CᵀWJ(JᵀWJ)⁻¹JᵀWC, it is gᵀS⁻¹g. Two
 * solutions with the factor that is there already: nothing is settled again.
 */
export function scores(still: Solution, moments: readonly Moment[]): Scored[] {
  return moments.map((moment) => ({ moment, stake: moment.stake, fall: fallAt(still, moment) }));
}

function fallAt(still: Solution, { stake, at }: Moment): number {
  const { network, symbolic } = still.model;
  const key = thingKey(stake);
  const isOfStake = (index: number) => network.nodes[index]!.key === key;
  // The pull at the moment itself may be one that could not be used: the next one of the stake then speaks for it.
  const first = network.pulls.find(
    ({ order, from, to }) => order >= at && (isOfStake(from) || isOfStake(to)),
  );
  if (!first) return 0;
  const node = isOfStake(first.from) ? first.from : first.to;
  const x = new Float64Array(symbolic.size);
  const y = new Float64Array(symbolic.size);
  const g = { x: 0, y: 0 };
  const s = { xx: 0, xy: 0, yy: 0 };
  network.pulls.forEach(({ from, to, order, rise }, k) => {
    if (order < at || (from !== node && to !== node)) return;
    const weight = still.weights[k]!;
    const { direction, predicted, residual, jacobian } = still.evaluation;
    const plan = Math.sqrt(Math.max(predicted[k]! ** 2 - rise ** 2, 0));
    const slope = (to === node ? 1 : -1) * (predicted[k]! > 0 ? plan / predicted[k]! : 1);
    const c = { x: slope * direction[2 * k]!, y: slope * direction[2 * k + 1]! };
    g.x += weight * residual[k]! * c.x;
    g.y += weight * residual[k]! * c.y;
    s.xx += weight * c.x * c.x;
    s.xy += weight * c.x * c.y;
    s.yy += weight * c.y * c.y;
    const { starts, columns } = symbolic.pattern;
    for (let p = starts[k]!; p < starts[k + 1]!; p++) {
      const position = symbolic.position[columns[p]!]!;
      x[position]! += weight * jacobian[p]! * c.x;
      y[position]! += weight * jacobian[p]! * c.y;
    }
  });
  const size = s.xx + s.yy;
  const [qx, qy] = [x.slice(), y.slice()];
  solveInPlace(symbolic, still.factor, qx);
  solveInPlace(symbolic, still.factor, qy);
  for (let i = 0; i < symbolic.size; i++) {
    s.xx -= x[i]! * qx[i]!;
    s.xy -= x[i]! * qy[i]!;
    s.yy -= y[i]! * qy[i]!;
  }
  return quadratic(s, g, size * NO_SAY);
}

/** A direction of which the readings say less than this share of what they weigh is left open: rounding. */
const NO_SAY = 1e-6;

/** gᵀS⁺g of a symmetric 2 × 2 S, by its own directions; those with an eigenvalue up to `least` say nothing. */
function quadratic(
  { xx, xy, yy }: { xx: number; xy: number; yy: number },
  g: { x: number; y: number },
  least: number,
): number {
  const turn = Math.atan2(2 * xy, xx - yy) / 2;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const along = c * c * xx + 2 * c * s * xy + s * s * yy;
  const across = s * s * xx - 2 * c * s * xy + c * c * yy;
  const [p, q] = [c * g.x + s * g.y, c * g.y - s * g.x];
  return (along > least ? p ** 2 / along : 0) + (across > least ? q ** 2 / across : 0);
}
