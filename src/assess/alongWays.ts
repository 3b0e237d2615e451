/** The operating point of a net in which no current has a choice of way: swept out from the posts and back, without a matrix. */
import { ANY_SIZE, settledC } from './conductor.ts';
import { drawnA } from './demand.ts';
import type { Model } from './model.ts';
import type { Conductors, Figures, StatePoint } from './operate.ts';
import { once } from './perModel.ts';
import { heatingShares, type Source } from './states.ts';

const CLOSE = 1e-9;
const MOST_SWEEPS = 100;

/** Below this share of the posts' voltage more current brings less power: no operating point is that low. */
const LEAST_SHARE = 0.5;

const isClose = (value: number, before: number): boolean =>
  Math.abs(value - before) <= CLOSE * Math.max(1, Math.abs(value));

/** What feeds such a net: a voltage behind a resistance that all current passes. */
interface Feed {
  readonly volts: number;
  readonly ohm: number;
}

interface Swept {
  /** By edge, without sign, A. */
  readonly amps: Float64Array;
  readonly loadAmps: Float64Array;
  readonly loadVolts: Float64Array;
  /** By cable, ohm: the conductor alone; the list that `ohmsAt` gave. */
  readonly cableOhm: Figures;
  readonly totalA: number;
}

/** Without sign. */
function magnitudes(values: ArrayLike<number>): Float64Array {
  const own = new Float64Array(values.length);
  for (let index = 0; index < own.length; index += 1) own[index] = Math.abs(values[index] ?? 0);
  return own;
}

/**
 * Currents and voltages that agree with one another, from the currents at the start; `drawn`: what a load draws at a
 * voltage, A; `ohmsAt`: the conductors' resistances at those currents. Each sweep is in proportion to the number of
 * edges, however long a chain is. Null where no such point is found: the network solver then says why.
 */
export function sweepAlongWays(
  { circuit, demands, sides, ways }: Model,
  feed: Feed,
  fixedOhm: readonly number[],
  ohmsAt: (amps: ArrayLike<number>) => Figures,
  drawn: (load: number, volts: number) => number,
  startAmps: ArrayLike<number>,
): Swept | null {
  const { loads } = circuit;
  const { steps } = ways;
  const cables = circuit.cables.length;
  const amps = magnitudes(startAmps);
  const lostV = new Float64Array(sides.at.length);
  const nodeA = new Float64Array(sides.at.length);
  const loadVolts = new Float64Array(loads.length);
  const loadAmps = new Float64Array(loads.length);
  let totalA = 0;
  for (let count = 0; count < MOST_SWEEPS; count += 1) {
    const cableOhm = ohmsAt(amps);
    for (const { edge, from, to } of steps) {
      const ohm = (fixedOhm[edge] ?? 0) + (edge < cables ? (cableOhm[edge] ?? 0) : 0);
      lostV[to] = (lostV[from] ?? 0) + ohm * (amps[edge] ?? 0);
    }
    nodeA.fill(0);
    let agrees = true;
    const postsV = feed.volts - feed.ohm * totalA;
    totalA = 0;
    for (let load = 0; load < loads.length; load += 1) {
      const at = loads[load];
      if (at === undefined || demands[load] == null) continue;
      const { plus, minus } = at;
      const volts = postsV - (lostV[plus] ?? 0) - (lostV[minus] ?? 0);
      if (volts <= LEAST_SHARE * feed.volts) return null;
      const current = drawn(load, volts);
      if (!isClose(current, loadAmps[load] ?? 0)) agrees = false;
      loadVolts[load] = volts;
      loadAmps[load] = current;
      totalA += current;
      nodeA[plus] = (nodeA[plus] ?? 0) + current;
      nodeA[minus] = (nodeA[minus] ?? 0) + current;
    }
    for (let place = steps.length - 1; place >= 0; place -= 1) {
      const step = steps[place];
      if (step === undefined) continue;
      const { edge, from, to } = step;
      const through = nodeA[to] ?? 0;
      if (!isClose(through, amps[edge] ?? 0)) agrees = false;
      amps[edge] = through;
      nodeA[from] = (nodeA[from] ?? 0) + through;
    }
    if (agrees) return { amps, loadAmps, loadVolts, cableOhm, totalA };
  }
  return null;
}

/** The operating point behind held posts, conductor temperatures included; null as above. */
export function pointAlongWays(
  model: Model,
  { sizes, ohmsAt }: Conductors,
  fixedOhm: readonly number[],
  source: Source,
  startAmps: ArrayLike<number>,
): StatePoint | null {
  const { circuit, demands } = model;
  const shares = heatingShares(model);
  const swept = sweepAlongWays(
    model,
    { volts: source.volts, ohm: 0 },
    fixedOhm,
    (amps) => ohmsAt(amps, shares),
    (load, volts) => {
      const demand = demands[load];
      return demand == null ? 0 : drawnA(demand, volts);
    },
    startAmps,
  );
  if (swept === null) return null;
  const { amps, loadAmps, loadVolts, cableOhm } = swept;
  // most points are worked to be judged by their currents and voltages alone
  const stretchC = once(() =>
    circuit.cables.map((_, cable) =>
      settledC(model, cable, sizes[cable] ?? ANY_SIZE, (amps[cable] ?? 0) * (shares[cable] ?? 1)),
    ),
  );
  return {
    ...source,
    amps,
    loadAmps,
    loadVolts,
    get stretchC() {
      return stretchC();
    },
    cableOhm: cableOhm.slice(),
    nodeVolts: null,
  };
}
