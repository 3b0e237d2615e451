import { temperatureAfterC } from '../conductor/shortHeating.ts';
import { bandBreaksA, clearingBand, type FusePart } from '../fuse/timeCurrent.ts';
import { damageSeconds, type FaultConductor, sustainedA } from './damage.ts';

/** A point of a time-current chart. */
export interface CurvePoint {
  readonly currentA: number;
  readonly seconds: number;
}

export interface FuseCurves {
  /** The line it opens no sooner than, ascending in current; straight between its points on a log-log chart. */
  readonly fastest: readonly CurvePoint[];
  /** The line it opens no later than. */
  readonly slowest: readonly CurvePoint[];
}

/** A hair beside a break, so that both ends of a jump are drawn. */
const HAIR = 1e-9;

/**
 * The band of a fuse as two lines from `fromA` to `toA`, or null: no times are published for its family. Every line is
 * straight on a log-log chart, so its bends are all it needs. Currents it carries for good are left out.
 * Type E, 40 A, to 400 A: the slowest runs through (54, 1800), (80, 50), (140, 7), (240, 1), (400, 1).
 */
export function fuseCurves(of: FusePart, fromA: number, toA: number): FuseCurves | null {
  if (clearingBand(of, fromA) === null) return null;
  const breaks = bandBreaksA(of).filter((amps) => amps > fromA && amps < toA);
  const line = (side: 'fastestS' | 'slowestS', currents: readonly number[]): CurvePoint[] =>
    [fromA, ...currents, toA].flatMap((currentA) => {
      const seconds = clearingBand(of, currentA)?.[side] ?? null;
      return seconds === null ? [] : [{ currentA, seconds }];
    });
  // The fastest line falls at once past each of its points; the slowest only bends there.
  const jumps = breaks.flatMap((amps) => [amps, amps * (1 + HAIR)]);
  return { fastest: line('fastestS', jumps), slowest: line('slowestS', breaks) };
}

const STEPS = 80;
/** Just above the current it stands for good the time is near endless: the line starts a thousandth above. */
const START = 1.001;

/**
 * The line on which the conductor's insulation is damaged, ascending in current, from the current it just does not stand
 * for good up to `toA`; empty where `toA` is below that. It falls steeply at first and as 1 / I^2 at the end, with a
 * level stretch at 5 s where the limit changes. 'awg:4', copper, 105 degC, 50 degC: through (1000 A, 7.3 s).
 */
export function damageCurve(conductor: FaultConductor, toA: number): readonly CurvePoint[] {
  const fromA = Math.max(sustainedA(conductor) * START, 1e-3);
  if (!(toA > fromA)) return [];
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const currentA = step === STEPS ? toA : fromA * (toA / fromA) ** (step / STEPS);
    return { currentA, seconds: damageSeconds(conductor, currentA) };
  }).filter(({ seconds }) => seconds > 0);
}

export interface TemperaturePoint {
  readonly seconds: number;
  readonly conductorC: number;
}

const FROM_S = 1e-3;

/**
 * Temperature of the conductor through time at one current, on a logarithmic time axis from 1 ms to `toS` (above 1 ms).
 * 'awg:4', copper, 105 degC, 50 degC, 1000 A: ends at (5 s, 119 degC) for toS = 5.
 */
export function temperatureCurve(
  conductor: FaultConductor,
  currentA: number,
  toS: number,
): readonly TemperaturePoint[] {
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const seconds = FROM_S * (toS / FROM_S) ** (step / STEPS);
    return { seconds, conductorC: temperatureAfterC(conductor.thermal, currentA, seconds, conductor) };
  });
}
