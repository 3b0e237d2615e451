import type { GaugeId } from '../calc/conductor/gauge.ts';
import { type Warming, warmedC } from '../calc/conductor/heating.ts';
import { insulationOf, type Model } from './model.ts';
import { perCircuit } from './perModel.ts';
import { ambientC, type MarkedZone } from './surroundings.ts';
import { wireOf } from './wire.ts';

/** A stretch of a cable at a size: all that decides its temperature and resistance but the current and the air. */
interface SizedStretch extends Warming {
  readonly zone: MarkedZone;
  /** Resistance at 20 degC, and what each degree adds: it is linear in temperature; ohm, ohm per K. */
  readonly ohm20: number;
  readonly ohmPerK: number;
}

/** Stands in for a size that nothing decides: such a cable carries nothing. */
export const ANY_SIZE = 'sae:4/0' as GaugeId;

const BASE_C = 20;

const tables = perCircuit((circuit) => circuit.cables.map(() => new Map<GaugeId, readonly SizedStretch[]>()));

function stretchesAt({ circuit }: Model, index: number, size: GaugeId): readonly SizedStretch[] {
  const table = tables(circuit)[index];
  const before = table?.get(size);
  if (before !== undefined) return before;
  const cable = circuit.cables[index];
  if (cable === undefined) return [];
  const { warming, ohmPerM20, ohmPerMK } = wireOf(cable, size);
  const sized = cable.stretches.map(({ zone, lengthM }) => ({
    zone,
    sharePerA2: warming.sharePerA2,
    betaC: warming.betaC,
    ohm20: lengthM * ohmPerM20,
    ohmPerK: lengthM * ohmPerMK,
  }));
  table?.set(size, sized);
  return sized;
}

/** Stands for a conductor that finds no temperature to settle at, so that its drop is at least this great; degC. */
export const RUNAWAY_C = 250;

/** Temperature each stretch of a cable settles at under a current held, degC; null where it settles at none. */
export const settledC = (model: Model, index: number, size: GaugeId, heatingA: number): (number | null)[] =>
  stretchesAt(model, index, size).map((stretch) => warmedC(heatingA, stretch, ambientC(model.settings, stretch.zone)));

/** Resistance of a cable's conductor with its stretches at those temperatures, ohm. */
export function conductorOhm(model: Model, index: number, size: GaugeId, stretchC: readonly (number | null)[]): number {
  let ohm = 0;
  for (const [place, { ohm20, ohmPerK }] of stretchesAt(model, index, size).entries()) {
    ohm += ohm20 + ohmPerK * ((stretchC[place] ?? RUNAWAY_C) - BASE_C);
  }
  return ohm;
}

/**
 * By cable, the conductor's resistance at full currents, ohm, each of which heats by its share; without sign. The list
 * is the same one each time: who keeps it longer copies it.
 */
export type OhmsAt = (amps: ArrayLike<number>, heatingShare: ArrayLike<number>) => readonly number[];

/** The same for every cable of the circuit at the sizes given, each at the temperature that its current holds. */
export function conductorOhms(model: Model, sizes: readonly GaugeId[]): OhmsAt {
  const stretches = model.circuit.cables.map((_, index) =>
    stretchesAt(model, index, sizes[index] ?? ANY_SIZE).map(({ zone, sharePerA2, betaC, ohm20, ohmPerK }) => ({
      sharePerA2,
      betaC,
      ohm20,
      ohmPerK,
      airC: ambientC(model.settings, zone),
    })),
  );
  const ohms = stretches.map(() => 0);
  return (amps, heatingShare) => {
    let index = 0;
    for (const along of stretches) {
      const current = (amps[index] ?? 0) * (heatingShare[index] ?? 1);
      let ohm = 0;
      for (const stretch of along) {
        const { ohm20, ohmPerK, airC } = stretch;
        ohm += ohm20 + ohmPerK * ((warmedC(current, stretch, airC) ?? RUNAWAY_C) - BASE_C);
      }
      ohms[index] = ohm;
      index += 1;
    }
    return ohms;
  };
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
