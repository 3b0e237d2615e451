import { type Abouts, type Recorder, type Why, whyBuilder, whyValue } from '../why.ts';
import type { Cable } from './tableCurrent.ts';
import { recordThermal, type Thermal, thermalOf } from './thermal.ts';

/**
 * The conductor's temperature through time under a constant current, with one lump of heat per metre:
 *
 *     C dT/dt = I^2 r20 (beta + T) / (beta + 20) - G (T - Ta)
 *
 * This is linear in T: dT/dt = s - lambda (T - Tstart), where s is the rise at the start and lambda the rate at which
 * it dies out. lambda > 0: a steady state; 0: a straight line for ever; < 0: it grows and no steady state exists
 * (above about 2.1 times the table's current). One formula serves all three: T = Tstart + s t phi(lambda t).
 */
export interface Surroundings {
  /** The conductor's temperature when the current sets in, degC. */
  readonly startC: number;
  /** The air round the cable, degC. */
  readonly ambientC: number;
}

type Given = Abouts<'currentA' | 'seconds' | 'targetC' | 'startC' | 'ambientC' | 'insulationC'>;

/** (1 - e^-x) / x, which is 1 at 0: growth (x < 0), straight line and decay without a seam. */
const phi = (x: number): number => (x === 0 ? 1 : -Math.expm1(-x) / x);

/** -ln(1 - y) / y, the inverse of phi in its own terms; 1 at 0. */
const psi = (y: number): number => (y === 0 ? 1 : -Math.log1p(-y) / y);

interface Course {
  /** Rise of temperature at the start, K/s. */
  readonly risePerS: number;
  /** Rate at which the rise dies out, 1/s; negative where it grows. */
  readonly decayPerS: number;
}

/** Heat made per kelvin above where the resistance would end, W/(m K). */
const madePerK = ({ ohmPerM20, betaC }: Thermal, currentA: number): number =>
  (currentA ** 2 * ohmPerM20) / (betaC + 20);

const decayOf = (thermal: Thermal, currentA: number): number =>
  (thermal.lossWPerMK - madePerK(thermal, currentA)) / thermal.heatJPerMK;

function courseOf(thermal: Thermal, currentA: number, { startC, ambientC }: Surroundings): Course {
  const { heatJPerMK, lossWPerMK, betaC } = thermal;
  const made = madePerK(thermal, currentA) * (betaC + startC);
  return {
    risePerS: (made - lossWPerMK * (startC - ambientC)) / heatJPerMK,
    decayPerS: decayOf(thermal, currentA),
  };
}

/**
 * Temperature of the conductor `seconds` after the current set in, degC; what it tends to for Infinity seconds.
 * Never above the metal's melting point: there the conductor is gone and the figure stands for 'melts'.
 * Good for any current >= 0 and time >= 0. For short times it is the adiabatic formula I^2 t = k^2 S^2.
 * Sources: IEC 60949 with the heat balance of 33 CFR 183.425 Table 5 (derived).
 * 'awg:4', copper, 105 degC, 1000 A for 1 s from 50 degC in 50 degC: 62.7 degC (adiabatic: 62.8).
 */
export function temperatureAfterC(thermal: Thermal, currentA: number, seconds: number, at: Surroundings): number {
  const { risePerS, decayPerS } = courseOf(thermal, currentA, at);
  const endless = decayPerS > 0 ? at.startC + risePerS / decayPerS : Number.POSITIVE_INFINITY;
  const reached =
    seconds === Number.POSITIVE_INFINITY ? endless : at.startC + risePerS * seconds * phi(decayPerS * seconds);
  return Math.min(reached, thermal.meltingC);
}

/**
 * Seconds until the conductor reaches that temperature: 0 if it is there at the start, Infinity if it never gets there.
 * The inverse of `temperatureAfterC`. 'awg:4', copper, 105 degC, 1000 A from 50 degC in 50 degC to 160 degC: 7.6 s.
 */
export function secondsToReach(thermal: Thermal, currentA: number, targetC: number, at: Surroundings): number {
  const rise = targetC - at.startC;
  if (rise <= 0) return 0;
  const { risePerS, decayPerS } = courseOf(thermal, currentA, at);
  if (risePerS <= 0) return Number.POSITIVE_INFINITY;
  const share = (decayPerS * rise) / risePerS;
  return share >= 1 ? Number.POSITIVE_INFINITY : (rise / risePerS) * psi(share);
}

/** Steps of the search below this, as an exponent of growth, are rounding. */
const CLOSE = 1e-13;

