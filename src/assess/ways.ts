import type { CircuitLoad } from './circuit.ts';
import { farEnd, type Sides } from './sides.ts';

/** Which elements each amplifier's current passes. */
export interface Ways {
  /** By edge: the loads whose whole current passes it, and nothing else does; null where current has more than one way. */
  readonly behind: readonly (readonly number[] | null)[];
  /** By load: the edges that carry its whole current, feed and return. */
  readonly edgesOf: readonly (readonly number[])[];
  /** No load's current has a choice of way. */
  readonly radial: boolean;
}

interface Walk {
  readonly node: number;
  readonly byEdge: number;
  next: number;
}

/**
 * Bridges of one side, seen from its posts held as one node, with the loads behind each: Tarjan's low points, walked
 * with a list in place of recursion. Writes into `behind`: null for an edge that is no bridge.
 */
function bridges(
  { edges, at }: Sides,
  on: readonly boolean[],
  posts: readonly number[],
  loadsAt: ReadonlyMap<number, readonly number[]>,
  behind: (readonly number[] | null)[],
): void {
  const found = new Map<number, number>();
  const low = new Map<number, number>();
  const carried = new Map<number, number[]>();
  const isPost = new Set(posts);
  // the posts share the lowest number, so that an edge back to any of them closes a loop
  const visit = (node: number): void => {
    const number = isPost.has(node) ? 0 : found.size + 1;
    found.set(node, number);
    low.set(node, number);
    carried.set(node, isPost.has(node) ? [] : [...(loadsAt.get(node) ?? [])]);
  };
  for (const post of isPost) visit(post);
  const used = new Set<number>();
  for (const post of isPost) {
    const stack: Walk[] = [{ node: post, byEdge: -1, next: 0 }];
    for (let walk = stack.at(-1); walk !== undefined; walk = stack.at(-1)) {
      const index = at[walk.node]?.[walk.next];
      if (index === undefined) {
        stack.pop();
        const above = stack.at(-1);
        if (above === undefined) continue;
        const lowest = low.get(walk.node) ?? 0;
        const isBridge = lowest > (found.get(above.node) ?? 0);
        const loads = carried.get(walk.node) ?? [];
        behind[walk.byEdge] = isBridge ? [...loads].sort((one, other) => one - other) : null;
        carried.get(above.node)?.push(...loads);
        low.set(above.node, Math.min(low.get(above.node) ?? 0, lowest));
        continue;
      }
      walk.next += 1;
      const edge = edges[index];
      if (edge === undefined || used.has(index)) continue;
      used.add(index);
      const far = farEnd(edge, walk.node);
      if (on[far] !== true) continue;
      const seen = found.get(far);
      if (seen === undefined) {
        visit(far);
        stack.push({ node: far, byEdge: index, next: 0 });
      } else {
        behind[index] = edge.a === edge.b ? [] : null;
        low.set(walk.node, Math.min(low.get(walk.node) ?? 0, seen));
      }
    }
  }
}

/** Ways of the loads that are on (`isOn`), by both sides of the circuit. */
export function waysOf(
  sides: Sides,
  loads: readonly Pick<CircuitLoad, 'plus' | 'minus'>[],
  posts: { readonly plus: readonly number[]; readonly minus: readonly number[] },
  isOn: (load: number) => boolean,
): Ways {
  const behind: (readonly number[] | null)[] = sides.edges.map(() => []);
  const at = (end: 'plus' | 'minus') => {
    const map = new Map<number, number[]>();
    for (const [index, load] of loads.entries()) {
      if (isOn(index)) map.set(load[end], [...(map.get(load[end]) ?? []), index]);
    }
    return map;
  };
  bridges(sides, sides.live, posts.plus, at('plus'), behind);
  bridges(sides, sides.back, posts.minus, at('minus'), behind);
  const edgesOf = loads.map((): number[] => []);
  for (const [edge, carried] of behind.entries()) for (const load of carried ?? []) edgesOf[load]?.push(edge);
  return { behind, edgesOf, radial: behind.every((carried) => carried !== null) };
}
