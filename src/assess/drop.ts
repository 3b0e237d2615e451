import type { Model } from './model.ts';
import type { StatePoint } from './operate.ts';
import { farEnd } from './sides.ts';

export interface WayDrop {
  /** Cables along the way, feed then return, as indices of the circuit's cables. */
  readonly feed: readonly number[];
  readonly back: readonly number[];
  /** Over those cables alone, V. */
  readonly feedV: number;
  readonly backV: number;
  /** From the posts to the amplifier's terminals with everything on the way, V. */
  readonly wholeV: number;
  readonly point: StatePoint;
}

/** Drop along one cable in a state, V. */
export const cableDropV = ({ amps, cableOhm }: StatePoint, cable: number): number =>
  Math.abs(amps[cable] ?? 0) * (cableOhm[cable] ?? 0);

/** By node of one side, from its posts on: what the cables lose along the way that loses most, and the last edge of it. */
interface Losses {
  readonly volts: Float64Array;
  readonly by: Int32Array;
}

const noLosses = (nodes: number): Losses => ({
  volts: new Float64Array(nodes),
  by: new Int32Array(nodes).fill(-1),
});

/** Losses along the one way there is to each node. */
function lossesAlong({ circuit, sides, ways }: Model, point: StatePoint): Losses {
  const { volts, by } = noLosses(sides.at.length);
  for (const { edge, from, to } of ways.steps) {
    volts[to] = (volts[from] ?? 0) + (edge < circuit.cables.length ? cableDropV(point, edge) : 0);
    by[to] = edge;
  }
  return { volts, by };
}

/** Currents below this share of the greatest are rounding. */
const NO_SHARE = 1e-9;

/**
 * Losses along the way of the current to each node whose cables lose most, from where the current starts. Nodes are
 * taken once all that flows into them is known (Kahn's order), so a long net needs no deep recursion. `downstream` -1
 * follows the current backwards: from where it ends.
 */
function lossesOfGreatest(
  { sides, circuit }: Model,
  point: StatePoint,
  on: readonly boolean[],
  downstream: 1 | -1,
): Losses {
  let mostA = 0;
  for (const amps of point.amps) mostA = Math.max(mostA, Math.abs(amps));
  const least = NO_SHARE * mostA;
  const out = sides.at.map((): { to: number; edge: number }[] => []);
  const pending = sides.at.map(() => 0);
  for (const [edge, { a, b }] of sides.edges.entries()) {
    const amps = (point.amps[edge] ?? 0) * downstream;
    if (Math.abs(amps) <= least || on[a] !== true || on[b] !== true) continue;
    const [from, to] = amps > 0 ? [a, b] : [b, a];
    out[from]?.push({ to, edge });
    pending[to] = (pending[to] ?? 0) + 1;
  }
  const { volts, by } = noLosses(sides.at.length);
  const queue = sides.at.flatMap((_, node) => (pending[node] === 0 ? [node] : []));
  for (const node of queue) {
    for (const { to, edge } of out[node] ?? []) {
      const lost = (volts[node] ?? 0) + (edge < circuit.cables.length ? cableDropV(point, edge) : 0);
      if (by[to] === -1 || lost > (volts[to] ?? 0)) {
        volts[to] = lost;
        by[to] = edge;
      }
      pending[to] = (pending[to] ?? 1) - 1;
      if (pending[to] === 0) queue.push(to);
    }
  }
  return { volts, by };
}

const known = new WeakMap<StatePoint, { readonly feed: Losses; readonly back: Losses }>();

/** Losses of both sides in a state, worked out once for each. */
function lossesOf(model: Model, point: StatePoint): { readonly feed: Losses; readonly back: Losses } {
  const before = known.get(point);
  if (before !== undefined) return before;
  const { sides } = model;
  const along = point.nodeVolts === null ? lossesAlong(model, point) : null;
  const losses = {
    feed: along ?? lossesOfGreatest(model, point, sides.live, 1),
    back: along ?? lossesOfGreatest(model, point, sides.back, -1),
  };
  known.set(point, losses);
  return losses;
}

/** The cables of a way, from the post on. */
function cablesTo({ sides, circuit }: Model, { by }: Losses, end: number): number[] {
  const cables: number[] = [];
  let node = end;
  for (let edge = by[node] ?? -1; edge !== -1; edge = by[node] ?? -1) {
    const found = sides.edges[edge];
    if (found === undefined) break;
    if (edge < circuit.cables.length) cables.push(edge);
    node = farEnd(found, node);
  }
  return cables.reverse();
}

/**
 * Drop from the battery posts to an amplifier in one state. Over cables only: along the one way its current takes; in
 * a ring, or with several batteries, along the way of current whose cables lose most, feed and return each. 100 A
 * through 1 mohm there and 0.5 mohm back: 0.15 V.
 */
export const wayDrop = (model: Model, point: StatePoint, load: number): WayDrop => new LoadDrop(model, point, load);

/** Its cables are looked for only where somebody asks. */
class LoadDrop implements WayDrop {
  readonly feedV: number;
  readonly backV: number;
  readonly wholeV: number;
  readonly point: StatePoint;
  readonly #model: Model;
  readonly #load: number;

  constructor(model: Model, point: StatePoint, load: number) {
    const { plus = 0, minus = 0 } = model.circuit.loads[load] ?? {};
    const { feed, back } = lossesOf(model, point);
    this.feedV = feed.volts[plus] ?? 0;
    this.backV = back.volts[minus] ?? 0;
    this.wholeV = point.volts - (point.loadVolts[load] ?? 0);
    this.point = point;
    this.#model = model;
    this.#load = load;
  }

  get feed(): readonly number[] {
    return cablesTo(
      this.#model,
      lossesOf(this.#model, this.point).feed,
      this.#model.circuit.loads[this.#load]?.plus ?? 0,
    );
  }

  get back(): readonly number[] {
    const { minus = 0 } = this.#model.circuit.loads[this.#load] ?? {};
    return cablesTo(this.#model, lossesOf(this.#model, this.point).back, minus).reverse();
  }
}
