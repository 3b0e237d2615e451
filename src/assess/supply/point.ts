/** The operating point with real sources: batteries behind their own resistance, alternators and chargers within their limits. */
import type { Network, NetworkInjection, NetworkLoad, NetworkSource, Resistor } from '../../calc/network/types.ts';
import { alternatorHotA, type EngineSpeed } from '../../calc/supply/alternator.ts';
import type { LimitedSource, LimitedState } from '../../calc/supply/limited.ts';
import { type Charger, type SuppliedSolved, solveSupplied } from '../../calc/supply/supplied.ts';
import type { FittingOf } from '../../plan/schema.ts';
import { sweepAlongWays } from '../alongWays.ts';
import type { Contact } from '../circuit.ts';
import { conductorOhms } from '../conductor.ts';
import { drawnA } from '../demand.ts';
import type { Facts } from '../facts.ts';
import { fixedOhms } from '../ohms.ts';
import type { Figures } from '../operate.ts';
import { heatingShares } from '../states.ts';
import { postOhm } from './posts.ts';

export type Speed = 'off' | EngineSpeed;

interface SupplyCase {
  readonly speed: Speed;
  /** By load, A, whatever the voltage; null: everything at full output. */
  readonly drawnA: readonly number[] | null;
  /** Switches as the plan draws them, or every one closed. */
  readonly switches: 'asDrawn' | 'closed';
}

export interface SupplyPoint {
  /** False: the sources cannot carry what is asked of them, at any voltage. */
  readonly carried: boolean;
  /** By load: no source reaches it, or it draws nothing. */
  readonly unfed: readonly boolean[];
  /** By load, V; null where it is unfed or not carried. */
  readonly loadVolts: readonly (number | null)[];
  /** By source: what it gives, A, and between its posts, V. */
  readonly sourceAmps: readonly number[];
  readonly postsV: readonly number[];
  readonly alternators: readonly { readonly state: LimitedState; readonly amps: number }[];
}

/** A full battery gives and takes no more: no greater current is ever asked of one, A. */
const BATTERY_MOST_A = 1e5;
const CLOSE_V = 1e-7;
const MOST_SWEEPS = 8;

const isOpen = (contact: Contact | undefined, { speed, switches }: SupplyCase): boolean =>
  contact?.kind === 'relay'
    ? speed === 'off'
    : contact?.kind === 'switch' && switches === 'asDrawn' && !contact.fitting.closed;

interface Posts {
  readonly plus: number;
  readonly minus: number;
}

/** Where an alternator feeds in: where it is joined; at the first source where the plan draws no cable from it. */
function alternatorPosts({ model }: Facts): Posts[] {
  const { circuit, sides } = model;
  const [first] = circuit.sources;
  return circuit.alternators.flatMap(({ plus, minus }) => {
    if (sides.live[plus] === true && sides.back[minus] === true) return [{ plus, minus }];
    return first === undefined ? [] : [{ plus: first.plus, minus: first.minus }];
  });
}

export const plateOf = ({ ratedA, idleA, hotShare }: FittingOf<'alternator'>) => ({
  ratedA: ratedA.value,
  idleA: idleA?.value ?? null,
  hotShare: hotShare.value,
});

/** What each alternator brings hot at that speed, A. */
export const alternatorsA = ({ model }: Facts, speed: EngineSpeed): number[] =>
  model.circuit.alternators.map(({ fitting }) => alternatorHotA(plateOf(fitting), speed));

/** What the vehicle itself draws with the engine running, A: told at each alternator, and drawn once. */
export const vehicleA = ({ model }: Facts): number =>
  Math.max(0, ...model.circuit.alternators.map(({ fitting }) => fitting.vehicleA.value));

const batteries = ({ model, batteryScale }: Facts): NetworkSource[] =>
  model.circuit.sources.map((source) => ({
    plus: source.plus,
    minus: source.minus,
    volts: model.settings.restV.value,
    ohm: postOhm(model, source, batteryScale),
  }));

