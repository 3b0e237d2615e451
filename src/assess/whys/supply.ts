import { alternatorHotWhy, type EngineSpeed } from '../../calc/supply/alternator.ts';
import { batteryOhmWhy } from '../../calc/supply/battery.ts';
import { chargingWhy } from '../../calc/supply/charging.ts';
import { playTimeWhy, type Store } from '../../calc/supply/endurance.ts';
import { meanCurrentWhy } from '../../calc/supply/mean.ts';
import { type Why, whyBuilder } from '../../calc/why.ts';
import type { FittingOf } from '../../plan/schema.ts';
import type { Facts } from '../facts.ts';
import { batteryCase, factoryCableOhm } from '../short/battery.ts';
import { alternatorsA, plateOf, vehicleA } from '../supply/point.ts';
import { dutyOf, stageOf } from '../supply/supply.ts';
import { terminals } from '../terminal.ts';
import { aboutInput, aboutSetting } from './about.ts';

/** Why of an amplifier's mean current at that full current; the result is 'Imean'. */
export function meanWhy({ model }: Facts, amplifier: FittingOf<'amplifier'>, fullA: number): Why {
  const { id, duty, idleA } = amplifier;
  return meanCurrentWhy(
    { stage: stageOf(amplifier), fullA, idleA: idleA.value, duty: dutyOf(model, amplifier) },
    {
      idleA: aboutInput(idleA, `${id}.idleA`),
      duty: duty === null ? aboutSetting(model.settings, 'duty') : { origin: 'told' },
    },
  );
}

/** Why of how long batteries that feed as one last with the engine off, for some that feed; the result is 'tPlay' or 'tFirst', s. */
export function playWhy({ model }: Facts, sources: readonly number[], stores: readonly Store[]): Why {
  const { settings, circuit } = model;
  const source = circuit.sources[sources[0] ?? -1]?.fitting;
  const about = {
    usableShare: aboutSetting(settings, 'usableShare'),
    peukert: aboutSetting(settings, 'peukert'),
    // of several batteries each has its own
    ...(sources.length === 1 && source !== undefined
      ? { capacityAh: aboutInput(source.capacityAh, `${source.id}.capacityAh`) }
      : {}),
  };
  return playTimeWhy(stores, about) ?? whyBuilder().done('tPlay');
}

/** Why of what an alternator brings hot; the result is 'Ihot'. */
export function alternatorWhy({ fitting }: Facts['model']['circuit']['alternators'][number], speed: EngineSpeed): Why {
  const { id, ratedA, idleA, hotShare } = fitting;
  return alternatorHotWhy(plateOf(fitting), speed, {
    ratedA: aboutInput(ratedA, `${id}.ratedA`),
    ...(idleA === null ? {} : { idleA: aboutInput(idleA, `${id}.idleA`) }),
    hotShare: aboutInput(hotShare, `${id}.hotShare`),
  });
}

/** Why of what batteries must add at a speed; the result is 'Ideficit'. */
export function deficitWhy(facts: Facts, speed: EngineSpeed, meansA: readonly number[]): Why {
  const told = facts.model.circuit.alternators.find(({ fitting }) => fitting.vehicleA.value === vehicleA(facts));
  return chargingWhy(
    { meansA, vehicleA: vehicleA(facts), outputsA: alternatorsA(facts, speed) },
    told === undefined ? {} : { vehicleA: aboutInput(told.fitting.vehicleA, `${told.fitting.id}.vehicleA`) },
  );
}

const NOT_TOLD = { state: 'rest', volts: null, postsV: 0, point: null } as const;

/** Why of the voltage that a load is left with at full output, for one that is told; the result is 'V'. */
export function terminalWhy(facts: Facts, load: number): Why {
  const { model } = facts;
  const { state, volts, postsV, point } = terminals(facts)[load] ?? NOT_TOLD;
  const builder = whyBuilder();
  const [source, ...others] = model.circuit.sources;
  if (state === 'rest' && point !== null && source !== undefined && others.length === 0) {
    const { fitting } = source;
    const of = batteryCase(model, source);
    const about = {
      ccaA: aboutInput(fitting.ccaA, `${fitting.id}.ccaA`),
      ...(fitting.kind === 'battery' && fitting.internalOhm !== null
        ? { ownOhm: aboutInput(fitting.internalOhm, `${fitting.id}.internalOhm`) }
        : {}),
    };
    builder.input('Eopen', 'V', model.settings.restV.value, aboutSetting(model.settings, 'restV'));
    const warm = builder.include(batteryOhmWhy(of, 'warm', about));
    const factoryOhm = factoryCableOhm(source, 'lowest');
    if (factoryOhm > 0) builder.input('Rfactory', 'ohm', factoryOhm, { origin: 'assumed' });
    builder.input('Isource', 'A', point.sourceAmps[0] ?? 0);
    const ohms = factoryOhm > 0 ? `(${warm} + Rfactory)` : warm;
    builder.step('E', 'V', `Eopen - ${ohms} * Isource`, postsV, { label: `postsAt.${state}` });
  } else builder.input('E', 'V', postsV, { label: `postsAt.${state}` });
  builder.input('Uwhole', 'V', postsV - (volts ?? 0));
  builder.step('V', 'V', 'E - Uwhole', volts ?? 0, { label: `terminalAt.${state}` });
  return builder.done('V');
}
