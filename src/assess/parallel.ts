/** Cables side by side, or in a ring, behind the same fuses: from one end to the other of each there is another way without a device. */
import { type Region, regionAt } from './feeding.ts';
import type { Model } from './model.ts';
import { perModel } from './perModel.ts';
import { type Edge, farEnd } from './sides.ts';
import { walk } from './ways.ts';

const isDeviceless = ({ kind }: Edge): boolean => kind === 'cable' || kind === 'contact';

/** Live parts that fuses feed, each once. */
function fedRegions(model: Model): Region[] {
  const found = new Set<Region>();
  for (const [node, isLive] of model.sides.live.entries()) {
    const region = isLive ? regionAt(model, node) : undefined;
    if (region !== undefined && region.feeding.length > 0) found.add(region);
  }
  return [...found];
}

/**
 * Sets of cables, as indices, that lie in rings of one another behind a fuse and without a device between; in proportion
 * to the number of edges. Two runs from a fuse to one bus: one set of two. A chain, a star, two feeds each with a fuse at
 * its fed end: none.
 */
export const ringsBehindFuses = perModel((model): readonly (readonly number[])[] => {
  const { circuit, sides, ways } = model;
  if (ways.radial || model.shorted) return [];
  const regions = fedRegions(model);
  const inFed = new Set(regions.flatMap(({ nodes }) => nodes));
  const posts = regions.flatMap(({ nodes }) => nodes.slice(0, 1));
  const { spans } = walk(sides, sides.live, posts, new Map(), isDeviceless);
  const inRing = (edge: number): boolean => spans[edge] === null;
  // rings that share a node are told as one
  const setOf = new Map<number, number>();
  const sets = new Map<number, number[]>();
  for (const start of inFed) {
    if (setOf.has(start)) continue;
    setOf.set(start, start);
    const queue = [start];
    for (const node of queue) {
      for (const index of sides.at[node] ?? []) {
        const edge = sides.edges[index];
        if (edge === undefined || !inRing(index)) continue;
        const far = farEnd(edge, node);
        if (setOf.has(far)) continue;
        setOf.set(far, start);
        queue.push(far);
      }
    }
  }
  for (const [cable, { a }] of circuit.cables.entries()) {
    const set = inRing(cable) ? setOf.get(a) : undefined;
    if (set !== undefined) sets.set(set, [...(sets.get(set) ?? []), cable]);
  }
  // a cable beside nothing but a switch is no pair, whatever pass-throughs it has
  return [...sets.values()].filter((set) => new Set(set.map((cable) => circuit.cables[cable]?.group)).size > 1);
});
