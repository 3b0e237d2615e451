/** What no device protects: from every source along every live way to the first device, or to an end without one. */
import type { Cable, Circuit } from './circuit.ts';
import { lengthAlong } from './length.ts';
import type { Model } from './model.ts';
import { perCircuit } from './perModel.ts';
import { type Edge, farEnd } from './sides.ts';

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
  /** The user wrote why the device can be no nearer along it. */
  readonly nearerImpossible: boolean;
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

type Counted = readonly boolean[];

/** Ways walked before a mesh counts as too great to walk. */
const MOST_STEPS = 5000;

/** Cable, or what joins cables without a device. The factory's own cables are outside the plan. */
const isOpenWay = ({ contacts }: Circuit, { kind, index }: Edge): boolean =>
  kind === 'cable' || (kind === 'contact' && contacts[index]?.kind !== 'factory');

const isSheathed = ({ run }: Cable): boolean => run.sheathed;
const hasReason = ({ run }: Cable): boolean => (run.nearerImpossible ?? '').trim() !== '';

/** The live region that a source reaches without passing a device. */
function regionOf({ circuit, sides }: Model, post: number): { cables: number[]; nodes: Set<number> } {
  const nodes = new Set([post]);
  const cables = new Set<number>();
  for (const node of nodes) {
    for (const index of sides.at[node] ?? []) {
      const edge = sides.edges[index];
      if (edge === undefined || !isOpenWay(circuit, edge)) continue;
      if (edge.kind === 'cable') cables.add(edge.index);
      nodes.add(farEnd(edge, node));
    }
  }
  return { cables: [...cables].sort((one, other) => one - other), nodes };
}

/** By node: the loads and starts there. */
const endsByNode = perCircuit(({ loads, starts }): ReadonlyMap<number, readonly WayEnd[]> => {
  const ends = new Map<number, WayEnd[]>();
  const put = (node: number | null, end: WayEnd): void => {
    if (node === null) return;
    const here = ends.get(node);
    if (here === undefined) ends.set(node, [end]);
    else here.push(end);
  };
  for (const [load, { plus, remote }] of loads.entries()) {
    put(plus, { kind: 'load', load, terminal: 'supply' });
    put(remote, { kind: 'load', load, terminal: 'remote' });
  }
  for (const [source, { plus }] of starts.entries()) put(plus, { kind: 'source', source });
  return ends;
});

function endsAt(
  model: Model,
  source: number,
  node: number,
  { isDeadEnd, counted }: { readonly isDeadEnd: boolean; readonly counted: Counted },
): WayEnd[] {
  const { circuit, sides } = model;
  const ends: WayEnd[] = [];
  for (const index of sides.at[node] ?? []) {
    const edge = sides.edges[index];
    if (edge?.kind === 'link') ends.push({ kind: 'device', link: edge.index });
  }
  for (const end of endsByNode(circuit).get(node) ?? []) {
    if (end.kind !== 'source' || (end.source !== source && counted[end.source] !== false)) ends.push(end);
  }
  return ends.length === 0 && isDeadEnd ? [{ kind: 'nothing', node }] : ends;
}

/** Ways alike in what a rule may ask; of each kind the longest is kept. */
const kindOfWay = ({ end, sheathed, nearerImpossible, plusMinusM }: UnprotectedWay): string =>
  JSON.stringify([end, sheathed, nearerImpossible, plusMinusM > 0]);

/** `counted`, by start: false for one that is no source after all, and so no end of a way. */
export function unprotectedOf(model: Model, source: number, counted: Counted = []): Unprotected {
  const { circuit, sides } = model;
  const post = circuit.starts[source]?.plus ?? 0;
  const region = regionOf(model, post);
  const cablesAt = (indices: readonly number[]): Cable[] => indices.flatMap((index) => circuit.cables[index] ?? []);
  const kept = new Map<string, UnprotectedWay>();
  const record = (cables: readonly number[], end: WayEnd, { stub = false, walked = true } = {}): void => {
    const along = cablesAt(cables);
    const sheathed = along.length > 0 && along.every(isSheathed);
    // what was not walked is no way of its own, and a reason somewhere in it excuses nothing
    const nearerImpossible = walked && along.some(hasReason);
    const lengths = lengthAlong(along.map(({ length }) => length));
    const way = { source, cables, ...lengths, sheathed, nearerImpossible, end, stub };
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
      if (edge === undefined || !isOpenWay(circuit, edge) || (edge.kind === 'cable' && trail.includes(edge.index)))
        continue;
      const far = farEnd(edge, node);
      if (edge.kind === 'contact') {
        if (visited.has(far)) continue;
        goesOn = true;
        visited.add(far);
        walk(far);
        visited.delete(far);
        continue;
      }
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
    for (const end of endsAt(model, source, node, { isDeadEnd: !goesOn && trail.length > 0, counted })) {
      const stub = end.kind === 'nothing' && sides.at[node]?.length === 1 && sides.back[node] !== true;
      record([...trail], end, { stub });
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
    record(region.cables, end, { walked: false });
  }
  const ways = [...kept.values()].sort((one, other) => other.lengthM - one.lengthM);
  const none: UnprotectedWay = {
    source,
    cables: [],
    lengthM: 0,
    plusMinusM: 0,
    sheathed: false,
    nearerImpossible: false,
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
