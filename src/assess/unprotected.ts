/** What no device protects: from every source along every live way to the first device, or to an end without one. */
import type { Cable } from './circuit.ts';
import { lengthAlong } from './length.ts';
import type { Model } from './model.ts';
import { farEnd } from './sides.ts';

/** What a way ends at: a device, an amplifier with no device before it, another source or the same one, or nothing. */
type WayEnd =
  | { readonly kind: 'device'; readonly link: number }
  | { readonly kind: 'load'; readonly load: number; readonly terminal: 'supply' | 'remote' }
  | { readonly kind: 'source'; readonly source: number }
  | { readonly kind: 'nothing'; readonly node: number };

export interface UnprotectedWay {
  readonly source: number;
  /** Cables in order from the post. */
  readonly cables: readonly number[];
  readonly lengthM: number;
  readonly plusMinusM: number;
  /** In a closed tube or box from end to end. */
  readonly sheathed: boolean;
  readonly end: WayEnd;
  /** It ends at nothing, and no other cable goes on from there: a stub. One that a dead short reaches is that rule's. */
  readonly stub: boolean;
}

export interface Unprotected {
  readonly source: number;
  /** Of each end the longest way of each kind: sheathed or not, taped throughout or not. Longest first. */
  readonly ways: readonly UnprotectedWay[];
  /** The longest of them; a way of no length when the post has nothing on it. */
  readonly greatest: UnprotectedWay;
  readonly totalM: number;
  readonly totalPlusMinusM: number;
  /** Cables of this source that no device protects. */
  readonly cables: readonly number[];
  /** The ways were too many to walk: the greatest is taken as the total, which is no shorter. */
  readonly bounded: boolean;
}

/** Ways walked before a mesh counts as too great to walk. */
const MOST_STEPS = 5000;

const isSheathed = ({ run }: Cable): boolean => run.sheathed;

/** The live region that a source reaches without passing a device. */
function regionOf({ sides }: Model, post: number): { cables: number[]; nodes: Set<number> } {
  const nodes = new Set([post]);
  const cables = new Set<number>();
  for (const node of nodes) {
    for (const index of sides.at[node] ?? []) {
      const edge = sides.edges[index];
      if (edge?.kind !== 'cable') continue;
      cables.add(edge.index);
      nodes.add(farEnd(edge, node));
    }
  }
  return { cables: [...cables].sort((one, other) => one - other), nodes };
}

function endsAt(model: Model, source: number, node: number, isDeadEnd: boolean): WayEnd[] {
  const { circuit, sides } = model;
  const ends: WayEnd[] = [];
  for (const index of sides.at[node] ?? []) {
    const edge = sides.edges[index];
    if (edge?.kind === 'link') ends.push({ kind: 'device', link: edge.index });
  }
  for (const [load, { plus, remote }] of circuit.loads.entries()) {
    if (plus === node) ends.push({ kind: 'load', load, terminal: 'supply' });
    if (remote === node) ends.push({ kind: 'load', load, terminal: 'remote' });
  }
  for (const [index, { plus }] of circuit.sources.entries()) {
    if (plus === node && index !== source) ends.push({ kind: 'source', source: index });
  }
  return ends.length === 0 && isDeadEnd ? [{ kind: 'nothing', node }] : ends;
}

/** Ways alike in what a rule may ask; of each kind the longest is kept. */
const kindOfWay = ({ end, sheathed, plusMinusM }: UnprotectedWay): string =>
  JSON.stringify([end, sheathed, plusMinusM > 0]);

export function unprotectedOf(model: Model, source: number): Unprotected {
  const { circuit, sides } = model;
  const post = circuit.sources[source]?.plus ?? 0;
  const region = regionOf(model, post);
  const cablesAt = (indices: readonly number[]): Cable[] => indices.flatMap((index) => circuit.cables[index] ?? []);
  const kept = new Map<string, UnprotectedWay>();
  const record = (cables: readonly number[], end: WayEnd, stub = false): void => {
    const along = cablesAt(cables);
    const sheathed = along.length > 0 && along.every(isSheathed);
    const way = { source, cables, ...lengthAlong(along.map(({ length }) => length)), sheathed, end, stub };
    const key = kindOfWay(way);
    const before = kept.get(key);
    if (before === undefined || way.lengthM > before.lengthM) kept.set(key, way);
  };

  let steps = 0;
  const visited = new Set<number>([post]);
  const trail: number[] = [];
  const walk = (node: number): void => {
    steps += 1;
    let goesOn = false;
    for (const index of sides.at[node] ?? []) {
      if (steps > MOST_STEPS) return;
      const edge = sides.edges[index];
      if (edge?.kind !== 'cable' || trail.includes(edge.index)) continue;
      const far = farEnd(edge, node);
      // a cable that comes back to its own source, or to its own way, counts all the way round
      if (visited.has(far)) {
        record([...trail, edge.index], far === post ? { kind: 'source', source } : { kind: 'nothing', node: far });
        continue;
      }
      goesOn = true;
      visited.add(far);
      trail.push(edge.index);
      walk(far);
      trail.pop();
      visited.delete(far);
    }
    for (const end of endsAt(model, source, node, !goesOn && trail.length > 0)) {
      record([...trail], end, end.kind === 'nothing' && sides.at[node]?.length === 1 && sides.back[node] !== true);
    }
  };
  walk(post);

  const bounded = steps > MOST_STEPS;
  const all = lengthAlong(cablesAt(region.cables).map(({ length }) => length));
  if (bounded) {
    const end = [...kept.values()].find((way) => way.end.kind === 'load')?.end ?? {
      kind: 'nothing' as const,
      node: post,
    };
    record(region.cables, end);
  }
  const ways = [...kept.values()].sort((one, other) => other.lengthM - one.lengthM);
  const none: UnprotectedWay = {
    source,
    cables: [],
    lengthM: 0,
    plusMinusM: 0,
    sheathed: false,
    end: { kind: 'nothing', node: post },
    stub: false,
  };
  return {
    source,
    ways,
    greatest: ways[0] ?? none,
    totalM: all.lengthM,
    totalPlusMinusM: all.plusMinusM,
    cables: region.cables,
    bounded,
  };
}

/** A way that ends without a device where current, or a short, can be: an amplifier, another source, a stub. */
export const isWithoutDevice = ({ source, end, stub }: UnprotectedWay): boolean =>
  stub || end.kind === 'load' || (end.kind === 'source' && end.source !== source);

/** Every device that a source meets first. */
export const firstLinks = ({ ways }: Unprotected): number[] => [
  ...new Set(ways.flatMap(({ end }) => (end.kind === 'device' ? [end.link] : []))),
];
