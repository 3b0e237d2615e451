import { temperatureAfterC, timeConstantS } from '../conductor/shortHeating.ts';
import { overloadLimitC } from '../tables/adiabatic.ts';
import { OPENING_MULTIPLE } from '../tables/fuseTimes.ts';
import { type Abouts, cited, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';
import { damageSeconds, type FaultConductor } from './damage.ts';

/** A fuse on the way of a partial short: it carries baseA + share x (the conductor's current). */
export interface SeeingFuse {
  readonly ratingA: number;
  /** What it carries of the conductor's current: 1 in the same line, less where another source helps. */
  readonly share: number;
  /** What it carries besides, A: other loads behind it. 0 is the worst case, with the music off. */
  readonly baseA: number;
}

export interface Unseen {
  /** The largest current in the conductor that no fuse need ever open for, A. */
  readonly currentA: number;
  /** The fuse that sets it, by place; null: the short cannot even draw that much. */
  readonly seenBy: number | null;
  /** Temperature the conductor settles at, degC; the melting point if `runsAway`. */
  readonly settledC: number;
  /** Rising resistance outruns cooling: there is no steady state, or only one above the melting point. */
  readonly runsAway: boolean;
  /** Class + 50 K. */
  readonly limitC: number;
  /** Until the insulation is damaged, s; Infinity: never. */
  readonly damageS: number;
  /** Until 95 % of the rise is done, s; Infinity where it runs away. */
  readonly settlesInS: number;
}

/**
 * The worst partial short that no fuse sees: the current just below 1.35 times the rating of the first fuse to notice,
 * at most what a dead short draws there. Throws RangeError on a fuse without a share in it.
 * Sources: ISO 8820 (1.35, memory), `shortHeating.ts`, ISO 6722-1 (memory).
 * 'awg:4', copper, 105 degC, in 50 degC behind 125 A: 168.75 A, settles at 143 degC against a limit of 155 degC.
 */
export function worstUnseen(conductor: FaultConductor, fuses: readonly SeeingFuse[], highestA: number): Unseen {
  let currentA = highestA;
  let seenBy: number | null = null;
  for (const [place, { ratingA, share, baseA }] of fuses.entries()) {
    if (!(share > 0)) throw new RangeError(`fault: fuse ${place} carries no share of it`);
    const least = Math.max(0, OPENING_MULTIPLE * ratingA - baseA) / share;
    if (least < currentA) [currentA, seenBy] = [least, place];
  }
  const { thermal, insulationC } = conductor;
  const settledC = temperatureAfterC(thermal, currentA, Number.POSITIVE_INFINITY, conductor);
  const constant = timeConstantS(thermal, currentA);
  return {
    currentA,
    seenBy,
    settledC,
    runsAway: settledC >= thermal.meltingC,
    limitC: overloadLimitC(insulationC),
    damageS: damageSeconds(conductor, currentA),
    settlesInS: constant === null ? Number.POSITIVE_INFINITY : constant * Math.log(20),
  };
}

function recordOverload(ratingA: number, ampacityA: number, rec: Recorder, about: Abouts<'ratingA' | 'ampacityA'>) {
  const rating = rec.input('In', 'A', ratingA, about.ratingA);
  const ampacity = rec.input('Iz', 'A', ampacityA, about.ampacityA);
  const multiple = rec.input('mOpen', '1', OPENING_MULTIPLE, cited('iso8820part3TimesMemory'));
  const conventional = rec.step('I2', 'A', 'mOpen * In', multiple * rating);
  return rec.step('kOverload', '1', 'I2 / Iz', conventional / ampacity, { source: 'iec60364part433' });
}

/**
 * Overload of a conductor behind its fuse: the current that is sure to open it over what the conductor carries for long.
 * Accepted up to 1.45. Source: IEC 60364-4-43 433.1 (memory). 125 A before 136 A: 1.24.
 */
export function overloadRatio(ratingA: number, ampacityA: number): number {
  return recordOverload(ratingA, ampacityA, NO_WHY, {});
}

/** Why of `overloadRatio`; the result is 'kOverload'. */
export function overloadWhy(ratingA: number, ampacityA: number, about: Abouts<'ratingA' | 'ampacityA'> = {}): Why {
  const builder = whyBuilder();
  recordOverload(ratingA, ampacityA, builder, about);
  return builder.done('kOverload');
}

/** Largest `overloadRatio` accepted. Source: IEC 60364-4-43 433.1; trust: memory. */
export const OVERLOAD_ACCEPTED = 1.45;
