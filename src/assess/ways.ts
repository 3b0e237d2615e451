import type { CircuitLoad } from './circuit.ts';
import { once } from './perModel.ts';
import { type Edge, farEnd, type Sides } from './sides.ts';

/** An edge walked away from the posts. */
export interface Step {
  readonly edge: number;
  readonly from: number;
  readonly to: number;
}

/** Which elements each amplifier's current passes. */
export interface Ways {
  /** By edge: the loads whose whole current passes it, and nothing else does; null where current has more than one way. */
  readonly behind: readonly (readonly number[] | null)[];
  /** By load: the edges that carry its whole current, feed and return, ascending. */
  readonly edgesOf: readonly (readonly number[])[];
  /** No load's current has a choice of way. */
  readonly radial: boolean;
  /** Edges of both sides that reach a node first, each ahead of those behind it. */
  readonly steps: readonly Step[];
  /** The step by which a node is reached; undefined for a post, or a node on neither side. */
  stepTo(node: number): Step | undefined;
  /** Whether an edge carries the whole current of a load. */
  carries(edge: number, load: number): boolean;
  /** One entry of `behind`, without working out the others. */
  behindOf(edge: number): readonly number[] | null;
  /** One entry of `edgesOf`, without working out the others. */
  wayOf(load: number): readonly number[];
  /** How many loads' whole current passes an edge; 0 where current has more than one way. */
  countOf(edge: number): number;
  /** The same for edges with the same loads behind, and for no others; null where none are, or more than one way. */
  likenessOf(edge: number): string | null;
}

/** One side as it was walked from its posts; what is counted behind its edges are loads, or whatever else stands at nodes. */
interface Walked {
  readonly steps: readonly Step[];
  /** Loads in the order in which their nodes were met: those behind a node stand together. */
  readonly loads: readonly number[];
  /** By edge: where the loads behind it begin and end in that order; nothing for one not walked, null for no bridge. */
  readonly spans: readonly (Span | null | undefined)[];
}

type Span = readonly [first: number, end: number];

const NONE: Span = [0, 0];

interface Visit {
  readonly node: number;
  readonly byEdge: number;
  next: number;
}

/** Bridges of one side, seen from its posts held as one node: Tarjan's low points, walked with a list in place of recursion. */
export function walk(
  { edges, at }: Pick<Sides, 'edges' | 'at'>,
  on: readonly boolean[],
  posts: readonly number[],
  loadsAt: ReadonlyMap<number, readonly number[]>,
  passes: (edge: Edge) => boolean = () => true,
): Walked {
  const steps: Step[] = [];
  const loads: number[] = [];
  const spans: (Span | null | undefined)[] = edges.map(() => undefined);
  const isPost = new Set(posts);
  // the posts share the lowest number, so that an edge back to any of them closes a loop
  const numberOf = new Int32Array(at.length).fill(-1);
  const low = new Int32Array(at.length);
  const firstLoad = new Int32Array(at.length);
  const usedBy = new Uint8Array(edges.length);
  let met = 0;
  const visit = (node: number): void => {
    met += 1;
    const number = isPost.has(node) ? 0 : met;
    numberOf[node] = number;
    low[node] = number;
    firstLoad[node] = loads.length;
    if (!isPost.has(node)) for (const load of loadsAt.get(node) ?? []) loads.push(load);
  };
  for (const post of isPost) visit(post);
  for (const post of isPost) {
    const stack: Visit[] = [{ node: post, byEdge: -1, next: 0 }];
    for (let here = stack.at(-1); here !== undefined; here = stack.at(-1)) {
      const index = at[here.node]?.[here.next];
      if (index === undefined) {
        stack.pop();
        const above = stack.at(-1);
        if (above === undefined) continue;
        const lowest = low[here.node] ?? 0;
        const isBridge = lowest > (numberOf[above.node] ?? 0);
        spans[here.byEdge] = isBridge ? [firstLoad[here.node] ?? 0, loads.length] : null;
        low[above.node] = Math.min(low[above.node] ?? 0, lowest);
        continue;
      }
      here.next += 1;
      const edge = edges[index];
      if (edge === undefined || usedBy[index] === 1 || !passes(edge)) continue;
      usedBy[index] = 1;
      const far = farEnd(edge, here.node);
      if (on[far] !== true) continue;
      const seen = numberOf[far] ?? -1;
      if (seen === -1) {
        visit(far);
        steps.push({ edge: index, from: here.node, to: far });
        stack.push({ node: far, byEdge: index, next: 0 });
      } else {
        spans[index] = edge.a === edge.b ? [0, 0] : null;
        low[here.node] = Math.min(low[here.node] ?? 0, seen);
      }
    }
  }
  return { steps, loads, spans };
}

/**
 * Names of the sets of loads behind edges, alike for equal sets. The loads behind a live edge are a stretch of the live
 * order; those behind an edge of the return are that same stretch where as many lie between its ends there.
 */
