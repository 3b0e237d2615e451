/** One set of sizes tried out: its operating point, and every rule on conductors that it breaks. */
import type { GaugeId } from '../../calc/conductor/gauge.ts';
import { cableAmpacityA } from '../capacity.ts';
import { exceeds, isTooHot } from '../conductor.ts';
import { wayDrop } from '../drop.ts';
import { conductsLess, groundPairs, type Metal } from '../grounds.ts';
import { limitsOf } from '../limits.ts';
import type { Model } from '../model.ts';
import { type CannotCarry, type OperateOptions, type Operating, operate } from '../operate.ts';
import { hotAtOverload } from '../overload.ts';
import { once } from '../perModel.ts';
import { heatingShareAt } from '../states.ts';

export type Criterion = 'drop' | 'fuse' | 'ampacity' | 'heating' | 'ground';

export interface Breach {
  readonly criterion: Criterion;
  /** The cable at fault; null for a drop, which is the whole way's. */
  readonly cable: number | null;
  /** The amplifier whose way loses too much, or whose feed a ground is smaller than. */
  readonly load: number | null;
  /** The feed that a ground conducts less than. */
  readonly feed?: number;
}

export interface Trial {
  readonly sizes: readonly GaugeId[];
  readonly operating: Operating | CannotCarry;
  /** By cable, A; empty where the loads cannot be carried. */
  readonly limits: readonly number[];
  readonly breaches: readonly Breach[];
}

export const dropLimitV = ({ settings }: Pick<Model, 'settings'>): number =>
  settings.dropLimit.value * settings.systemV;

/** What sizes are chosen for: a link's rating, or what it would have to carry where none held does. */
const capacitiesOf = ({ ratings, needs }: Operating): number[] =>
  ratings.map((rating, link) => rating ?? needs[link] ?? 0);

function cableBreaches(
  model: Model,
  operating: Operating,
  sizes: readonly GaugeId[],
  limits: readonly number[],
): Breach[] {
  const breaches: Breach[] = [];
  for (const [index, cable] of model.circuit.cables.entries()) {
    const size = sizes[index];
    if (size === undefined) continue;
    const breach = (criterion: Criterion) => breaches.push({ criterion, cable: index, load: null });
    const ampacityA = cableAmpacityA(model, cable, size);
    const limitA = limits[index] ?? 0;
    if (limitA !== Infinity && exceeds(limitA, ampacityA)) breach('fuse');
    const heatingA = (operating.fullA[index] ?? 0) * heatingShareAt(model, index);
    if (ampacityA === 0 || exceeds(heatingA, ampacityA)) breach('ampacity');
    // no state's current is greater, and no temperature higher; and each battery feeding alone counts too
    if (isTooHot(model, index, size, heatingA) || hotAtOverload(model, index, size, limitA) !== null) breach('heating');
  }
  return breaches;
}

function dropBreaches(model: Model, operating: Operating): Breach[] {
  const limitV = dropLimitV(model);
  return model.demands.flatMap((demand, load): Breach[] => {
    if (demand === null) return [];
    const over = operating.states.some((point) => {
      const { feedV, backV } = wayDrop(model, point, load);
      return exceeds(feedV + backV, limitV);
    });
    return over ? [{ criterion: 'drop', cable: null, load }] : [];
  });
}

function groundBreaches(model: Model, sizes: readonly (GaugeId | null)[]): Breach[] {
  const metalOf = (cable: number): Metal | null => {
    const [size, material] = [sizes[cable], model.circuit.cables[cable]?.conductor.material.value];
    return size == null || material === undefined ? null : { size, material };
  };
  return groundPairs(model).flatMap(({ ground, feed, load }): Breach[] => {
    const [of, than] = [metalOf(ground), metalOf(feed)];
    if (of === null || than === null || !conductsLess(of, than)) return [];
    return [{ criterion: 'ground', cable: ground, load, feed }];
  });
}

/** Tries a set of sizes out. Loads that cannot be carried count as too great a drop of every one of them. */
export function tryOut(model: Model, sizes: readonly GaugeId[], options: OperateOptions = {}): Trial {
  const operating = operate(model, sizes, options);
  if (!operating.ok) {
    const breaches = model.demands.flatMap((demand, load): Breach[] =>
      demand === null ? [] : [{ criterion: 'drop', cable: null, load }],
    );
    return { sizes, operating, limits: [], breaches };
  }
  const limits = once(() => limitsOf(model, capacitiesOf(operating)));
  const breaches = once(() => [
    ...dropBreaches(model, operating),
    ...cableBreaches(model, operating, sizes, limits()),
    ...groundBreaches(model, sizes),
  ]);
  return {
    sizes,
    operating,
    // asked for only where there is something to choose
    get limits() {
      return limits();
    },
    get breaches() {
      return breaches();
    },
  };
}
