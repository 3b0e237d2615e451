/** What fuses let into each cable where no current has a choice of way: read off the tree, without a flow for each cable. */
import type { Model } from './model.ts';
import { perModel } from './perModel.ts';
import { linkEdge } from './ratings.ts';
import type { Step } from './ways.ts';

interface Tree {
  /** Live edges and those of the return, each ahead of those behind it. */
  readonly live: readonly Step[];
  readonly back: readonly Step[];
  readonly plus: number;
  readonly minus: number;
  /** Loads that can let current through, from the live side to the return, whether rated or not. */
  readonly loads: readonly { readonly plus: number; readonly minus: number }[];
}

/** No load leads into a part of the circuit that another load leads out of: neither live nor returned, such parts carry nothing. */
function islandsAreDead({ circuit, sides }: Model): boolean {
  const { live, back, backPart } = sides;
  const isIsland = (node: number): boolean => live[node] !== true && back[node] !== true;
  const entered = new Set(circuit.loads.flatMap(({ minus }) => (isIsland(minus) ? [backPart[minus]] : [])));
  const left = circuit.loads.flatMap(({ plus }) => (isIsland(plus) ? [backPart[plus]] : []));
  return left.every((part) => !entered.has(part) && part !== backPart[circuit.body]);
}

/** The circuit as two trees that only loads join; null where it is none, or a return has a fuse of its own. */
const treeOf = perModel((model): Tree | null => {
  const { circuit, sides, ways, shorted } = model;
  const { live, back } = sides;
  const [source, ...others] = circuit.sources;
  if (source === undefined || others.length > 0 || shorted || !ways.radial) return null;
  const isPlain = sides.edges.every(({ kind, a, b }) => {
    if (a === b) return false;
    if (kind === 'link') return back[a] !== true;
    return kind !== 'bond' || (live[a] !== true && live[b] !== true);
  });
  const loadsAreForward = circuit.loads.every(({ plus, minus }) => {
    const crosses = live[plus] === true && back[minus] === true;
    const isAlongside = (live[plus] === true || back[plus] === true) && (live[minus] === true || back[minus] === true);
    return crosses || !isAlongside;
  });
  if (!isPlain || !loadsAreForward || !islandsAreDead(model)) return null;
  return {
    live: ways.steps.filter(({ to }) => live[to] === true),
    back: ways.steps.filter(({ to }) => back[to] === true),
    plus: source.plus,
    minus: source.minus,
    loads: circuit.loads.filter(({ plus, minus }) => live[plus] === true && back[minus] === true),
  };
});

type ByNode = Float64Array;

const at = (values: ByNode, node: number): number => values[node] ?? 0;

/** By node: what the fuses between it and the post let come, A. */
function inflows({ live, plus }: Tree, nodes: number, capacityOf: (edge: number) => number): ByNode {
  const inA = new Float64Array(nodes);
  inA[plus] = Infinity;
  for (const { edge, from, to } of live) inA[to] = Math.min(at(inA, from), capacityOf(edge));
  return inA;
}

/** By node: what loads behind it can take, and the greatest fuse that a short behind it would be fed through, A. */
function outflows({ live, loads }: Tree, nodes: number, capacityOf: (edge: number) => number) {
  const loadsA = new Float64Array(nodes);
  const shortA = new Float64Array(nodes);
  for (const { plus } of loads) loadsA[plus] = Infinity;
  for (const { edge, from, to } of live.toReversed()) {
    const capacity = capacityOf(edge);
    loadsA[from] = at(loadsA, from) + Math.min(capacity, at(loadsA, to));
    shortA[from] = Math.max(at(shortA, from), capacity === Infinity ? at(shortA, to) : capacity);
  }
  return { loadsA, shortA };
}

