import { HOLDER_FACTOR_POINTS, HOLDER_RANGE_C } from '../tables/holderTemperature.ts';
import { type Abouts, cited, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';

const [FIRST] = HOLDER_FACTOR_POINTS;

/** Records 'f', the factor at the holder's temperature. */
export function recordHolderFactor(holderC: number, rec: Recorder, about: Abouts<'holderC'> = {}): number {
  const published = cited('linkDataSheet');
  const holder = rec.input('Th', 'degC', holderC, about.holderC);
  const capped = Math.min(holder, HOLDER_RANGE_C.max);
  const above = HOLDER_FACTOR_POINTS.findIndex(([ambientC], index) => index > 0 && ambientC >= capped);
  const [lowC, lowFactor] = HOLDER_FACTOR_POINTS[above - 1] ?? FIRST;
  const [highC, highFactor] = HOLDER_FACTOR_POINTS[above] ?? FIRST;
  rec.input('T1', 'degC', lowC, published);
  rec.input('f1', '1', lowFactor, published);
  rec.input('T2', 'degC', highC, published);
  rec.input('f2', '1', highFactor, published);
  const at = rec.step('Tc', 'degC', 'min(max(Th, T1), T2)', Math.min(Math.max(holder, lowC), highC));
  const factor = lowFactor + ((highFactor - lowFactor) * (at - lowC)) / (highC - lowC);
  return rec.step('f', '1', 'f1 + (f2 - f1) * (Tc - T1) / (T2 - T1)', factor);
}

/**
 * Share of its rating a link carries for long with its holder at that temperature: 1 up to 20 degC, straight lines
 * between the published points, 0.55 from 125 degC on (beyond, nothing is published: see `holderTemperatureCovered`).
 * Source: one type E 40 A data sheet. 80 degC gives 0.775.
 */
export function holderFactor(holderC: number): number {
  return recordHolderFactor(holderC, NO_WHY);
}

/** Whether the published points speak for that temperature (-40 to 125 degC). */
export function holderTemperatureCovered(holderC: number): boolean {
  return holderC >= HOLDER_RANGE_C.min && holderC <= HOLDER_RANGE_C.max;
}

/** Why of `holderFactor`; the result is 'f'. */
export function holderFactorWhy(holderC: number, about: Abouts<'holderC'> = {}): Why {
  const builder = whyBuilder();
  recordHolderFactor(holderC, builder, about);
  return builder.done('f');
}
