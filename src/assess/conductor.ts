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
export function settledC(model: Model, index: number, size: GaugeId, heatingA: number): (number | null)[] {
  const temperatures: (number | null)[] = [];
  for (const stretch of stretchesAt(model, index, size))
    temperatures.push(warmedC(heatingA, stretch, ambientC(model.settings, stretch.zone)));
  return temperatures;
}

/** Resistance of a cable's conductor with its stretches at those temperatures, ohm. */
export function conductorOhm(model: Model, index: number, size: GaugeId, stretchC: readonly number[]): number {
  let ohm = 0;
  for (const [place, { ohm20, ohmPerK }] of stretchesAt(model, index, size).entries())
    ohm += ohm20 + ohmPerK * ((stretchC[place] ?? RUNAWAY_C) - BASE_C);
  return ohm;
}

/**
 * Resistance of a cable's conductor at the temperature that a current held leaves it at, ohm; a stretch that settles at
 * none counts as `runawayC`.
 */
export function heldOhm(model: Model, index: number, size: GaugeId, heatingA: number, runawayC = RUNAWAY_C): number {
  let ohm = 0;
  for (const stretch of stretchesAt(model, index, size)) {
    const conductorC = warmedC(heatingA, stretch, ambientC(model.settings, stretch.zone)) ?? runawayC;
    ohm += stretch.ohm20 + stretch.ohmPerK * (conductorC - BASE_C);
  }
  return ohm;
}

/**
 * By cable, the conductor's resistance at full currents, ohm, each of which heats by its share; without sign. The list
 * is the same one each time: who keeps it longer copies it.
 */
export type OhmsAt = (amps: ArrayLike<number>, heatingShare: ArrayLike<number>) => Float64Array;

/** The stretches of all cables one after another, as bare numbers: they are gone through with every sweep of a net. */
interface AllStretches {
  /** By cable: where its stretches end, and those of the next begin. */
  readonly end: Int32Array;
  /** Five figures to a stretch: what `Warming` holds, the resistance at 20 degC and per K, and the air. */
  readonly figures: Float64Array;
}

const FIGURES = 5;

function allStretches(model: Model, sizes: readonly GaugeId[]): AllStretches {
  const { circuit, settings } = model;
  const along = circuit.cables.map((_, index) => stretchesAt(model, index, sizes[index] ?? ANY_SIZE));
  const end = new Int32Array(along.length);
  let count = 0;
  for (const [index, { length }] of along.entries()) {
    count += length;
    end[index] = count;
  }
  const figures = new Float64Array(FIGURES * count);
  let at = 0;
  for (const stretches of along) {
    for (const { zone, sharePerA2, betaC, ohm20, ohmPerK } of stretches) {
      figures[at] = sharePerA2;
      figures[at + 1] = betaC;
      figures[at + 2] = ohm20;
      figures[at + 3] = ohmPerK;
      figures[at + 4] = ambientC(settings, zone);
      at += FIGURES;
    }
  }
  return { end, figures };
}

/** Resistances of all cables into `ohms`. */
function writeOhms(
  { end, figures }: AllStretches,
  amps: ArrayLike<number>,
  heatingShare: ArrayLike<number>,
  ohms: Float64Array,
): void {
  // one for all stretches: an object for each would make rubbish by the megabyte
  const warming = { sharePerA2: 0, betaC: 0 };
  let stretch = 0;
  for (let cable = 0; cable < end.length; cable += 1) {
    const current = (amps[cable] ?? 0) * (heatingShare[cable] ?? 1);
    let ohm = 0;
    for (; stretch < (end[cable] ?? 0); stretch += 1) {
      const at = FIGURES * stretch;
      warming.sharePerA2 = figures[at] ?? 0;
      warming.betaC = figures[at + 1] ?? 0;
      const conductorC = warmedC(current, warming, figures[at + 4] ?? 0) ?? RUNAWAY_C;
      ohm += (figures[at + 2] ?? 0) + (figures[at + 3] ?? 0) * (conductorC - BASE_C);
    }
    ohms[cable] = ohm;
  }
}

/** The same for every cable of the circuit at the sizes given, each at the temperature that its current holds. */
export function conductorOhms(model: Model, sizes: readonly GaugeId[]): OhmsAt {
  const all = allStretches(model, sizes);
  const ohms = new Float64Array(all.end.length);
  return (amps, heatingShare) => {
    writeOhms(all, amps, heatingShare, ohms);
    return ohms;
  };
}

/**
 * Temperature of the hottest of a cable's stretches under a current held, degC, of those in zones that count; null where
 * one of them settles at none, -Infinity where none counts.
 */
export function hottestC(
  model: Model,
  index: number,
  size: GaugeId,
  heatingA: number,
  counts: (zone: MarkedZone) => boolean = () => true,
): number | null {
  let hottest = -Infinity;
  for (const stretch of stretchesAt(model, index, size)) {
    if (!counts(stretch.zone)) continue;
    const conductorC = warmedC(heatingA, stretch, ambientC(model.settings, stretch.zone));
    if (conductorC === null) return null;
    if (conductorC > hottest) hottest = conductorC;
  }
  return hottest;
}

/** Whether some stretch is hotter than the cable's class under a current held, or settles at no temperature. */
export function isTooHot(model: Model, index: number, size: GaugeId, heatingA: number): boolean {
  const cable = model.circuit.cables[index];
  if (cable === undefined) return false;
  const conductorC = hottestC(model, index, size, heatingA);
  return conductorC === null || exceeds(conductorC, insulationOf(cable));
}

/** Keeps a figure that equals its limit but for rounding within it. */
export const exceeds = (value: number, limit: number): boolean => value > limit * (1 + 1e-9) + 1e-12;