/** What can come down to some of the loads together, A: the smallest set of fuses that cuts all of them off. */
function intoSome(
  { live, plus }: Tree,
  stepTo: ReadonlyMap<number, number>,
  nodes: readonly number[],
  capacityOf: (edge: number) => number,
): number {
  const flow = new Map<number, number>(nodes.map((node) => [node, Infinity]));
  const passed = new Set<number>();
  for (const start of nodes) {
    for (
      let step = stepTo.get(start);
      step !== undefined && !passed.has(step);
      step = stepTo.get(live[step]?.from ?? -1)
    )
      passed.add(step);
  }
  for (const step of [...passed].sort((one, other) => other - one)) {
    const { edge = -1, from = -1, to = -1 } = live[step] ?? {};
    flow.set(from, (flow.get(from) ?? 0) + Math.min(capacityOf(edge), flow.get(to) ?? 0));
  }
  return flow.get(plus) ?? 0;
}

/** By node of the return: what the loads behind it can be fed, A. */
function returns(tree: Tree, nodes: number, inA: ByNode, allA: number, capacityOf: (edge: number) => number): ByNode {
  const { live, back, loads } = tree;
  const loadsAt = new Map<number, number[]>();
  for (const { plus, minus } of loads) loadsAt.set(minus, [...(loadsAt.get(minus) ?? []), plus]);
  const count = new Float64Array(nodes);
  const size = new Float64Array(nodes);
  for (const [minus, here] of loadsAt) count[minus] = here.length;
  for (const { from, to } of back.toReversed()) {
    count[from] = at(count, from) + at(count, to);
    size[from] = at(size, from) + at(size, to) + 1;
  }
  const stepTo = new Map(live.map(({ to }, step) => [to, step]));
  const intoA = new Float64Array(nodes);
  // deepest first, so that a cable that goes on with the same loads is worked once
  const alike = new Map<number, number>();
  for (let step = back.length - 1; step >= 0; step -= 1) {
    const { from = -1, to = -1 } = back[step] ?? {};
    const same = alike.get(to);
    if (at(count, to) === at(count, from)) alike.set(from, to);
    if (at(count, to) === 0) continue;
    if (same !== undefined) intoA[to] = at(intoA, same);
    else if (at(count, to) === loads.length) intoA[to] = allA;
    else {
      const within = [to, ...back.slice(step + 1, step + 1 + at(size, to)).map((inner) => inner.to)];
      const fed = within.flatMap((node) => loadsAt.get(node) ?? []);
      const [only] = fed;
      intoA[to] = fed.length === 1 && only !== undefined ? at(inA, only) : intoSome(tree, stepTo, fed, capacityOf);
    }
  }
  return intoA;
}

/**
 * `limitsOf` where the circuit has one source, no ring and no fuse in the return; null elsewhere. In proportion to the
 * number of cables: what comes to a cable is the smallest rating between it and the post; ahead of the first fuse it is
 * what lies behind, summed over the branches.
 */
export function treeLimits(model: Model, linkCapacityA: readonly number[]): number[] | null {
  const tree = treeOf(model);
  if (tree === null) return null;
  const { circuit, sides } = model;
  const nodes = sides.at.length;
  const firstLink = linkEdge(model, 0);
  const capacityOf = (edge: number): number => linkCapacityA[edge - firstLink] ?? Infinity;
  const inA = inflows(tree, nodes, capacityOf);
  const { loadsA, shortA } = outflows(tree, nodes, capacityOf);
  const givesA = Math.max(at(loadsA, tree.plus), at(shortA, tree.plus));
  const intoA = returns(tree, nodes, inA, at(loadsA, tree.plus), capacityOf);

  const limits = circuit.cables.map(() => 0);
  for (const { edge, from, to } of tree.live) {
    if (edge >= firstLink) continue;
    const beforeA = at(inA, from);
    // ahead of the first fuse nothing but what lies behind limits it; nothing behind: only a short, without limit
    limits[edge] = beforeA < Infinity ? beforeA : Math.max(at(loadsA, to), at(shortA, to)) || Infinity;
  }
  const stepTo = new Map(tree.back.map((step) => [step.to, step]));
  for (const { edge, to } of tree.back) if (edge < firstLink) limits[edge] = Math.min(givesA, at(intoA, to));
  // what comes back over the body from a short behind a fuse
  for (let step = stepTo.get(circuit.body); step !== undefined; step = stepTo.get(step.from)) {
    if (step.edge < firstLink) limits[step.edge] = Math.max(limits[step.edge] ?? 0, givesA);
  }
  return limits;
}
