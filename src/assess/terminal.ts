/** What each load is left with at full output, with what the sources themselves lose. */
import type { Facts } from './facts.ts';
import { per } from './perModel.ts';
import { type Speed, type SupplyPoint, supplyPoint } from './supply/point.ts';

/** The point at full output at that speed, worked once. */
const fullPoints = per((facts: Facts) => {
  const known = new Map<string, SupplyPoint | null>();
  return (speed: Speed, switches: 'asDrawn' | 'closed'): SupplyPoint | null => {
    const key = `${speed} ${switches}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const point = supplyPoint(facts, { speed, drawnA: null, switches });
    known.set(key, point);
    return point;
  };
});

export const fullPoint = (facts: Facts, speed: Speed, switches: 'asDrawn' | 'closed' = 'asDrawn'): SupplyPoint | null =>
  fullPoints(facts)(speed, switches);

/** What tells the volts of a load at a speed; null: not told, or nothing feeds it then. */
function tellingPoint(facts: Facts, speed: Speed, load: number): SupplyPoint | null {
  const { contacts } = facts.model.circuit;
  const drawn = fullPoint(facts, speed);
  const hasOpenSwitch = contacts.some((contact) => contact.kind === 'switch' && !contact.fitting.closed);
  // a switch that is open is closed before anything plays
  const point = drawn?.unfed[load] === true && hasOpenSwitch ? fullPoint(facts, speed, 'closed') : drawn;
  return point === null || point.unfed[load] === true ? null : point;
}

/** What a load is left with, and what tells it. */
interface Terminal {
  readonly state: 'rest' | 'charging';
  /** V; null: the sources cannot carry it. */
  readonly volts: number | null;
  /** Lowest voltage between any source's posts then, V. */
  readonly postsV: number;
  readonly point: SupplyPoint | null;
}

function terminalAt(facts: Facts, speed: Speed, load: number): Terminal[] {
  const point = tellingPoint(facts, speed, load);
  if (point === null) return [];
  const state = speed === 'off' ? 'rest' : 'charging';
  return [{ state, volts: point.loadVolts[load] ?? null, postsV: Math.min(...point.postsV), point }];
}

/** Behind posts that the engine holds: no alternator is drawn. */
function terminalHeld({ model, operating }: Facts, load: number): Terminal[] {
  const charging = operating?.states.find(({ state }) => state === 'charging');
  const volts = charging?.loadVolts[load];
  return volts === undefined ? [] : [{ state: 'charging', volts, postsV: model.settings.chargingV.value, point: null }];
}

/** By load, at full output, the worse of the states that `terminalVolts` speaks of; null: not told. */
export const terminals = per((facts: Facts): readonly (Terminal | null)[] => {
  const { model, operating } = facts;
  const { settings, circuit } = model;
  return circuit.loads.map((_, load) => {
    if (operating === null || model.demands[load] == null) return null;
    const off = settings.engineAlwaysRunning ? [] : terminalAt(facts, 'off', load);
    const hasAlternator = circuit.alternators.length > 0;
    const idle = hasAlternator ? terminalAt(facts, 'idle', load) : off.length === 0 ? terminalHeld(facts, load) : [];
    const told = [...off, ...idle];
    const [first, ...rest] = told;
    return (
      told.find(({ volts }) => volts === null) ??
      rest.reduce((worst, one) => ((one.volts ?? 0) < (worst?.volts ?? 0) ? one : worst), first) ??
      null
    );
  });
});

/**
 * Voltage of each load with everything at full output, V, the batteries' own resistance included: engine off, and at idle
 * where an alternator is drawn, the worse of the two; relays as they are then. An engine that always runs and of which no
 * alternator is drawn holds the posts. null: the sources cannot carry it; undefined: not told.
 * 1250 W over 5.95 mohm and a warm battery of 600 CCA, 4.05 mohm more: 11.51 V, where held posts would leave 11.98 V.
 */
export const terminalVolts = per((facts: Facts): readonly (number | null | undefined)[] =>
  terminals(facts).map((terminal) => (terminal === null ? undefined : terminal.volts)),
);
