import { TABLE5_AMBIENT_C } from '../tables/ampacity.ts';
import { MATERIAL_FIGURES } from '../tables/materials.ts';
import { type Abouts, cited, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';
import { type Cable, tableCurrentA } from './tableCurrent.ts';

export interface HeatingCase extends Cable {
  /** Real temperature of the air round the cable, degC. */
  readonly ambientC: number;
}

/** A cable's heat balance, for the inner loops: all of it that hangs on no current and no air. */
export interface Warming {
  /** Share of rising resistance in the balance at 1 A: 'q' of `steadyTemperatureWhy`, 1/A2. */
  readonly sharePerA2: number;
  /** Below zero, where the metal's resistance would end, degC. */
  readonly betaC: number;
}

/** The balance of a cable, good for any current. Copper of 105 degC and 100 A in 30 degC: 75 / 339.5 / 100^2 = 2.21e-5 per A2. */
export function warmingOf(of: Cable): Warming {
  const { betaC } = MATERIAL_FIGURES[of.material];
  const share = (of.insulationC - TABLE5_AMBIENT_C) / (betaC + of.insulationC);
  return { sharePerA2: share / tableCurrentA(of, NO_WHY) ** 2, betaC };
}

/** `steadyTemperatureC` of a balance worked out before. 0 A: the air's own temperature. */
export function warmedC(currentA: number, { sharePerA2, betaC }: Warming, ambientC: number): number | null {
  const share = sharePerA2 * currentA * currentA;
  return share >= 1 ? null : (ambientC + betaC * share) / (1 - share);
}

type Given = Abouts<'currentA' | 'insulationC' | 'ambientC'>;

/** Records the heat balance: 'q' is the share of rising resistance in it, and 'Tx' follows while q < 1. */
function compute(currentA: number, of: HeatingCase, rec: Recorder, about: Given = {}): number | null {
  const at30 = tableCurrentA(of, rec);
  const { betaC, betaSource } = MATERIAL_FIGURES[of.material];
  const current = rec.input('I', 'A', currentA, about.currentA);
  const rating = rec.input('Tr', 'degC', of.insulationC, about.insulationC);
  const ambient = rec.input('Ta', 'degC', of.ambientC, about.ambientC);
  const base = rec.input('T0', 'degC', TABLE5_AMBIENT_C, cited('cfr183425Ambient'));
  const beta = rec.input('beta', 'degC', betaC, cited(betaSource));
  const share = ((current / at30) ** 2 * (rating - base)) / (beta + rating);
  const q = rec.step('q', '1', '(I / I30) ^ 2 * (Tr - T0) / (beta + Tr)', share, { source: 'lumpedHeating' });
  if (q >= 1) return null;
  return rec.step('Tx', 'degC', '(Ta + beta * q) / (1 - q)', (ambient + beta * q) / (1 - q), {
    source: 'lumpedHeating',
  });
}

/**
 * Temperature the conductor settles at, degC, or null: rising resistance outruns cooling and there is no such state
 * (from about 2.1 times the table's current at 105 degC). It reaches the class exactly at the table's current in 30 degC.
 * I^2 = I30^2 (Tx-Ta)/(Tr-30) (beta+Tr)/(beta+Tx), solved for Tx. Source: derived from 33 CFR 183.425 Table 5.
 * 58.9 A in 'sae:1', copper, 105 degC, air at 80 degC gives 84.4 degC.
 */
export function steadyTemperatureC(currentA: number, of: HeatingCase): number | null {
  return compute(currentA, of, NO_WHY);
}

/** Why of `steadyTemperatureC`; the result is 'Tx', or 'q' (1 or more) where no steady state exists. */
export function steadyTemperatureWhy(currentA: number, of: HeatingCase, about: Given = {}): Why {
  const builder = whyBuilder();
  const steady = compute(currentA, of, builder, about);
  return builder.done(steady === null ? 'q' : 'Tx');
}