/**
 * Current that brings the conductor to that temperature in just that time, A; 0 where it is as hot from the start or the
 * air brings it there. The inverse of `secondsToReach` in the current, for a time above 0.
 * 'awg:4', copper, 105 degC, from 50 degC in 50 degC to 160 degC in 7.6 s: 1000 A.
 *
 * Counted from where the resistance would end, the temperature is u = u0 e^x + b (e^x - 1) / x: x is the exponent of
 * growth in that time, u0 the start, b what the air would bring. ln u rises with x and bends upward, so Newton's steps
 * from above fall towards the one x and never pass it; the exponent without any loss lies above.
 */
export function currentReachingA(thermal: Thermal, seconds: number, targetC: number, at: Surroundings): number {
  if (targetC <= at.startC) return 0;
  const { heatJPerMK, lossWPerMK, ohmPerM20, betaC } = thermal;
  const [start, target] = [betaC + at.startC, betaC + targetC];
  const brought = (lossWPerMK * (betaC + at.ambientC) * seconds) / heatJPerMK;
  let x = Math.log(target / start);
  let step: number;
  do {
    const growth = Math.exp(x);
    const mean = phi(-x);
    // the slope of the mean, 1/2 at 0
    const bend = Math.abs(x) < 1e-9 ? 1 / 2 : (growth - mean) / x;
    const reached = start * growth + brought * mean;
    step = (Math.log(reached / target) * reached) / (start * growth + brought * bend);
    x -= step;
  } while (step > CLOSE);
  const made = Math.max(0, lossWPerMK + (x * heatJPerMK) / seconds);
  return Math.sqrt((made * (betaC + 20)) / ohmPerM20);
}

/**
 * Time constant at that current, s: after it 63 % of the way to the steady state is done; null where there is no such
 * state. 'awg:4', copper, 105 degC: 197 s with next to no current, 252 s at its 160 A.
 */
export function timeConstantS(thermal: Thermal, currentA: number): number | null {
  const decay = decayOf(thermal, currentA);
  return decay > 0 ? 1 / decay : null;
}

function recordCourse(cable: Cable, currentA: number, at: Surroundings, rec: Recorder, about: Given): Course {
  const thermal = recordThermal(cable, rec);
  rec.input('I', 'A', currentA, about.currentA);
  rec.input('Tstart', 'degC', at.startC, about.startC);
  rec.input('Ta', 'degC', at.ambientC, about.ambientC);
  const course = courseOf(thermal, currentA, at);
  rec.step('Hm', 'wPerMK', 'I ^ 2 * r20 / (beta + 20)', madePerK(thermal, currentA));
  rec.step('riseRate', 'kPerS', '(Hm * (beta + Tstart) - Gm * (Tstart - Ta)) / Cm', course.risePerS, {
    source: 'shortHeating',
  });
  rec.step('decay', 'perS', '(Gm - Hm) / Cm', course.decayPerS);
  return course;
}

/**
 * Why of `temperatureAfterC`, for a time that ends; the result is 'Tend'. The time is a figure, or the why of one, such
 * as `slowestWhy` of the fuse that ends the short.
 */
export function temperatureAfterWhy(
  cable: Cable,
  currentA: number,
  time: number | Why,
  at: Surroundings,
  about: Given = {},
): Why {
  const builder = whyBuilder();
  const thermal = thermalOf(cable);
  const { decayPerS } = recordCourse(cable, currentA, at, builder, about);
  builder.input('Tmelt', 'degC', thermal.meltingC, { origin: 'memory' });
  let t = 't';
  if (typeof time === 'number') builder.input(t, 's', time, about.seconds);
  else t = builder.include(time, '_2');
  const seconds = typeof time === 'number' ? time : whyValue(time);
  const reached = decayPerS === 0 ? `Tstart + riseRate * ${t}` : `Tstart - riseRate * expm1(-decay * ${t}) / decay`;
  builder.step('Tend', 'degC', `min(${reached}, Tmelt)`, temperatureAfterC(thermal, currentA, seconds, at), {
    source: 'shortHeating',
  });
  return builder.done('Tend');
}

/** Why of `secondsToReach`; the result is 'tReach'. Null where it is reached never or from the start. */
export function secondsToReachWhy(
  cable: Cable,
  currentA: number,
  targetC: number,
  at: Surroundings,
  about: Given = {},
): Why | null {
  const seconds = secondsToReach(thermalOf(cable), currentA, targetC, at);
  if (seconds === 0 || seconds === Number.POSITIVE_INFINITY) return null;
  const builder = whyBuilder();
  const { decayPerS } = recordCourse(cable, currentA, at, builder, about);
  builder.input('Tlimit', 'degC', targetC, about.targetC);
  const expression =
    decayPerS === 0 ? '(Tlimit - Tstart) / riseRate' : '-log1p(-decay * (Tlimit - Tstart) / riseRate) / decay';
  builder.step('tReach', 's', expression, seconds, { source: 'shortHeating' });
  return builder.done('tReach');
}
