/** The operating point of a net in which no current has a choice of way: swept out from the posts and back, without a matrix. */
import type { GaugeId } from '../calc/conductor/gauge.ts';
import { conductorOhms, settledC } from './conductor.ts';
import { drawnA } from './demand.ts';
import type { Model } from './model.ts';
import type { StatePoint } from './operate.ts';
import { heatingShares, type Source } from './states.ts';

const CLOSE = 1e-9;
const MOST_SWEEPS = 100;

/** Below this share of the posts' voltage more current brings less power: no operating point is that low. */
const LEAST_SHARE = 0.5;

const isClose = (value: number, before: number): boolean =>
  Math.abs(value - before) <= CLOSE * Math.max(1, Math.abs(value));

/**
 * Currents, voltages and conductor temperatures that agree with one another, from the currents at the start. Each sweep
 * is in proportion to the number of edges, however long a chain is. Null where no such point is found: the network
 * solver then says why.
 */
export function pointAlongWays(
  model: Model,
  sizeOf: (cable: number) => GaugeId,
  fixedOhm: readonly number[],
  source: Source,
  startAmps: readonly number[],
): StatePoint | null {
  const { circuit, demands, sides, ways } = model;
  const { loads, cables } = circuit;
  const shares = heatingShares(model);
  const ohmsAt = conductorOhms(model, sizeOf);
  const amps = Float64Array.from(startAmps, Math.abs);
  const lostV = new Float64Array(sides.at.length);
  const nodeA = new Float64Array(sides.at.length);
  const loadVolts = new Float64Array(loads.length);
  const loadAmps = new Float64Array(loads.length);
  const heatingA = (cable: number): number => (amps[cable] ?? 0) * (shares[cable] ?? 1);

  for (let count = 0; count < MOST_SWEEPS; count += 1) {
    const cableOhm = ohmsAt(heatingA);
    for (const { edge, from, to } of ways.steps) {
      const ohm = (fixedOhm[edge] ?? 0) + (edge < cables.length ? (cableOhm[edge] ?? 0) : 0);
      lostV[to] = (lostV[from] ?? 0) + ohm * (amps[edge] ?? 0);
    }
    nodeA.fill(0);
    let agrees = true;
    for (const [load, demand] of demands.entries()) {
      if (demand === null) continue;
      const { plus = 0, minus = 0 } = loads[load] ?? {};
      const volts = source.volts - (lostV[plus] ?? 0) - (lostV[minus] ?? 0);
      if (volts <= LEAST_SHARE * source.volts) return null;
      const drawn = drawnA(demand, volts);
      if (!isClose(drawn, loadAmps[load] ?? 0)) agrees = false;
      loadVolts[load] = volts;
      loadAmps[load] = drawn;
      nodeA[plus] = (nodeA[plus] ?? 0) + drawn;
      nodeA[minus] = (nodeA[minus] ?? 0) + drawn;
    }
    for (let step = ways.steps.length - 1; step >= 0; step -= 1) {
      const { edge = -1, from = 0, to = 0 } = ways.steps[step] ?? {};
      const through = nodeA[to] ?? 0;
      if (!isClose(through, amps[edge] ?? 0)) agrees = false;
      amps[edge] = through;
      nodeA[from] = (nodeA[from] ?? 0) + through;
    }
    if (!agrees) continue;
    return {
      ...source,
      amps: Array.from(amps),
      loadAmps: Array.from(loadAmps),
      loadVolts: Array.from(loadVolts),
      stretchC: cables.map((_, cable) => settledC(model, cable, sizeOf(cable), heatingA(cable))),
      cableOhm: Array.from(cableOhm),
      nodeVolts: null,
    };
  }
  return null;
}
