import { class5OhmPerM } from '../tables/iec60228.ts';
import { COPPER_RHO20_OHM_M, MATERIAL_FIGURES, type Material } from '../tables/materials.ts';
import { type Abouts, cited, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';
import { type GaugeId, gauge } from './gauge.ts';

/** Strands lie in a helix, so each is longer than the cable: NEC Chapter 9 Table 8 against solid copper. */
export const STRANDING = 1.02;

function copperAt20(gaugeId: GaugeId, symbol: string, rec: Recorder): number {
  const { system, areaMm2, areaSource } = gauge(gaugeId);
  if (system === 'mm2') return rec.input(symbol, 'ohmPerM', class5OhmPerM(areaMm2), cited('iec60228'));
  const rho20 = rec.input('rho20', 'ohmM', COPPER_RHO20_OHM_M, cited('nbsHandbook100'));
  const stranding = rec.input('stranding', '1', STRANDING, cited('strandingLay'));
  const area = rec.input('S', 'mm2', areaMm2, cited(areaSource));
  return rec.step(symbol, 'ohmPerM', 'stranding * rho20 / (S / 10^6)', (stranding * rho20) / (area / 1e6));
}

/** Records 'r20', the resistance per metre at 20 degC, and for other metals than copper 'r20Copper' before it. */
export function recordR20(gaugeId: GaugeId, material: Material, rec: Recorder): number {
  if (material === 'copper') return copperAt20(gaugeId, 'r20', rec);
  const copper = copperAt20(gaugeId, 'r20Copper', rec);
  const figures = MATERIAL_FIGURES[material];
  const conductivity = rec.input('conductivity', '1', figures.conductivity, cited(figures.conductivitySource));
  return rec.step('r20', 'ohmPerM', 'r20Copper / conductivity', copper / conductivity);
}

function compute(
  gaugeId: GaugeId,
  material: Material,
  conductorC: number,
  rec: Recorder,
  about: Abouts<'conductorC'> = {},
): number {
  const { betaC, betaSource } = MATERIAL_FIGURES[material];
  const r20 = recordR20(gaugeId, material, rec);
  const beta = rec.input('beta', 'degC', betaC, cited(betaSource));
  const hot = rec.input('T', 'degC', conductorC, about.conductorC);
  return rec.step('r', 'ohmPerM', 'r20 * (beta + T) / (beta + 20)', (r20 * (beta + hot)) / (beta + 20));
}

/**
 * Resistance of one metre of conductor, ohm per m, at the conductor's own temperature.
 * AWG and SAE sizes: 1.02 rho20 / area; metric: the IEC 60228 class 5 maximum; other materials by conductivity.
 * Linear in temperature, good from -40 to 250 degC. Sources: NBS Handbook 100, ASTM B258, SAE J1127, IEC 60228.
 * 'awg:4', copper, 75 degC gives 0.001011 (NEC Chapter 9 Table 8: 0.308 ohm per 1000 ft = 0.001010).
 */
export function resistancePerMOhm(gaugeId: GaugeId, material: Material, conductorC: number): number {
  return compute(gaugeId, material, conductorC, NO_WHY);
}

/** Why of `resistancePerMOhm`; the result is 'r'. */
export function resistanceWhy(
  gaugeId: GaugeId,
  material: Material,
  conductorC: number,
  about: Abouts<'conductorC'> = {},
): Why {
  const builder = whyBuilder();
  compute(gaugeId, material, conductorC, builder, about);
  return builder.done('r');
}