/** What holds or limits a voltage while the engine runs: alternators, then batteries, which being full take no current. */
function limitedOf(facts: Facts, speed: EngineSpeed): LimitedSource[] {
  const hotA = alternatorsA(facts, speed);
  const volts = facts.model.settings.chargingV.value;
  return [
    ...alternatorPosts(facts).map((posts, index) => ({ ...posts, volts, ohm: 0, maxA: hotA[index] ?? 0 })),
    ...batteries(facts).map((battery) => ({ ...battery, maxA: BATTERY_MOST_A })),
  ];
}

const chargersOf = ({ model }: Facts): Charger[] =>
  model.circuit.chargers.map(({ fitting, input, output, ground }) => ({
    input: { plus: input, minus: ground },
    output: {
      plus: output,
      minus: ground,
      volts: fitting.outputV.value,
      ohm: 0,
      maxA: fitting.outputMaxA.value,
    },
    efficiency: fitting.efficiency.value,
  }));

interface Drawn {
  readonly loads: readonly NetworkLoad[];
  /** Currents that no voltage changes. */
  readonly injections: readonly NetworkInjection[];
}

function drawnOf(facts: Facts, { speed, drawnA }: SupplyCase): Drawn {
  const { circuit, demands } = facts.model;
  const loads: NetworkLoad[] = [];
  const injections: NetworkInjection[] = [];
  for (const [load, demand] of demands.entries()) {
    const { plus = 0, minus = 0 } = circuit.loads[load] ?? {};
    if (demand === null) continue;
    if (drawnA !== null) injections.push({ from: plus, to: minus, amps: drawnA[load] ?? 0 });
    else if (demand.law === 'power') loads.push({ plus, minus, law: { kind: 'power', watts: demand.watts } });
    else if (demand.law === 'constant') injections.push({ from: plus, to: minus, amps: demand.amps });
    else loads.push({ plus, minus, law: { kind: 'current', amps: demand.amps, atVolts: demand.atVolts } });
  }
  const [first] = speed === 'off' ? [] : alternatorPosts(facts);
  if (first !== undefined) injections.push({ from: first.plus, to: first.minus, amps: vehicleA(facts) });
  return { loads, injections };
}

/** The cables' resistances at the currents of the point, ohm, and the point at those resistances, in turn until they agree. */
function settle(facts: Facts, of: SupplyCase): SuppliedSolved | null | 'cannotCarry' {
  const { model, operating, choice, ratings } = facts;
  const { circuit, sides } = model;
  const states = operating?.states ?? [];
  const near = states.find(({ state }) => (state === 'rest') === (of.speed === 'off')) ?? states[0];
  if (near === undefined || model.shorted) return null;
  const fixed = fixedOhms(model, ratings);
  const ohmsAt = conductorOhms(model, choice.trialSizes);
  const shares = heatingShares(model);
  const running = of.speed === 'off' ? null : of.speed;
  const limited = running === null ? [] : limitedOf(facts, running);
  const chargers = running === null ? [] : chargersOf(facts);
  const { loads, injections } = drawnOf(facts, of);
  let cableOhm: Figures = near.cableOhm;
  let before: SuppliedSolved | null = null;
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep += 1) {
    const network: Network = {
      nodes: circuit.nodes,
      // what is open stays as a piece of no length, so that the order holds
      resistors: sides.edges.map(({ kind, index, a, b }, edge): Resistor => {
        if (kind === 'contact' && isOpen(circuit.contacts[index], of)) return { a, b: a, ohm: 1 };
        return { a, b, ohm: (fixed[edge] ?? 0) + (cableOhm[edge] ?? 0) };
      }),
      sources: running === null ? batteries(facts) : [],
      loads,
      injections,
    };
    const solved = solveSupplied(network, limited, chargers);
    if (!solved.ok) return solved.reason === 'cannotCarry' ? 'cannotCarry' : null;
    const last = before;
    before = solved;
    // what music draws in the mean is worked with the cables as warm as full output makes them
    if (of.drawnA !== null) return solved;
    const moved = solved.nodeVolts.map((volts, node) => Math.abs(volts - (last?.nodeVolts[node] ?? Infinity)));
    if (Math.max(...moved) < CLOSE_V) return solved;
    cableOhm = ohmsAt(solved.resistorAmps, shares);
  }
  return before;
}

