import type { Model } from './model.ts';
import { farEnd, reach } from './sides.ts';

/** The cables a live cable is joined to without a link between, itself included, and the links at their ends. */
export function regionOf({ sides, circuit }: Model, cable: number): { cables: number[]; links: number[] } {
  const { a = 0, b = 0 } = circuit.cables[cable] ?? {};
  const inside = reach([a, b], sides, ({ kind }) => kind === 'cable');
  const touching = sides.edges.filter((edge) => inside[edge.a] === true || inside[edge.b] === true);
  return {
    cables: touching.filter(({ kind }) => kind === 'cable').map(({ index }) => index),
    links: touching.filter(({ kind }) => kind === 'link').map(({ index }) => index),
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
    const { links } = regionOf(model, cable);
    const inside = reach([ends.a, ends.b], sides, ({ kind }) => kind === 'cable');
    const nodes = inside.flatMap((is, node) => (is ? [node] : []));
    const feeding = links.filter((link) => feeds(model, link, nodes));
    return greatest(feeding.length > 0 ? feeding : links);
  }
  const loads = ways.behind[cable] ?? [];
  const around = circuit.links
    .map((_, link) => ({ link, behind: ways.behind[circuit.cables.length + link] ?? [] }))
    .filter(({ behind }) => loads.length > 0 && loads.every((load) => behind.includes(load)));
  const fewest = Math.min(...around.map(({ behind }) => behind.length));
  return greatest(around.filter(({ behind }) => behind.length === fewest).map(({ link }) => link));
}
