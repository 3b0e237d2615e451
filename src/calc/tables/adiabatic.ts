import type { SourceId } from '../sources.ts';
import type { InsulationC } from './ampacity.ts';
import type { Material } from './materials.ts';

/**
 * Heat that one cubic metre of metal takes per kelvin, J/(m3 K). Source: IEC 60949 / IEC 60364-5-54 Annex A,
 * 3.45e-3 and 2.5e-3 J/(K mm3); trust: memory, confirmed by the ten published k that follow from them.
 * Clad wire is counted as aluminium right through. By volume its copper would bring 2.595e6 (10 %) and 2.643e6 (15 %)
 * and k 1.9 and 2.8 % up, but nobody measures the skin of the cable in hand: the lower figure is the safe one.
 */
export const HEAT_J_PER_M3_K: Readonly<Record<Material, number>> = {
  copper: 3.45e6,
  cca10: 2.5e6,
  cca15: 2.5e6,
  aluminium: 2.5e6,
};

export const heatSource = (material: Material): SourceId =>
  material === 'cca10' || material === 'cca15' ? 'cladHeat' : 'iec60949Heat';

/** Where the metal melts, degC: no temperature beyond it is told. Common knowledge, from memory. */
export const MELTING_C: Readonly<Record<Material, number>> = {
  copper: 1083,
  cca10: 660,
  cca15: 660,
  aluminium: 660,
};

/** Up to here the short-circuit limits of the standard apply, s; beyond, those of an overload. */
export const SHORT_TIME_S = 5;

/** Short-circuit limit by kind of insulation, degC, up to 5 s. Source: BS 7671 Table 43.1 / IEC 60364-4-43; trust: published. */
const SHORT_LIMIT_C = { pvc: 160, thermoset: 250 } as const;

/** Above its class an insulation stands this many kelvin for 6 h. Source: ISO 6722-1 thermal overload; trust: memory. */
const OVERLOAD_K = 50;

/**
 * What a class of Table 5 is taken to be made of: 60 to 105 degC PVC, 125 and 200 degC thermoset. A 90 degC thermoset
 * exists too; unless it is proven, PVC is the safe reading.
 */
export function insulationKind(insulationC: InsulationC): keyof typeof SHORT_LIMIT_C {
  return insulationC >= 125 ? 'thermoset' : 'pvc';
}

/** Temperature that damages the insulation within 5 s, degC. 105 gives 160; 125 gives 250. */
export const shortLimitC = (insulationC: InsulationC): number => SHORT_LIMIT_C[insulationKind(insulationC)];

/** Temperature that damages it in more than 5 s, degC: class + 50 K. 105 gives 155. */
export const overloadLimitC = (insulationC: InsulationC): number => insulationC + OVERLOAD_K;

/** The limit that holds at that time after the start, degC. (105, 4) gives 160, (105, 6) gives 155. */
export const damageLimitC = (insulationC: InsulationC, seconds: number): number =>
  seconds <= SHORT_TIME_S ? shortLimitC(insulationC) : overloadLimitC(insulationC);

/** The source of `damageLimitC`. */
export const damageLimitSource = (seconds: number): SourceId =>
  seconds <= SHORT_TIME_S ? 'bs7671Table43' : 'iso6722Overload';
