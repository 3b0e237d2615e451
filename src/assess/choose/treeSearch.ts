/**
 * Least metal where the lots branch like a tree: from the branches inwards, what each part costs at least for any drop
 * ahead of it. Exact for the least drops, and in proportion to the number of lots, where trying sets would never end.
 */
import { exceeds } from '../conductor.ts';
import type { LotSizes } from './bounds.ts';
import { openSizes } from './problem.ts';

/** A part of the net bears a drop ahead of it of up to this much, at this cost. */
interface Point {
  readonly aheadV: number;
  readonly cost: number;
}

/** Points that no other undercuts: what bears more costs more, and comes first. */
type Front = readonly Point[];

interface Node {
  readonly lot: number;
  readonly children: number[];
  /** Least budget of the loads that no lot behind this one serves, V. */
  readonly ownV: number;
}

interface Tree {
  readonly nodes: readonly Node[];
  /** Lots that no other lot lies ahead of. */
  readonly roots: readonly number[];
  /** Lots behind come before those ahead. */
  readonly inwards: readonly number[];
}

/** Points kept of a front, shared out over all lots: with more, some are let go and nothing is proven. */
const MOST_POINTS = 4096;
const POINTS_OF_ALL = 2_000_000;
const FEWEST_POINTS = 64;

/** The lots as a tree by whose loads they serve; null where two of them overlap without one holding the other. */
export function treeOfLots(lots: readonly LotSizes[], budgetV: readonly number[]): Tree | null {
  const loadsOf = (lot: number): readonly number[] => lots[lot]?.parts[0]?.loads ?? [];
  if (lots.some(({ parts }) => parts.length !== 1)) return null;
  const outwards = [...lots.keys()].sort((one, other) => loadsOf(other).length - loadsOf(one).length || one - other);
  const ownerOf = new Map<number, number>();
  const children = lots.map((): number[] => []);
  const roots: number[] = [];
  for (const lot of outwards) {
    const loads = loadsOf(lot);
    const parent = ownerOf.get(loads[0] ?? -1);
    if (loads.some((load) => ownerOf.get(load) !== parent)) return null;
    if (parent === undefined) roots.push(lot);
    else children[parent]?.push(lot);
    for (const load of loads) ownerOf.set(load, lot);
  }
  const ownV = lots.map(() => Infinity);
  for (const [load, lot] of ownerOf) ownV[lot] = Math.min(ownV[lot] ?? Infinity, budgetV[load] ?? Infinity);
  return {
    nodes: lots.map((_, lot) => ({ lot, children: children[lot] ?? [], ownV: ownV[lot] ?? Infinity })),
    roots,
    inwards: outwards.reverse(),
  };
}

/** Puts the points in order, and answers those that none undercuts. */
function undercut(points: Point[]): Point[] {
  const kept: Point[] = [];
  let cheapest = Infinity;
  for (const point of points.sort((one, other) => other.aheadV - one.aheadV || one.cost - other.cost)) {
    if (point.cost >= cheapest) continue;
    kept.push(point);
    cheapest = point.cost;
  }
  return kept;
}

/** Several fronts that the same drop lies ahead of, within `ownV`. */
function together(fronts: readonly Front[], ownV: number): Front {
  const [only] = fronts;
  if (only === undefined) return [{ aheadV: ownV, cost: 0 }];
  // the first of them bears most
  if (fronts.length === 1 && (only[0]?.aheadV ?? 0) <= ownV) return only;
  if (fronts.length === 1) return undercut(only.map(({ aheadV, cost }) => ({ aheadV: Math.min(aheadV, ownV), cost })));
  const all = fronts.flatMap((front, index) => front.map(({ aheadV, cost }) => ({ aheadV, cost, index })));
  all.sort((one, other) => other.aheadV - one.aheadV || other.cost - one.cost);
  const costs = new Map<number, number>();
  const points: Point[] = [];
  let sum = 0;
  for (const { aheadV, cost, index } of all) {
    sum += cost - (costs.get(index) ?? 0);
    costs.set(index, cost);
    if (costs.size === fronts.length) points.push({ aheadV: Math.min(aheadV, ownV), cost: sum });
  }
  return undercut(points);
}

const least = (front: Front, aheadV: number): number =>
  front.findLast((point) => !exceeds(aheadV, point.aheadV))?.cost ?? Infinity;

interface Picked {
  /** By lot. */
  readonly picks: readonly number[];
  /** No point was let go. */
  readonly exact: boolean;
}

/** The cheapest size of every lot whose least drops keep the budgets, in the tree of those budgets; null where there is none. */
export function pickAlongTree(lots: readonly LotSizes[], { nodes, roots, inwards }: Tree): Picked | null {
  const most = Math.max(FEWEST_POINTS, Math.min(MOST_POINTS, Math.floor(POINTS_OF_ALL / Math.max(1, lots.length))));
  let exact = true;
  const behind: Front[] = [];
  const fronts: Front[] = [];
  const open = lots.map(openSizes);
  const dropOf = (lot: number, size: number): number => lots[lot]?.parts[0]?.dropV[size] ?? 0;
  const costOf = (lot: number, size: number): number => lots[lot]?.cost[size] ?? 0;
  for (const lot of inwards) {
    const { children = [], ownV = Infinity } = nodes[lot] ?? {};
    const inner = together(
      children.map((child) => fronts[child] ?? []),
      ownV,
    );
    behind[lot] = inner;
    const points: Point[] = [];
    for (const size of open[lot] ?? []) {
      const [dropV, ownCost] = [dropOf(lot, size), costOf(lot, size)];
      for (const { aheadV, cost } of inner)
        if (aheadV - dropV >= -1e-9) points.push({ aheadV: aheadV - dropV, cost: cost + ownCost });
    }
    const front = undercut(points);
    if (front.length === 0) return null;
    if (front.length > most) exact = false;
    const every = Math.ceil(front.length / most);
    // the cheapest is always among those kept
    fronts[lot] = every <= 1 ? front : front.filter((_, place) => (front.length - 1 - place) % every === 0);
  }
  const picks = lots.map(() => -1);
  const outwards = roots.map((lot) => ({ lot, aheadV: 0 }));
  for (const { lot, aheadV } of outwards) {
    let best = { size: -1, cost: Infinity };
    for (const size of open[lot] ?? []) {
      const cost = costOf(lot, size) + least(behind[lot] ?? [], aheadV + dropOf(lot, size));
      if (cost < best.cost) best = { size, cost };
    }
    if (best.size === -1) return null;
    picks[lot] = best.size;
    for (const child of nodes[lot]?.children ?? [])
      outwards.push({ lot: child, aheadV: aheadV + dropOf(lot, best.size) });
  }
  return { picks, exact };
}
