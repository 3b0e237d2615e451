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

/** The volts of a load at a speed; undefined: not told, or nothing feeds it then; null: the sources cannot carry it. */
function voltsAt(facts: Facts, speed: Speed, load: number): number | null | undefined {
  const { contacts } = facts.model.circuit;
  const drawn = fullPoint(facts, speed);
  const hasOpenSwitch = contacts.some((contact) => contact.kind === 'switch' && !contact.fitting.closed);
  // a switch that is open is closed before anything plays
  const point = drawn?.unfed[load] === true && hasOpenSwitch ? fullPoint(facts, speed, 'closed') : drawn;
  return point === null || point.unfed[load] === true ? undefined : (point.loadVolts[load] ?? null);
}

/**
 * Voltage of each load with everything at full output, V, the batteries' own resistance included: engine off, and at idle
 * where an alternator is drawn, the worse of the two; relays as they are then. An engine that always runs and of which no
 * alternator is drawn holds the posts. null: the sources cannot carry it; undefined: not told.
 * 1250 W over 5.95 mohm and a warm battery of 600 CCA, 4.05 mohm more: 11.51 V, where held posts would leave 11.98 V.
 */
export const terminalVolts = per((facts: Facts): readonly (number | null | undefined)[] => {
  const { model, operating } = facts;
  const { settings, circuit } = model;
  const charging = operating?.states.find(({ state }) => state === 'charging');
  return circuit.loads.map((_, load) => {
    if (operating === null || model.demands[load] == null) return undefined;
    const off = settings.engineAlwaysRunning ? undefined : voltsAt(facts, 'off', load);
    const idle =
      circuit.alternators.length > 0
        ? voltsAt(facts, 'idle', load)
        : off === undefined
          ? charging?.loadVolts[load]
          : off;
    if (off === null || idle === null) return null;
    return off === undefined ? idle : Math.min(off, idle ?? off);
  });
});
