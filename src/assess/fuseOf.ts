import type { Model } from './model.ts';
import { farEnd, reach } from './sides.ts';

/** The nodes that cables join a cable to, and the links at their edge. */
function regionOf({ sides, circuit }: Model, cable: number): { nodes: number[]; links: number[] } {
  const { a = 0, b = 0 } = circuit.cables[cable] ?? {};
  const inside = reach([a, b], sides, ({ kind }) => kind === 'cable');
  return {
    nodes: inside.flatMap((is, node) => (is ? [node] : [])),
    links: sides.edges.flatMap((edge) =>
      edge.kind === 'link' && (inside[edge.a] === true || inside[edge.b] === true) ? [edge.index] : [],
    ),
  };
}

/** Whether current can come in through a link, seen from the nodes on this side of it. */
function feeds({ sides, circuit }: Model, link: number, inside: readonly number[]): boolean {
  const edge = sides.edges.find(({ kind, index }) => kind === 'link' && index === link);
  if (edge === undefined) return false;
  const near = inside.includes(edge.a) ? edge.a : edge.b;
  const beyond = reach(
    [farEnd(edge, near)],
    sides,
    ({ kind, index }) => kind !== 'bond' && !(kind === 'link' && index === link),
  );
  return circuit.sources.some(({ plus }) => beyond[plus] === true);
}

/** The links that let current into a live cable's part of the circuit: those that close it off from every source. */
function feedingLinks(model: Model, cable: number): { feeding: number[]; nodes: number[]; links: number[] } {
  const { nodes, links } = regionOf(model, cable);
  return { feeding: links.filter((link) => feeds(model, link, nodes)), nodes, links };
}

/**
 * By fuse that lets current into a live cable: the cables that all of it must pass to get there, what lies ahead of it in
 * series. No lists for a return or ahead of the first device.
 */
export function upstreamOf(model: Model, cable: number): number[][] {
  const { sides, circuit } = model;
  const ends = circuit.cables[cable];
  if (ends === undefined || sides.live[ends.a] !== true) return [];
  const { feeding, nodes } = feedingLinks(model, cable);
  const inside = [...circuit.cables.keys()].filter(
    (other) => other !== cable && nodes.includes(circuit.cables[other]?.a ?? -1),
  );
  return feeding.map((link) => {
    const { a = -1, b = -1 } = circuit.links[link] ?? {};
    const entries = [a, b].filter((node) => nodes.includes(node));
    return inside.filter((out) => {
      const fed = reach(entries, sides, ({ kind, index }) => kind === 'cable' && index !== cable && index !== out);
      return fed[ends.a] !== true && fed[ends.b] !== true;
    });
  });
}

/**
 * The link to name when a cable's fuse is spoken of: of those that let current into it, the one of the greatest
 * rating; ahead of the first device, the greatest that lets it out; for a ground, the nearest that carries no more
 * than its amplifiers' current. Null when there is none.
 */
export function fuseOf(model: Model, cable: number, ratings: readonly (number | null)[]): number | null {
  const { sides, circuit, ways } = model;
  const ends = circuit.cables[cable];
  if (ends === undefined) return null;
  const greatest = (links: readonly number[]): number | null =>
    [...links].sort((one, other) => (ratings[other] ?? 0) - (ratings[one] ?? 0) || one - other)[0] ?? null;
  if (sides.live[ends.a] === true) {
    const { feeding, links } = feedingLinks(model, cable);
    return greatest(feeding.length > 0 ? feeding : links);
  }
  const loads = ways.behind[cable] ?? [];
  const around = circuit.links
    .map((_, link) => ({ link, behind: ways.behind[circuit.cables.length + link] ?? [] }))
    .filter(({ behind }) => loads.length > 0 && loads.every((load) => behind.includes(load)));
  const fewest = Math.min(...around.map(({ behind }) => behind.length));
  return greatest(around.filter(({ behind }) => behind.length === fewest).map(({ link }) => link));
}
