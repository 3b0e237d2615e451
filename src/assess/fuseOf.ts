import { type Region, regionAt } from './feeding.ts';
import type { Model } from './model.ts';
import { reach } from './sides.ts';

/** In a ring, or with several sources: the cables of a region without any one of which a cable there is cut off from a link. */
function cutsByReach({ sides, circuit }: Model, { nodes, cables }: Region, cable: number, link: number): number[] {
  const inside = new Set(nodes);
  const ends = circuit.cables[cable];
  const { a = -1, b = -1 } = circuit.links[link] ?? {};
  const entries = [a, b].filter((node) => inside.has(node));
  return cables.filter((out) => {
    if (out === cable || ends === undefined) return false;
    const fed = reach(
      entries,
      sides,
      ({ kind, index }) => kind === 'contact' || (kind === 'cable' && index !== cable && index !== out),
    );
    return fed[ends.a] !== true && fed[ends.b] !== true;
  });
}

/** In a tree: the cables from a cable back to the link that feeds its region. */
function cutsAlong({ circuit, ways }: Model, cable: number): number[] {
  const { a = -1, b = -1 } = circuit.cables[cable] ?? {};
  const mine = [ways.stepTo(a), ways.stepTo(b)].find((step) => step?.edge === cable);
  const firstLink = circuit.cables.length;
  const isLink = (edge: number): boolean => edge >= firstLink && edge < firstLink + circuit.links.length;
  const passed: number[] = [];
  for (
    let step = ways.stepTo(mine?.from ?? -1);
    step !== undefined && !isLink(step.edge);
    step = ways.stepTo(step.from)
  ) {
    if (step.edge < firstLink) passed.push(step.edge);
  }
  return passed.sort((one, other) => one - other);
}

/**
 * By fuse that lets current into a live cable: the cables that all of it must pass to get there, what lies ahead of it in
 * series. No lists for a return or ahead of the first device.
 */
export function upstreamOf(model: Model, cable: number): number[][] {
  const { circuit, ways } = model;
  const ends = circuit.cables[cable];
  const region = ends === undefined ? undefined : regionAt(model, ends.a);
  if (region === undefined || ends === undefined) return [];
  const isTree = ways.radial && circuit.sources.length === 1 && ends.a !== ends.b;
  return region.feeding.map((link) => (isTree ? cutsAlong(model, cable) : cutsByReach(model, region, cable, link)));
}

/** On one side, from a node back to the post: the links that carry the loads and no more than they must. */
function linksAround(
  { circuit, ways }: Model,
  start: number,
  loads: readonly number[],
): { links: number[]; count: number } {
  const links: number[] = [];
  let count = Infinity;
  for (let step = ways.stepTo(start); step !== undefined; step = ways.stepTo(step.from)) {
    const link = step.edge - circuit.cables.length;
    if (circuit.links[link] === undefined || !loads.every((load) => ways.carries(step?.edge ?? -1, load))) continue;
    if (ways.countOf(step.edge) > count) break;
    count = ways.countOf(step.edge);
    links.push(link);
  }
  return { links, count };
}

/** Ahead of the first device: the links of a region that a cable leads out to; all of them where it is no one's only way. */
function linksBeyond({ sides, circuit }: Model, { nodes, links }: Region, cable: number): readonly number[] {
  const posts = circuit.sources.map(({ plus }) => plus).filter((plus) => nodes.includes(plus));
  const fed = reach(posts, sides, ({ kind, index }) => kind === 'contact' || (kind === 'cable' && index !== cable));
  const beyond = new Set(nodes.filter((node) => fed[node] !== true));
  const led = links.filter((link) => {
    const { a = -1, b = -1 } = circuit.links[link] ?? {};
    return beyond.has(a) || beyond.has(b);
  });
  return led.length > 0 ? led : links;
}

/**
 * The link to name when a cable's fuse is spoken of: of those that let current into it, the one of the greatest
 * rating; ahead of the first device, the greatest of those it leads to; for a ground, the nearest that carries no more
 * than its amplifiers' current. Null when there is none.
 */
export function fuseOf(model: Model, cable: number, ratings: readonly (number | null)[]): number | null {
  const { circuit, ways } = model;
  const ends = circuit.cables[cable];
  if (ends === undefined) return null;
  const greatest = (links: readonly number[]): number | null =>
    links.reduce<number | null>((best, link) => {
      if (best === null) return link;
      const more = (ratings[link] ?? 0) - (ratings[best] ?? 0);
      return more > 0 || (more === 0 && link < best) ? link : best;
    }, null);
  const region = regionAt(model, ends.a);
  if (region !== undefined)
    return greatest(region.feeding.length > 0 ? region.feeding : linksBeyond(model, region, cable));
  const loads = ways.behindOf(cable) ?? [];
  const { plus, minus } = circuit.loads[loads[0] ?? -1] ?? {};
  if (plus === undefined || minus === undefined) return null;
  const sides = [linksAround(model, plus, loads), linksAround(model, minus, loads)];
  const fewest = Math.min(...sides.map(({ count }) => count));
  return greatest(sides.flatMap(({ links, count }) => (count === fewest ? links : [])));
}
