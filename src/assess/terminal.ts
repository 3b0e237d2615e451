import { solveNetwork } from '../calc/network/solve.ts';
import type { Facts } from './facts.ts';
import { fixedOhms } from './ohms.ts';

/** Warm share of a lead-acid battery's cold resistance, and the volts that the CCA test takes it down by. Source: our rules, section 8. */
const WARM_SHARE = 0.45;
const CCA_FALL_V = 5.4;

/** Resistance of a warm lead-acid battery, ohm: 0.45 x 5.4 / CCA. 600 A: 0.00405. Good to a factor of 2 either way. */
const batteryOhm = (ccaA: number): number => (WARM_SHARE * CCA_FALL_V) / ccaA;

/**
 * Voltage of each load at full output with the engine off, the batteries' own resistance included, V; null for a load
 * that does not draw, or where the batteries cannot carry the loads at all.
 */
export function restTerminalV({ model, operating, batteryScale }: Facts): (number | null)[] | null {
  const point = operating?.states.find(({ state }) => state === 'rest');
  if (operating == null || point === undefined) return null;
  const { circuit, sides, demands } = model;
  const fixed = fixedOhms(model, operating.ratings);
  const on = demands.flatMap((demand, load) => (demand === null ? [] : [{ demand, load }]));
  const result = solveNetwork({
    nodes: circuit.nodes,
    resistors: sides.edges.map(({ a, b }, edge) => ({ a, b, ohm: (fixed[edge] ?? 0) + (point.cableOhm[edge] ?? 0) })),
    sources: circuit.sources.map(({ plus, minus, fitting }) => ({
      plus,
      minus,
      volts: point.volts,
      ohm: batteryScale * batteryOhm(fitting.ccaA.value),
    })),
    loads: on.map(({ demand, load }) => {
      const { plus = 0, minus = 0 } = circuit.loads[load] ?? {};
      if (demand.law === 'power') return { plus, minus, law: { kind: 'power' as const, watts: demand.watts } };
      const atVolts = demand.law === 'proportional' ? demand.atVolts : Math.max(point.loadVolts[load] ?? 0, 1);
      return { plus, minus, law: { kind: 'current' as const, amps: demand.amps, atVolts } };
    }),
  });
  if (!result.ok) return demands.map(() => null);
  return demands.map((demand, load) => {
    const { plus = 0, minus = 0 } = circuit.loads[load] ?? {};
    return demand === null ? null : (result.nodeVolts[plus] ?? 0) - (result.nodeVolts[minus] ?? 0);
  });
}
