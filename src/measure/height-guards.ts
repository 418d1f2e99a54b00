import type { FoundHeight, HeightNetwork, SolvedHeights } from './height-network.ts';
import { BENCHMARK } from './height-rows.ts';
import { GUARDED_FROM, MOVES_FROM, smallestCaught } from './reliability.ts';
import { solveInPlace } from './sparse-cholesky.ts';
import type { MeasuredHeight } from './types.ts';

/**
 * Heights with what guards them: how far the worst misreading that would go unseen could move each (external reliability:
 * Baarda 1968), and which of its readings nothing guards.
 */
export function guardedHeights(network: HeightNetwork, solved: SolvedHeights): MeasuredHeight[] {
  const found = network.points(solved);
  const positions = found.map(({ key }) => network.positionOf(key)!);
  const shifts = new Float64Array(found.length);
  const unguarded = found.map((): string[] => []);
  network.rows.forEach(({ entry }, k) => {
    const response = responseTo(network, solved, k);
    const redundancy = solved.redundancy[k]!;
    const open = redundancy < GUARDED_FROM;
    const missed = smallestCaught(Math.sqrt(network.variances[k]!), redundancy);
    for (let i = 0; i < positions.length; i++) {
      const moved = Math.abs(response[positions[i]!]!) * solved.weights[k]!;
      if (!open) shifts[i] = Math.max(shifts[i]!, moved * missed);
      else if (moved > MOVES_FROM) unguarded[i]!.push(entry);
    }
  });
  const of = (each: FoundHeight, i: number): MeasuredHeight => ({
    ...each,
    unseenShift: unguarded[i]!.length > 0 ? Number.POSITIVE_INFINITY : shifts[i]!,
    unguarded: unguarded[i]!,
  });
  return [{ key: BENCHMARK, height: 0, sigma: 0, unseenShift: 0, unguarded: [] }, ...found.map(of)];
}

/** Q Jᵀ of one row, by position. */
function responseTo(
  { symbolic, jacobian }: HeightNetwork,
  { factor }: SolvedHeights,
  k: number,
): Float64Array {
  const { pattern, position, size } = symbolic;
  const out = new Float64Array(size);
  for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++)
    out[position[pattern.columns[p]!]!] = jacobian[p]!;
  solveInPlace(symbolic, factor, out);
  return out;
}