/** Engine off, one source, every contact closed, no current with a choice of way: swept out and back, without a matrix. */
function alongWays(facts: Facts, of: SupplyCase): SupplyPoint | null {
  const { model, operating, choice, ratings } = facts;
  const { circuit, demands } = model;
  const near = operating?.states.find(({ state }) => state === 'rest') ?? operating?.states[0];
  const [battery, ...others] = batteries(facts);
  const isPlain = of.speed === 'off' && model.ways.radial && !circuit.contacts.some((contact) => isOpen(contact, of));
  if (near === undefined || battery === undefined || others.length > 0 || !isPlain || model.shorted) return null;
  const ohmsAt = conductorOhms(model, choice.trialSizes);
  const shares = heatingShares(model);
  const swept = sweepAlongWays(
    model,
    { volts: battery.volts, ohm: battery.ohm },
    fixedOhms(model, ratings),
    // what music draws in the mean is worked with the cables as warm as full output makes them
    of.drawnA === null ? (amps) => ohmsAt(amps, shares) : () => near.cableOhm,
    (load, volts) => {
      const demand = demands[load];
      if (demand == null) return 0;
      return of.drawnA === null ? drawnA(demand, volts) : (of.drawnA[load] ?? 0);
    },
    near.amps,
  );
  if (swept === null) return null;
  return {
    carried: true,
    unfed: demands.map((demand) => demand === null),
    loadVolts: demands.map((demand, load) => (demand === null ? null : (swept.loadVolts[load] ?? null))),
    sourceAmps: [swept.totalA],
    postsV: [battery.volts - battery.ohm * swept.totalA],
    alternators: [],
  };
}

/** The operating point in that case; null where none can be told. */
export const supplyPoint = (facts: Facts, of: SupplyCase): SupplyPoint | null =>
  alongWays(facts, of) ?? supplyByNetwork(facts, of);

/** The same of any net, by the solver of networks. */
export function supplyByNetwork(facts: Facts, of: SupplyCase): SupplyPoint | null {
  const { circuit, demands } = facts.model;
  const solved = settle(facts, of);
  if (solved === null) return null;
  if (solved === 'cannotCarry') {
    return {
      carried: false,
      unfed: demands.map((demand) => demand === null),
      loadVolts: demands.map(() => null),
      sourceAmps: circuit.sources.map(() => 0),
      postsV: circuit.sources.map(() => 0),
      alternators: circuit.alternators.map(() => ({ state: 'off', amps: 0 })),
    };
  }
  const across = ({ plus, minus }: Posts): number => (solved.nodeVolts[plus] ?? 0) - (solved.nodeVolts[minus] ?? 0);
  const dead = new Set(solved.dead);
  const unfed = demands.map((demand, load) => {
    const { plus = 0, minus = 0 } = circuit.loads[load] ?? {};
    return demand === null || dead.has(plus) || dead.has(minus);
  });
  const volts = circuit.loads.map((load, index) => (unfed[index] ? null : across(load)));
  const alternators = circuit.alternators.length;
  return {
    // a constant current goes on at a voltage below nothing: such a point is none
    carried: volts.every((value) => value === null || value > 0),
    unfed,
    loadVolts: volts.map((value) => (value !== null && value > 0 ? value : null)),
    sourceAmps: of.speed === 'off' ? solved.sourceAmps : solved.limited.slice(alternators).map(({ amps }) => amps),
    postsV: circuit.sources.map(across),
    alternators:
      of.speed === 'off' ? [] : solved.limited.slice(0, alternators).map(({ state, amps }) => ({ state, amps })),
  };
}
