import { recordR20 } from '../conductor/resistance.ts';
import type { Cable } from '../conductor/tableCurrent.ts';
import { recordMetalArea } from '../conductor/thermal.ts';
import { HEAT_J_PER_M3_K, heatSource, shortLimitC } from '../tables/adiabatic.ts';
import { COPPER_RHO20_OHM_M, MATERIAL_FIGURES, type Material } from '../tables/materials.ts';
import { type Abouts, cited, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';

type Given = Abouts<'startC'>;

/** Records 'K', the constant of the metal, and 'k' between two temperatures. */
function recordK(material: Material, startC: number, endC: number, rec: Recorder, about: Given = {}): number {
  const { betaC, betaSource, conductivity, conductivitySource } = MATERIAL_FIGURES[material];
  const heat = rec.input('heat', 'jPerM3K', HEAT_J_PER_M3_K[material], cited(heatSource(material)));
  const rho20 = rec.input('rho20', 'ohmM', COPPER_RHO20_OHM_M, cited('nbsHandbook100'));
  const share = rec.input('conductivity', '1', conductivity, cited(conductivitySource));
  const beta = rec.input('beta', 'degC', betaC, cited(betaSource));
  const start = rec.input('Tstart', 'degC', startC, about.startC);
  const end = rec.input('Tlimit', 'degC', endC, cited('bs7671Table43'));
  const metal = rec.step(
    'K',
    'rootA2sPerMm2',
    'sqrt(heat * (beta + 20) * conductivity / rho20) / 10^6',
    Math.sqrt((heat * (beta + 20) * share) / rho20) / 1e6,
    { source: 'adiabaticFormula' },
  );
  const ratio = Math.max(1, (end + beta) / (start + beta));
  const expression = 'K * sqrt(log(max(1, (Tlimit + beta) / (Tstart + beta))))';
  return rec.step('k', 'rootA2sPerMm2', expression, metal * Math.sqrt(Math.log(ratio)), { source: 'adiabaticFormula' });
}

/**
 * Adiabatic constant k of a metal between two temperatures, A s^0.5 / mm2: k = K sqrt(ln((end + beta)/(start + beta))),
 * K from the metal's heat, resistivity and beta (225.7 copper, 148.1 aluminium; the standard prints 226 and 148).
 * 0 where it starts at the end or above. Good for up to about 5 s; longer, heat is shed and it errs on the safe side.
 * Source: IEC 60949, IEC 60364-4-43. Copper, 70 to 160 degC: 114.8 (printed: 115).
 */
export function adiabaticK(material: Material, startC: number, endC: number): number {
  return recordK(material, startC, endC, NO_WHY);
}

/** Area that stands a current for a time, mm2: I sqrt(t) / k. 200 A for 0.4 s with k 115: 1.1 mm2 (IEC 60364-4-43 434.5.2). */
export function areaWithstandingMm2(currentA: number, seconds: number, k: number): number {
  return (currentA * Math.sqrt(seconds)) / k;
}

/** Records 'I2tDamage', A2s, and all that it rests on: 'r20', 'Smetal', 'k'. */
export function recordDamageI2t(cable: Cable, startC: number, rec: Recorder, about: Given = {}): number {
  const r20 = recordR20(cable.gauge, cable.material, rec);
  const area = recordMetalArea(cable, r20, rec);
  const k = recordK(cable.material, startC, shortLimitC(cable.insulationC), rec, about);
  return rec.step('I2tDamage', 'A2s', 'k ^ 2 * Smetal ^ 2', (k * area) ** 2, { source: 'adiabaticFormula' });
}

/**
 * Let-through that brings the conductor to the short-circuit limit of its insulation, A^2 s: k^2 S^2, S the metal that
 * its resistance proves. For times up to 5 s. Source: IEC 60364-4-43.
 * 'awg:4', copper, 105 degC, started at 60 degC: (122.0 x 21.15)^2 = 6.66e6.
 */
export function damageI2tA2s(cable: Cable, startC: number): number {
  return recordDamageI2t(cable, startC, NO_WHY);
}

/** Why of `damageI2tA2s`; the result is 'I2tDamage'. */
export function damageI2tWhy(cable: Cable, startC: number, about: Given = {}): Why {
  const builder = whyBuilder();
  recordDamageI2t(cable, startC, builder, about);
  return builder.done('I2tDamage');
}
