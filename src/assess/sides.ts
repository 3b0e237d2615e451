/** Which nodes are live, which are on the way back, and which element carries whose current. */
import type { Circuit } from './circuit.ts';

/** An element between two nodes: cables first, then links, bonds and contacts, each in the circuit's order. */
export interface Edge {
  readonly kind: 'cable' | 'link' | 'bond' | 'contact';
  /** In the circuit's own list of that kind. */
  readonly index: number;
  readonly a: number;
  readonly b: number;
}

export interface Sides {
  readonly edges: readonly Edge[];
  /** By node: the edges that end there. */
  readonly at: readonly (readonly number[])[];
  /** By node: reached from a positive post through cables, links and contacts. */
  readonly live: readonly boolean[];
  /** By node: joined to a negative post through cables, links, the body and straps. */
  readonly back: readonly boolean[];
  /** By node: a number that nodes joined through cables, links and contacts share. */
  readonly livePart: readonly number[];
  /** By node: a number that nodes joined in any way but through loads and sources share. */
  readonly backPart: readonly number[];
}

function edgesOf({ cables, links, bonds, contacts }: Circuit): Edge[] {
  return [
    ...cables.map(({ a, b }, index): Edge => ({ kind: 'cable', index, a, b })),
    ...links.map(({ a, b }, index): Edge => ({ kind: 'link', index, a, b })),
    ...bonds.map(({ a, b }, index): Edge => ({ kind: 'bond', index, a, b })),
    ...contacts.map(({ a, b }, index): Edge => ({ kind: 'contact', index, a, b })),
  ];
}

/** The far end of an edge. */
export const farEnd = ({ a, b }: Edge, node: number): number => (a === node ? b : a);

/** Nodes joined to the starting ones through the edges that pass. */
export function reach(
  starts: readonly number[],
  { edges, at }: Pick<Sides, 'edges' | 'at'>,
  passes: (edge: Edge) => boolean,
): boolean[] {
  const reached = at.map(() => false);
  const queue = [...starts];
  for (const node of queue) reached[node] = true;
  for (const node of queue) {
    for (const index of at[node] ?? []) {
      const edge = edges[index];
      if (edge === undefined || !passes(edge)) continue;
      const next = farEnd(edge, node);
      if (reached[next]) continue;
      reached[next] = true;
      queue.push(next);
    }
  }
  return reached;
}

/** Connected parts through the edges that pass, by node: the lowest node of each. */
export function partsOf(on: Pick<Sides, 'edges' | 'at'>, passes: (edge: Edge) => boolean): number[] {
  const parts = on.at.map(() => -1);
  for (const start of on.at.keys()) {
    if (parts[start] !== -1) continue;
    const queue = [start];
    parts[start] = start;
    for (const node of queue) {
      for (const index of on.at[node] ?? []) {
        const edge = on.edges[index];
        if (edge === undefined || !passes(edge)) continue;
        const next = farEnd(edge, node);
        if (parts[next] !== -1) continue;
        parts[next] = start;
        queue.push(next);
      }
    }
  }
  return parts;
}

export function sidesOf(circuit: Circuit): Sides {
  const edges = edgesOf(circuit);
  const at = Array.from({ length: circuit.nodes }, (): number[] => []);
  for (const [index, { a, b }] of edges.entries()) {
    at[a]?.push(index);
    if (b !== a) at[b]?.push(index);
  }
  const livePart = partsOf({ edges, at }, ({ kind }) => kind !== 'bond');
  const backPart = partsOf({ edges, at }, () => true);
  const livePosts = new Set(circuit.sources.map(({ plus }) => livePart[plus]));
  const backPosts = new Set(circuit.sources.map(({ minus }) => backPart[minus]));
  return {
    edges,
    at,
    live: livePart.map((part) => livePosts.has(part)),
    back: backPart.map((part) => backPosts.has(part)),
    livePart,
    backPart,
  };
}

/** Whether a live conductor is joined to the body or to a negative post with no load between: a dead short. */
export const isShorted = ({ live, back }: Sides): boolean => live.some((isLive, node) => isLive && back[node] === true);
