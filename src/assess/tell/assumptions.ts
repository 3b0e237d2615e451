import type { Input, Settings } from '../../plan/schema.ts';
import type { AssumptionUse, NotTold } from '../answer.ts';
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
    ...(settings.engineAlwaysRunning ? [] : (['restV'] as const)),
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
    ...circuit.sources.flatMap(({ fitting: { id, ccaA, strap } }) => [
      ...use(`${id}.ccaA`, ccaA),
      ...(strap === null
        ? []
        : [...use(`${id}.strap.lengthM`, strap.lengthM), ...use(`${id}.strap.areaMm2`, strap.areaMm2)]),
    ]),
    ...circuit.loads.flatMap(({ fitting: { id, ratedW, efficiency, regulated } }) =>
      ratedW === null
        ? []
        : [
            ...use(`${id}.ratedW`, ratedW),
            ...use(`${id}.efficiency`, efficiency),
            ...use(`${id}.regulated`, regulated),
          ],
    ),
    ...circuit.cables.flatMap(({ run: { id, conductor } }) => [
      ...use(`${id}.conductor.material`, conductor.material),
      ...use(`${id}.conductor.insulationC`, conductor.insulationC),
    ]),
  ];
}

/** What the plan does not tell; kinds with nothing to say are left out. */
export function tellNotTold({ model }: Facts): NotTold[] {
  const { plan, circuit } = model;
  const all: NotTold[] = [
    { kind: 'lengthsNotTaped', ids: plan.runs.filter(({ tapedM }) => tapedM === null).map(({ id }) => id) },
    {
      kind: 'surroundingsNotMarked',
      ids: circuit.cables.filter(({ run }) => run.zone === 'auto').map(({ run }) => run.id),
    },
    {
      kind: 'batteryAssumed',
      ids: circuit.sources.filter(({ fitting }) => fitting.ccaA.origin === 'assumed').map(({ fitting }) => fitting.id),
    },
    { kind: 'cableUnmarked', ids: circuit.cables.filter(isUnmarked).map(({ run }) => run.id) },
    {
      kind: 'loadUnknown',
      ids: circuit.loads
        .filter(({ fitting }) => fitting.ratedW !== null && fitting.loadOhm === null)
        .map(({ fitting }) => fitting.id),
    },
  ];
  return all.filter(({ ids }) => ids.length > 0);
}
