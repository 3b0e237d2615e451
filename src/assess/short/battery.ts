/** What a source puts in the way of a short: its own resistance, and the factory's cable where its battery stands elsewhere. */

import type { GaugeId } from '../../calc/conductor/gauge.ts';
import { resistancePerMOhm } from '../../calc/conductor/resistance.ts';
import { type BatteryCase, type BatteryCondition, batteryOhm } from '../../calc/supply/battery.ts';
import type { CircuitSource } from '../circuit.ts';
import type { Model } from '../model.ts';

/** The highest short: as warm as it gets strong, conductors at 20 degC. The lowest: cold and aged, conductors hot. */
export type Extreme = 'highest' | 'lowest';

export const CONDITION: Readonly<Record<Extreme, BatteryCondition>> = { highest: 'warm', lowest: 'coldAged' };

/** A source's battery as its resistance is reckoned; one that stands elsewhere is taken as lead-acid by SAE J537. */
export function batteryCase({ settings }: Pick<Model, 'settings'>, { fitting }: CircuitSource): BatteryCase {
  const { systemV } = settings;
  const ccaA = fitting.ccaA.value;
  if (fitting.kind !== 'battery') return { chemistry: 'leadAcid', ccaA, ccaStandard: 'sae', ownOhm: null, systemV };
  const { chemistry, ccaStandard, internalOhm } = fitting;
  return { chemistry, ccaA, ccaStandard, ownOhm: internalOhm?.value ?? null, systemV };
}

/** Copper of the factory's cable, degC, by extreme. */
const FACTORY_C: Readonly<Record<Extreme, number>> = { highest: 20, lowest: 80 };

/** The factory's cable from a battery that stands elsewhere, ohm; 0 for a battery in the plan. */
export function factoryCableOhm({ fitting }: CircuitSource, extreme: Extreme): number {
  if (fitting.kind === 'battery') return 0;
  const { lengthM, areaMm2 } = fitting.cable;
  // the class 5 table holds nominal areas only; a factory cable may have any
  const ohmPerM = (resistancePerMOhm('mm2:25' as GaugeId, 'copper', FACTORY_C[extreme]) * 25) / areaMm2.value;
  return lengthM.value * ohmPerM;
}

/** Resistance behind a source's posts, ohm; `scale` multiplies the battery's own. */
export const sourceOhm = (model: Model, source: CircuitSource, extreme: Extreme, scale: number): number =>
  scale * batteryOhm(batteryCase(model, source), CONDITION[extreme]) + factoryCableOhm(source, extreme);
