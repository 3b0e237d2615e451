import { type Abouts, cited, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';

/** The discharge that a battery's capacity is stated for, h. */
const RATED_H = 20;
const SECONDS_PER_H = 3600;

export interface Store {
  /** Capacity at the 20 hour rate, Ah. */
  readonly capacityAh: number;
  /** Share of it that may be drawn, 0 to 1. */
  readonly usableShare: number;
  /** Peukert's exponent, 1 or more. */
  readonly peukert: number;
  /** Mean current drawn from it, A. */
  readonly currentA: number;
}

type Given = Abouts<keyof Store>;

function compute({ capacityAh, usableShare, peukert, currentA }: Store, rec: Recorder, about: Given = {}): number {
  const capacity = rec.input('C20', 'Ah', capacityAh, about.capacityAh);
  const hours = rec.input('hRated', 'h', RATED_H, cited('peukert'));
  const exponent = rec.input('kPeukert', '1', peukert, about.peukert);
  const usable = rec.input('kUsable', '1', usableShare, about.usableShare);
  const current = rec.input('Imean', 'A', currentA, about.currentA);
  const rate = Math.min(1, (capacity / (current * hours)) ** (exponent - 1));
  // slower than the stated rate the law would promise more than the stated capacity: that is not counted on
  rec.step('kRate', '1', 'min(1, (C20 / (Imean * hRated)) ^ (kPeukert - 1))', rate, { source: 'peukert' });
  const play = (SECONDS_PER_H * usable * rate * capacity) / current;
  return rec.step('tPlay', 's', `${SECONDS_PER_H} * kUsable * kRate * C20 / Imean`, play, { source: 'peukert' });
}

/** Shares a current out among batteries in proportion to their capacities, A. 30 A to 60 and 90 Ah: 12 and 18 A. */
export function sharedByCapacity(capacitiesAh: readonly number[], currentA: number): number[] {
  const total = capacitiesAh.reduce((sum, capacity) => sum + capacity, 0);
  return capacitiesAh.map((capacity) => (currentA * capacity) / total);
}

const drawn = (stores: readonly Store[]): Store[] => stores.filter(({ currentA }) => currentA > 0);

/**
 * How long the batteries last with the engine off, s: until the first of them has given its usable share; null when
 * nothing is drawn. t = usable x 20 h x (C20 / (20 h x I))^k, and never more than usable x C20 / I. Counting to the first
 * is cautious: what the others still hold is left out, and sharing by capacity makes the most of them.
 * Source: Peukert's law from the 20 hour rate (published); exponent 1.2 and half usable are our rules, section 8.
 * 60 Ah, half usable, 1.2, 20 A: 0.5 x 20 x (60 / 400)^1.2 = 1.026 h = 3695 s.
 */
export function playTimeS(stores: readonly Store[]): number | null {
  const times = drawn(stores).map((store) => compute(store, NO_WHY));
  return times.length === 0 ? null : Math.min(...times);
}

/** Why of `playTimeS`; the result is 'tPlay', or 'tFirst' of several batteries. Null when nothing is drawn. */
export function playTimeWhy(stores: readonly Store[], about: Given = {}): Why | null {
  const whys = drawn(stores).map((store) => {
    const builder = whyBuilder();
    compute(store, builder, about);
    return builder.done('tPlay');
  });
  const [only] = whys;
  if (only === undefined) return null;
  if (whys.length === 1) return only;
  const builder = whyBuilder();
  const names = whys.map((why, index) => builder.include(why, `_${index + 1}`));
  builder.step('tFirst', 's', `min(${names.join(', ')})`, playTimeS(stores) ?? Number.NaN, { source: 'feedrunRules' });
  return builder.done('tFirst');
}
