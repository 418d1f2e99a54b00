import type { Length } from '../../job/length.ts';
import { defaultsFor } from '../../plan/index.ts';
import type { Units } from '../../units/index.ts';

/** Two values nearer than this are the same: far below anything that is built. Metres, or metres per metre. */
const SAME = 1e-9;

/**
 * Where a field's value comes from, as a clause for its `usual`; nothing once it is no longer the default. Spread into a
 * field's props.
 *
 * @param path as in `defaultsFor`
 */
export function fromDefault(
  path: string,
  value: Length | number | null,
  units: Units,
): { readonly usual?: string } {
  const typedIn = typeof value === 'object' && value !== null ? value.units : units;
  const row = defaultsFor(typedIn).find((candidate) => candidate.path === path);
  if (!row || !isSame(row.value, value)) return {};
  const clause = row.from.replace(/\.$/, '');
  return { usual: clause.slice(0, 1).toLowerCase() + clause.slice(1) };
}

function isSame(one: Length | number | null, other: Length | number | null): boolean {
  if (one === null || other === null) return one === other;
  const metres = (value: Length | number) => (typeof value === 'number' ? value : value.m);
  return Math.abs(metres(one) - metres(other)) <= SAME;
}
