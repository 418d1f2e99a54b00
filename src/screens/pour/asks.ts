import type { Ask, Plan } from '../../job/plan-schema.ts';

/**
 * Asks for something before concrete goes in. What is asked already by that name is asked for these holes as well.
 *
 * @param holes null for every hole
 */
export function withAsk(plan: Plan, what: string, holes: readonly string[] | null): Plan {
  const asks = plan.asks ?? [];
  const before = asks.find((ask) => ask.what === what);
  const all = holes === null || (before !== undefined && before.holes === undefined);
  const some = [...new Set([...(before?.holes ?? []), ...(holes ?? [])])];
  const next: Ask = all ? { what } : { what, holes: some };
  return { ...plan, asks: before ? asks.map((ask) => (ask === before ? next : ask)) : [...asks, next] };
}

export function withoutAsk(plan: Plan, what: string): Plan {
  const rest = (plan.asks ?? []).filter((ask) => ask.what !== what);
  const { asks: _, ...others } = plan;
  return rest.length === 0 ? others : { ...others, asks: rest };
}
