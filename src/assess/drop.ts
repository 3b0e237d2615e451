import type { Model } from './model.ts';
import type { StatePoint } from './operate.ts';
import { perModel } from './perModel.ts';

export interface WayDrop {
  /** Cables along the way, feed then return, as indices of the circuit's cables. */
  readonly feed: readonly number[];
  readonly back: readonly number[];
  /** Over those cables alone, V. */
  readonly feedV: number;
  readonly backV: number;
  /** From the posts to the amplifier's terminals with everything on the way, V. */
  readonly wholeV: number;
}

/** Drop along one cable in a state, V. */
export const cableDropV = ({ amps, cableOhm }: StatePoint, cable: number): number =>
  Math.abs(amps[cable] ?? 0) * (cableOhm[cable] ?? 0);

interface Best {
  readonly volts: number;
  readonly cables: readonly number[];
}

/** Currents below this share of the greatest are rounding. */
const NO_SHARE = 1e-9;

/**
 * By node, the way of the current to it whose cables lose most, from where the current starts. Nodes are taken once all
 * that flows into them is known (Kahn's order), so a long net needs no deep recursion. `downstream` -1 follows the
 * current backwards: from where it ends.
 */
function greatestWays(
  { sides, circuit }: Model,
  point: StatePoint,
  on: readonly boolean[],
  downstream: 1 | -1,
): Best[] {
  const least = NO_SHARE * Math.max(...point.amps.map(Math.abs), 0);
  const out = sides.at.map((): { to: number; edge: number }[] => []);
  const pending = sides.at.map(() => 0);
  for (const [edge, { a, b }] of sides.edges.entries()) {
    const amps = (point.amps[edge] ?? 0) * downstream;
    if (Math.abs(amps) <= least || on[a] !== true || on[b] !== true) continue;
    const [from, to] = amps > 0 ? [a, b] : [b, a];
    out[from]?.push({ to, edge });
    pending[to] = (pending[to] ?? 0) + 1;
  }
  const best = sides.at.map((): Best => ({ volts: 0, cables: [] }));
  const queue = sides.at.flatMap((_, node) => (pending[node] === 0 ? [node] : []));
  for (const node of queue) {
    const before = best[node] ?? { volts: 0, cables: [] };
    for (const { to, edge } of out[node] ?? []) {
      const isCable = edge < circuit.cables.length;
      const volts = before.volts + (isCable ? cableDropV(point, edge) : 0);
      const held = best[to];
      if (held === undefined || volts > held.volts || held.cables.length === 0) {
        best[to] = { volts, cables: isCable ? [...before.cables, edge] : before.cables };
      }
      pending[to] = (pending[to] ?? 1) - 1;
      if (pending[to] === 0) queue.push(to);
    }
  }
  return best;
}

/** By load: the cables of its way in a radial net, feed and return. */
const radialWays = perModel(({ circuit, sides, ways }) =>
  circuit.loads.map((_, load) => {
    const cables = (ways.edgesOf[load] ?? []).filter((edge) => edge < circuit.cables.length);
    const isLive = (cable: number): boolean => sides.live[circuit.cables[cable]?.a ?? -1] === true;
    return { feed: cables.filter(isLive), back: cables.filter((cable) => !isLive(cable)) };
  }),
);

/**
 * Drop from the battery posts to an amplifier in one state. Over cables only: along the one way its current takes; in
 * a ring, or with several batteries, along the way of current whose cables lose most, feed and return each. 100 A
 * through 1 mohm there and 0.5 mohm back: 0.15 V.
 */
export function wayDrop(model: Model, point: StatePoint, load: number): WayDrop {
  const { circuit, sides } = model;
  const wholeV = point.volts - (point.loadVolts[load] ?? 0);
  if (point.nodeVolts === null) {
    const { feed = [], back = [] } = radialWays(model)[load] ?? {};
    const sum = (of: readonly number[]): number => of.reduce((volts, cable) => volts + cableDropV(point, cable), 0);
    return { feed, back, feedV: sum(feed), backV: sum(back), wholeV };
  }
  const { plus = 0, minus = 0 } = circuit.loads[load] ?? {};
  const feed = greatestWays(model, point, sides.live, 1)[plus];
  const back = greatestWays(model, point, sides.back, -1)[minus];
  return {
    feed: feed?.cables ?? [],
    back: back?.cables.toReversed() ?? [],
    feedV: feed?.volts ?? 0,
    backV: back?.volts ?? 0,
    wholeV,
  };
}
