import type { GaugeId } from '../calc/conductor/gauge.ts';
import { type HeatingCase, steadyTemperatureC } from '../calc/conductor/heating.ts';
import { resistancePerMOhm } from '../calc/conductor/resistance.ts';
import { cableOf, insulationOf, type Model } from './model.ts';
import { perModel } from './perModel.ts';
import { ambientC } from './surroundings.ts';

/** A stretch of a cable at a size, in its own air. */
interface SizedStretch extends HeatingCase {
  readonly lengthM: number;
}

const tables = perModel((model) => model.circuit.cables.map(() => new Map<GaugeId, readonly SizedStretch[]>()));

function stretchesAt(model: Model, index: number, size: GaugeId): readonly SizedStretch[] {
  const table = tables(model)[index];
  const before = table?.get(size);
  if (before !== undefined) return before;
  const cable = model.circuit.cables[index];
  const sized =
    cable === undefined
      ? []
      : cable.stretches.map(({ zone, lengthM }) => ({
          ...cableOf(cable, size),
          ambientC: ambientC(model.settings, zone),
          lengthM,
        }));
  table?.set(size, sized);
  return sized;
}

/** Stands for a conductor that finds no temperature to settle at, so that its drop is at least this great; degC. */
export const RUNAWAY_C = 250;

/** Temperature each stretch of a cable settles at under a current held, degC; null where it settles at none. */
export const settledC = (model: Model, index: number, size: GaugeId, heatingA: number): (number | null)[] =>
  stretchesAt(model, index, size).map((stretch) => steadyTemperatureC(heatingA, stretch));

/** Resistance of a cable's conductor with its stretches at those temperatures, ohm. */
export function conductorOhm(model: Model, index: number, size: GaugeId, stretchC: readonly (number | null)[]): number {
  let ohm = 0;
  for (const [place, { lengthM, material }] of stretchesAt(model, index, size).entries()) {
    ohm += lengthM * resistancePerMOhm(size, material, stretchC[place] ?? RUNAWAY_C);
  }
  return ohm;
}

/** Whether some stretch is hotter than the cable's class, or settles at no temperature. */
export function isTooHot(model: Model, index: number, stretchC: readonly (number | null)[]): boolean {
  const cable = model.circuit.cables[index];
  if (cable === undefined) return false;
  const classC = insulationOf(cable);
  return stretchC.some((conductorC) => conductorC === null || exceeds(conductorC, classC));
}

/** Keeps a figure that equals its limit but for rounding within it. */
export const exceeds = (value: number, limit: number): boolean => value > limit * (1 + 1e-9) + 1e-12;
