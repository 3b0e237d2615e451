import { HEAT_J_PER_M3_K, heatSource, MELTING_C } from '../tables/adiabatic.ts';
import { TABLE5_AMBIENT_C } from '../tables/ampacity.ts';
import { COPPER_RHO20_OHM_M, MATERIAL_FIGURES } from '../tables/materials.ts';
import { cited, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';
import { gauge } from './gauge.ts';
import { recordR20, STRANDING } from './resistance.ts';
import { type Cable, tableCurrentA } from './tableCurrent.ts';

/** One metre of cable as one lump: what it stores, what it sheds, and how its resistance rises. */
export interface Thermal {
  /** Heat stored per kelvin, J/(m K): of the metal alone. */
  readonly heatJPerMK: number;
  /** Heat shed per kelvin above the air, W/(m K). */
  readonly lossWPerMK: number;
  /** Resistance per metre at 20 degC. */
  readonly ohmPerM20: number;
  readonly betaC: number;
  readonly meltingC: number;
}

type Wire = Pick<Cable, 'gauge' | 'material'>;

/** Records 'Smetal', mm2: the least metal that the largest resistance of its size proves. Needs 'r20' before it. */
export function recordMetalArea(cable: Wire, r20: number, rec: Recorder): number {
  const { system, areaMm2 } = gauge(cable.gauge);
  if (system !== 'mm2') return rec.step('Smetal', 'mm2', 'S', areaMm2);
  const rho20 = rec.input('rho20', 'ohmM', COPPER_RHO20_OHM_M, cited('nbsHandbook100'));
  const stranding = rec.input('stranding', '1', STRANDING, cited('strandingLay'));
  const { conductivity } = MATERIAL_FIGURES[cable.material];
  const ofCopper = cable.material === 'copper' ? 'r20' : 'r20Copper';
  const area = (stranding * rho20 * 1e6) / (r20 * conductivity);
  return rec.step('Smetal', 'mm2', `stranding * rho20 * 10^6 / ${ofCopper}`, area, { source: 'metalByResistance' });
}

/** Records 'Cm' and 'Gm', and all that they rest on: 'I30', 'Tr', 'T0', 'beta', 'r20', 'Smetal'. */
export function recordThermal(cable: Cable, rec: Recorder): Thermal {
  const at30 = tableCurrentA(cable, rec);
  const { betaC, betaSource } = MATERIAL_FIGURES[cable.material];
  const rating = rec.input('Tr', 'degC', cable.insulationC);
  const base = rec.input('T0', 'degC', TABLE5_AMBIENT_C, cited('cfr183425Ambient'));
  const beta = rec.input('beta', 'degC', betaC, cited(betaSource));
  const r20 = recordR20(cable.gauge, cable.material, rec);
  const area = recordMetalArea(cable, r20, rec);
  const heat = rec.input('heat', 'jPerM3K', HEAT_J_PER_M3_K[cable.material], cited(heatSource(cable.material)));
  const stranding = rec.input('stranding', '1', STRANDING, cited('strandingLay'));
  const heatJPerMK = rec.step('Cm', 'jPerMK', 'stranding * heat * Smetal / 10^6', (stranding * heat * area) / 1e6, {
    source: 'shortHeating',
  });
  const shed = (at30 ** 2 * r20 * (beta + rating)) / (beta + 20) / (rating - base);
  const expression = 'I30 ^ 2 * r20 * (beta + Tr) / (beta + 20) / (Tr - T0)';
  const lossWPerMK = rec.step('Gm', 'wPerMK', expression, shed, { source: 'lumpedHeating' });
  return { heatJPerMK, lossWPerMK, ohmPerM20: r20, betaC, meltingC: MELTING_C[cable.material] };
}

/**
 * The cable as one lump. Heat is stored in the metal alone: the insulation's own heat is left out, so a short is told
 * a little too hot, never too cool. It sheds what the table's current makes at its class temperature in 30 degC air.
 * Of a metric size only as much metal is counted as its largest resistance proves.
 * Sources: IEC 60949, 33 CFR 183.425 Table 5. 'awg:4', copper, 105 degC: 74.4 J/(m K) and 0.379 W/(m K).
 */
export function thermalOf(cable: Cable): Thermal {
  return recordThermal(cable, NO_WHY);
}

/** Why of what `thermalOf` sheds and stores; the result is 'Cm', J/(m K). */
export function thermalWhy(cable: Cable): Why {
  const builder = whyBuilder();
  recordThermal(cable, builder);
  return builder.done('Cm');
}

/**
 * Metal of one conductor that its largest resistance proves, mm2: the area of an AWG or SAE size, less than the nominal
 * area of a metric one. For k^2 S^2. 'mm2:25', copper: 22.5; 'awg:4': 21.15.
 */
export function metalAreaMm2(cable: Wire): number {
  return recordMetalArea(cable, recordR20(cable.gauge, cable.material, NO_WHY), NO_WHY);
}
