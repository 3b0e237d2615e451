/** By which devices current can come into each part of the live side. */
import type { Model } from './model.ts';
import { perModel } from './perModel.ts';
import { partsOf } from './sides.ts';
import { walk } from './ways.ts';

/** Live nodes that cables join, with no device between. */
export interface Region {
  readonly nodes: readonly number[];
  readonly cables: readonly number[];
  /** The devices at its edge. */
  readonly links: readonly number[];
  /** Those of them that let current in: a source lies beyond. */
  readonly feeding: readonly number[];
}

/** By link: whether a source lies on its `a` side and on its `b` side, were it taken out. */
function sourcesBeside({ circuit, sides }: Model): readonly (readonly [a: boolean, b: boolean])[] {
  const firstLink = circuit.cables.length;
  const sourcesAt = new Map<number, number[]>();
  for (const [source, { plus }] of circuit.sources.entries())
    sourcesAt.set(plus, [...(sourcesAt.get(plus) ?? []), source]);
  // in a ring both its sides stay joined to a source
  const beside = circuit.links.map((): [boolean, boolean] => [true, true]);
  const parts = new Set<number>();
  for (const { plus } of circuit.sources) {
    const part = sides.livePart[plus] ?? -1;
    if (parts.has(part)) continue;
    parts.add(part);
    const { steps, spans } = walk(sides, sides.live, [plus], sourcesAt, ({ kind }) => kind !== 'bond');
    for (const { edge, from } of steps) {
      const link = circuit.links[edge - firstLink];
      const span = spans[edge];
      const here = beside[edge - firstLink];
      if (link === undefined || span == null || here === undefined) continue;
      here[from === link.a ? 1 : 0] = span[1] > span[0];
    }
  }
  return beside;
}

const regions = perModel((model): ReadonlyMap<number, Region> => {
  const { circuit, sides } = model;
  const partOf = partsOf(sides, ({ kind }) => kind === 'cable' || kind === 'contact');
  const found = new Map<number, { nodes: number[]; cables: number[]; links: Set<number>; feeding: Set<number> }>();
  for (const [node, part] of partOf.entries()) {
    if (sides.live[node] !== true) continue;
    const region = found.get(part) ?? { nodes: [], cables: [], links: new Set(), feeding: new Set() };
    region.nodes.push(node);
    found.set(part, region);
  }
  for (const [cable, { a }] of circuit.cables.entries()) found.get(partOf[a] ?? -1)?.cables.push(cable);
  const beside = sourcesBeside(model);
  for (const [link, { a, b }] of circuit.links.entries()) {
    const [sourceAtA, sourceAtB] = beside[link] ?? [false, false];
    for (const [node, isFed] of [
      [a, sourceAtB],
      [b, sourceAtA],
    ] as const) {
      const region = found.get(partOf[node] ?? -1);
      region?.links.add(link);
      if (isFed) region?.feeding.add(link);
    }
  }
  const byNode = new Map<number, Region>();
  for (const { nodes, cables, links, feeding } of found.values()) {
    const region = { nodes, cables, links: [...links], feeding: [...feeding] };
    for (const node of nodes) byNode.set(node, region);
  }
  return byNode;
});

/** The region of a live node; undefined for one that is not live. */
export const regionAt = (model: Model, node: number): Region | undefined => regions(model).get(node);
