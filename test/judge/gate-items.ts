import type { Gate, GateItem } from '../../src/judge/types.ts';

export const itemOf = (gate: Gate, item: GateItem['item']): GateItem => {
  const found = gate.items.find((candidate) => candidate.item === item);
  if (!found) throw new Error(`no item ${item}`);
  return found;
};
export const reds = (gate: Gate) => gate.items.filter(({ green }) => !green).map(({ item }) => item);
