/** The circuit as a short finds it: batteries behind their own resistance, no load drawing, every device closed. */
import { type Faults, faultsTo } from '../../calc/network/fault.ts';
import type { Network, Resistor } from '../../calc/network/types.ts';
import { ANY_SIZE, conductorOhm } from '../conductor.ts';
import type { Facts } from '../facts.ts';
import { insulationOf, type Model } from '../model.ts';
import { fixedOhms } from '../ohms.ts';
import { once, per } from '../perModel.ts';
import { linkEdge } from '../ratings.ts';
import { ambientC } from '../surroundings.ts';
import { type Extreme, sourceOhm } from './battery.ts';

/** Below this a current is rounding. */
export const NO_A = 1e-6;

/** Where a short goes: the body; where no battery is joined to the body (a bench), the negative post. */
export function returnOf({ circuit, sides }: Model): { readonly node: number; readonly to: 'body' | 'negative' } {
  const body = sides.backPart[circuit.body];
  const isJoined = circuit.sources.some(({ minus }) => sides.backPart[minus] === body);
  return isJoined
    ? { node: circuit.body, to: 'body' }
    : { node: circuit.sources[0]?.minus ?? circuit.body, to: 'negative' };
}

/** Coldest conductor of the highest current, degC. Source: our rules, section 7. */
const COLD_C = 20;

/** Temperature of each stretch of a cable in an extreme, degC: the class it may reach, or hotter air. */
function stretchesC({ circuit, settings }: Model, index: number, extreme: Extreme): number[] {
  const cable = circuit.cables[index];
  if (cable === undefined) return [];
  return cable.stretches.map(({ zone }) =>
    extreme === 'highest' ? COLD_C : Math.max(insulationOf(cable), ambientC(settings, zone)),
  );
}

/** Resistance of a cable's conductor alone in an extreme, ohm. */
export const cableOhmAt = ({ model, choice }: Facts, index: number, extreme: Extreme): number =>
  conductorOhm(model, index, choice.trialSizes[index] ?? ANY_SIZE, stretchesC(model, index, extreme));

export interface NetCase {
  readonly extreme: Extreme;
  /** Multiplies the batteries' own resistance. */
  readonly batteryScale?: number;
  /** Devices that have opened, by link. */
  readonly opened?: ReadonlySet<number>;
}

/** Every conductor and device as it is in an extreme, in the order of the circuit's edges. */
const resistorsAt = per((facts: Facts) => {
  const { model, ratings } = facts;
  const fixed = once(() => fixedOhms(model, ratings));
  const cables = model.circuit.cables.length;
  const at = (extreme: Extreme) => (): readonly Resistor[] =>
    model.sides.edges.map(({ a, b }, edge) => {
      const conductor = edge < cables ? cableOhmAt(facts, edge, extreme) : 0;
      return { a, b, ohm: (fixed()[edge] ?? 0) + conductor };
    });
  return { highest: once(at('highest')), lowest: once(at('lowest')) };
});

/** The circuit as a network, elements in the order of its edges; a device that has opened stays as a piece of no length. */
export function faultNetwork(facts: Facts, { extreme, batteryScale = 1, opened }: NetCase): Network {
  const { model } = facts;
  const { circuit, settings } = model;
  const resistors = resistorsAt(facts)[extreme]();
  const firstLink = linkEdge(model, 0);
  return {
    nodes: circuit.nodes,
    resistors:
      opened === undefined
        ? resistors
        : resistors.map((resistor, edge) =>
            opened.has(edge - firstLink) ? { a: resistor.a, b: resistor.a, ohm: 1 } : resistor,
          ),
    sources: circuit.sources.map((source) => ({
      plus: source.plus,
      minus: source.minus,
      volts: settings.restV.value,
      ohm: sourceOhm(model, source, extreme, batteryScale * facts.batteryScale),
    })),
    loads: [],
    // saturated during a short, an alternator adds what it is rated for
    injections:
      extreme === 'highest'
        ? circuit.alternators.map(({ fitting, plus, minus }) => ({ from: minus, to: plus, amps: fitting.ratedA.value }))
        : [],
  };
}

/** Shorts from every node to the return by the solver of networks; null where the sources contradict one another. */
export function faultsByNetwork(facts: Facts, of: NetCase): Faults | null {
  const faults = faultsTo(faultNetwork(facts, of), returnOf(facts.model).node);
  return faults.ok ? faults : null;
}

/** The same where every live node has one way to the one source: resistances along it added up. Null of any other net. */
function faultsAlongWays(facts: Facts, of: NetCase): Faults | null {
  const { model } = facts;
  const { circuit, ways, sides } = model;
  const [source, ...others] = circuit.sources;
  const isAlone = source !== undefined && others.length === 0 && circuit.alternators.length === 0;
  if (!isAlone || !ways.radial || model.shorted || of.opened !== undefined) return null;
  const { sources, resistors } = faultNetwork(facts, of);
  const [{ volts = 0, ohm: ownOhm = 0 } = {}] = sources;
  const fromPost = new Float64Array(circuit.nodes).fill(Number.NaN);
  for (const node of [source.plus, source.minus]) fromPost[node] = 0;
  for (const { edge, from, to } of ways.steps)
    fromPost[to] = (fromPost[from] ?? Number.NaN) + (resistors[edge]?.ohm ?? Number.NaN);
  const aheadOhm = ownOhm + (fromPost[returnOf(model).node] ?? Number.NaN);
  // behind no held post there is no limit to a current: the network tells what then holds
  if (!(aheadOhm > 0)) return null;
  const ohm = sides.live.map((isLive, node) => (isLive ? aheadOhm + (fromPost[node] ?? Number.NaN) : null));
  const whole = once(() => faultsByNetwork(facts, of));
  return {
    ok: true,
    openVolts: sides.live.map((isLive) => (isLive ? volts : 0)),
    ohm,
    amps: ohm.map((ahead) => (ahead === null ? 0 : volts / ahead)),
    sharesOf: (index) => whole()?.sharesOf(index) ?? null,
    at: (node, faultOhm) => whole()?.at(node, faultOhm) ?? null,
  };
}

/** Shorts from every live node to the return; null where the sources contradict one another. */
export const faultsOf = (facts: Facts, of: NetCase): Faults | null =>
  faultsAlongWays(facts, of) ?? faultsByNetwork(facts, of);

export interface BothFaults {
  readonly highest: Faults;
  readonly lowest: Faults;
  /** In the way of the lowest current, beyond the place itself: the body. ohm. */
  readonly returnOhm: number;
}

/** Both extremes with every device closed, worked once; null where no short can be told: the plan is one already, or has no source. */
export const bothFaults = per((facts: Facts): BothFaults | null => {
  const { model } = facts;
  if (model.shorted || model.circuit.sources.length === 0) return null;
  const highest = faultsOf(facts, { extreme: 'highest' });
  const lowest = faultsOf(facts, { extreme: 'lowest' });
  if (highest === null || lowest === null) return null;
  return { highest, lowest, returnOhm: returnOf(model).to === 'body' ? model.settings.bodyOhm.value : 0 };
});

/** Current of a fault at a node through a resistance, A. */
export function faultA({ openVolts, ohm }: Faults, node: number, faultOhm: number): number {
  const ahead = ohm[node];
  if (ahead == null) return 0;
  return ahead + faultOhm > 0 ? (openVolts[node] ?? 0) / (ahead + faultOhm) : 0;
}