function namesOf(
  live: Walked,
  back: Walked,
  loads: readonly Pick<CircuitLoad, 'minus'>[],
  nodes: number,
): (edge: number) => string | null {
  const behindNode = once(() => {
    const least = new Float64Array(nodes).fill(Infinity);
    const greatest = new Float64Array(nodes).fill(-Infinity);
    const widen = (node: number, low: number, high: number): void => {
      least[node] = Math.min(least[node] ?? Infinity, low);
      greatest[node] = Math.max(greatest[node] ?? -Infinity, high);
    };
    for (const [place, load] of live.loads.entries()) widen(loads[load]?.minus ?? -1, place, place);
    for (const { from, to } of back.steps.toReversed()) widen(from, least[to] ?? Infinity, greatest[to] ?? -Infinity);
    const nodeOf = new Map(back.steps.map(({ edge, to }) => [edge, to]));
    return (edge: number): Span => {
      const node = nodeOf.get(edge) ?? -1;
      return [least[node] ?? Infinity, greatest[node] ?? -Infinity];
    };
  });
  return (edge) => {
    const returned = back.spans[edge];
    const span = returned === undefined ? live.spans[edge] : returned;
    if (span == null || span[0] === span[1]) return null;
    if (returned === undefined) return `live ${span[0]} ${span[1]}`;
    const [first, last] = behindNode()(edge);
    return last - first + 1 === span[1] - span[0] ? `live ${first} ${last + 1}` : `back ${span[0]} ${span[1]}`;
  };
}

/** Ways of the loads that are on (`isOn`), by both sides of the circuit. */
export function waysOf(
  sides: Sides,
  loads: readonly Pick<CircuitLoad, 'plus' | 'minus'>[],
  posts: { readonly plus: readonly number[]; readonly minus: readonly number[] },
  isOn: (load: number) => boolean,
): Ways {
  const at = (end: 'plus' | 'minus') => {
    const map = new Map<number, number[]>();
    for (const [index, load] of loads.entries()) {
      if (!isOn(index)) continue;
      const here = map.get(load[end]);
      if (here === undefined) map.set(load[end], [index]);
      else here.push(index);
    }
    return map;
  };
  const live = walk(sides, sides.live, posts.plus, at('plus'));
  const back = walk(sides, sides.back, posts.minus, at('minus'));
  const spanOf = (edge: number): Span | null => {
    const returned = back.spans[edge];
    return returned === undefined ? (live.spans[edge] ?? (live.spans[edge] === null ? null : NONE)) : returned;
  };
  const sets = new Map<number, readonly number[]>();
  const behindOf = (edge: number): readonly number[] | null => {
    const span = spanOf(edge);
    if (span === null) return null;
    const before = sets.get(edge);
    if (before !== undefined) return before;
    const order = back.spans[edge] === undefined ? live.loads : back.loads;
    const set = order.slice(...span).sort((one, other) => one - other);
    sets.set(edge, set);
    return set;
  };
  const reached = once(() => {
    const steps: (Step | undefined)[] = sides.at.map(() => undefined);
    for (const step of live.steps) steps[step.to] = step;
    // a dead short puts nodes on both sides: followed on one of them alone, no way bites its own tail
    for (const step of back.steps) if (sides.live[step.to] !== true) steps[step.to] = step;
    return steps;
  });
  const stepTo = (node: number): Step | undefined => reached()[node];
  const places = once(() =>
    [live, back].map((side) => {
      const placeOf = new Int32Array(loads.length).fill(-1);
      for (const [place, load] of side.loads.entries()) placeOf[load] = place;
      return placeOf;
    }),
  );
  const carries = (edge: number, load: number): boolean => {
    const [first, end] = spanOf(edge) ?? NONE;
    const place = places()[back.spans[edge] === undefined ? 0 : 1]?.[load] ?? -1;
    return first <= place && place < end;
  };
  const ways = new Map<number, readonly number[]>();
  const wayOf = (load: number): readonly number[] => {
    const before = ways.get(load);
    if (before !== undefined) return before;
    const way: number[] = [];
    const { plus = -1, minus = -1 } = isOn(load) ? (loads[load] ?? {}) : {};
    for (const start of [plus, minus]) {
      for (let step = stepTo(start); step !== undefined; step = stepTo(step.from)) {
        if (spanOf(step.edge) !== null) way.push(step.edge);
      }
    }
    way.sort((one, other) => one - other);
    ways.set(load, way);
    return way;
  };
  const behind = once(() => sides.edges.map((_, edge) => behindOf(edge)));
  const edgesOf = once(() => loads.map((_, load) => wayOf(load)));
  return {
    get behind() {
      return behind();
    },
    get edgesOf() {
      return edgesOf();
    },
    radial: sides.edges.every((_, edge) => spanOf(edge) !== null),
    steps: [...live.steps, ...back.steps],
    stepTo,
    carries,
    behindOf,
    wayOf,
    countOf: (edge) => {
      const [first, end] = spanOf(edge) ?? NONE;
      return end - first;
    },
    likenessOf: namesOf(live, back, loads, sides.at.length),
  };
}
