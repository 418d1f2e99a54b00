import { type Network, type Node, nodesOf } from './network.ts';

/** Which stands of A and B carry the site frame: A's at the origin, B's on the +x axis. */
export interface Datum {
  readonly a: number;
  readonly b: number;
}

/**
 * The frame that the plan was laid in is that of the stakes as they stood when pulling began, after the last `site`
 * entry. A stake that is knocked and driven again is then found in that frame, like anything else.
 */
export function firstDatum(network: Network): Datum {
  return { a: firstPulled(network, 'stake:A'), b: firstPulled(network, 'stake:B') };
}

/** The stakes as they stand now: for when nothing ties them to where they stood first. */
export function presentDatum({ nodes }: Network): Datum {
  return { a: currentOf(nodes, 'stake:A').index, b: currentOf(nodes, 'stake:B').index };
}

function firstPulled(network: Network, key: string): number {
  const { placing } = network;
  const stands = network.nodes.filter((node) => node.key === key);
  const pulledFrom = (order: number) =>
    stands.find(({ index }) => placing.some((one) => one.order > order && nodesOf(one).includes(index)));
  return (pulledFrom(network.lastSite) ?? pulledFrom(-1) ?? currentOf(network.nodes, key)).index;
}

export function currentOf(nodes: readonly Node[], key: string): Node {
  const node = nodes.find((candidate) => candidate.key === key && candidate.current);
  if (!node) throw new Error(`no current stand of ${key}`);
  return node;
}
