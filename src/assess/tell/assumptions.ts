import { isTaped } from '../../plan/drawnLength.ts';
import type { Fitting, Input, Settings } from '../../plan/schema.ts';
import type { AssumptionUse, NotTold } from '../answer.ts';
import { amplifierOf, type CircuitLoad, type CircuitSource } from '../circuit.ts';
import type { Facts } from '../facts.ts';
import { isUnmarked } from '../model.ts';
import { isSourceId } from '../whys/about.ts';

type Value = number | string | boolean;

function use(path: string, { value, origin, source }: Input<Value>): AssumptionUse[] {
  if (origin !== 'assumed') return [];
  const isId = source !== undefined && isSourceId(source);
  return [{ path, value, origin, source: isId ? source : null, note: isId ? null : (source ?? null) }];
}

type AssumedSetting = { [K in keyof Settings]: Settings[K] extends { origin: string } ? K : never }[keyof Settings];

/** Settings that took part: the air only of zones that something lies in. */
function settingsUsed({ model }: Facts): AssumedSetting[] {
  const { circuit, settings } = model;
  const zones = new Set([
    ...circuit.cables.flatMap(({ stretches }) => stretches.map(({ zone }) => zone)),
    ...circuit.links.map(({ zone }) => zone),
  ]);
  const always: AssumedSetting[] = ['chargingV', 'duty', 'dropLimit', 'cutOutV', 'jointOhm'];
  return [
    ...(settings.engineAlwaysRunning ? [] : (['restV', 'usableShare', 'peukert'] as const)),
    ...always,
    ...(circuit.bonds.some(({ kind }) => kind === 'body') ? (['bodyOhm'] as const) : []),
    ...(circuit.links.length > 0 ? (['linkDropV'] as const) : []),
    ...(['bay', 'wing', 'hot', 'cabin', 'cargo', 'under'] as const)
      .filter((zone) => zones.has(zone))
      .map((zone) => `${zone}C` as const),
  ];
}

/** Every assumed value that took part in the answer; told and measured ones are not assumptions. */
export function tellAssumptions(facts: Facts): AssumptionUse[] {
  const { model } = facts;
  const { circuit, settings, plan } = model;
  if (circuit.cables.length === 0) return [];
  return [
    ...settingsUsed(facts).flatMap((name) => use(`settings.${name}`, settings[name])),
    ...plan.sheets.flatMap(({ id, scale }) => use(`${id}.scale`, scale)),
    ...circuit.sources.flatMap(({ fitting }) => [
      ...batteryUsed(fitting, !settings.engineAlwaysRunning),
      ...cableUsed(fitting),
    ]),
    ...circuit.loads.flatMap(({ fitting }) => loadUsed(fitting)),
    ...plan.fittings.flatMap(partUsed),
    ...circuit.cables.flatMap(({ run: { id, conductor } }) => [
      ...use(`${id}.conductor.material`, conductor.material),
      ...use(`${id}.conductor.insulationC`, conductor.insulationC),
    ]),
  ];
}

/** A battery's resistance by its own figure, else by its label; its capacity where it feeds with the engine off. */
function batteryUsed(source: CircuitSource['fitting'], feedsAtRest: boolean): AssumptionUse[] {
  const own = source.kind === 'battery' ? source.internalOhm : null;
  return [
    ...(own === null ? use(`${source.id}.ccaA`, source.ccaA) : use(`${source.id}.internalOhm`, own)),
    ...(feedsAtRest ? use(`${source.id}.capacityAh`, source.capacityAh) : []),
  ];
}

/** What is taken of alternators, chargers, contacts, capacitors and factory fuses. */
function partUsed(fitting: Fitting): AssumptionUse[] {
  const { id } = fitting;
  switch (fitting.kind) {
    case 'alternator':
      return [
        ...use(`${id}.ratedA`, fitting.ratedA),
        ...(fitting.idleA === null ? [] : use(`${id}.idleA`, fitting.idleA)),
        ...use(`${id}.hotShare`, fitting.hotShare),
        ...use(`${id}.vehicleA`, fitting.vehicleA),
      ];
    case 'charger':
      return [
        ...use(`${id}.outputV`, fitting.outputV),
        ...use(`${id}.outputMaxA`, fitting.outputMaxA),
        ...use(`${id}.efficiency`, fitting.efficiency),
      ];
    case 'relay':
    case 'switch':
      return use(`${id}.contactOhm`, fitting.contactOhm);
    case 'capacitor':
      return [...use(`${id}.capacitanceF`, fitting.capacitanceF), ...use(`${id}.esrOhm`, fitting.esrOhm)];
    case 'takeOff':
      return use(`${id}.usedA`, fitting.usedA);
    default:
      return [];
  }
}

/** What the factory is taken to have laid at a source. */
function cableUsed(source: CircuitSource['fitting']): AssumptionUse[] {
  const [name, cable] =
    source.kind === 'battery' ? (['strap', source.strap] as const) : (['cable', source.cable] as const);
  if (cable === null) return [];
  return [...use(`${source.id}.${name}.lengthM`, cable.lengthM), ...use(`${source.id}.${name}.areaMm2`, cable.areaMm2)];
}

function loadUsed(load: CircuitLoad['fitting']): AssumptionUse[] {
  if (load.kind === 'load') return use(`${load.id}.currentA`, load.currentA);
  const { id, ratedW, efficiency, regulated } = load;
  if (ratedW === null) return [];
  return [
    ...use(`${id}.ratedW`, ratedW),
    ...use(`${id}.efficiency`, efficiency),
    ...use(`${id}.regulated`, regulated),
    ...(load.ampClass === 'D' ? use(`${id}.idleA`, load.idleA) : []),
  ];
}

/** What a battery's resistance goes by is not told. */
const isAssumed = (source: CircuitSource['fitting']): boolean =>
  ((source.kind === 'battery' ? source.internalOhm : null) ?? source.ccaA).origin === 'assumed';

/** What the plan does not tell; kinds with nothing to say are left out. */
export function tellNotTold({ model }: Facts): NotTold[] {
  const { plan, circuit } = model;
  const all: NotTold[] = [
    { kind: 'lengthsNotTaped', ids: plan.runs.filter((run) => !isTaped(run)).map(({ id }) => id) },
    {
      kind: 'surroundingsNotMarked',
      ids: circuit.cables.filter(({ run }) => run.zone === 'auto').map(({ run }) => run.id),
    },
    {
      kind: 'batteryAssumed',
      ids: circuit.sources.filter(({ fitting }) => isAssumed(fitting)).map(({ fitting }) => fitting.id),
    },
    { kind: 'cableUnmarked', ids: circuit.cables.filter(isUnmarked).map(({ run }) => run.id) },
    {
      kind: 'loadUnknown',
      ids: circuit.loads
        .map(amplifierOf)
        .filter((amplifier) => amplifier !== null)
        .filter(({ ratedW, loadOhm }) => ratedW !== null && loadOhm === null)
        .map(({ id }) => id),
    },
  ];
  return all.filter(({ ids }) => ids.length > 0);
}
