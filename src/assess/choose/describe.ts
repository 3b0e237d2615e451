/** Why a lot has the size it has: what the next smaller one breaks, and the smallest of all that would do. */
import { type GaugeId, gauge, gaugesOf } from '../../calc/conductor/gauge.ts';
import { exceeds } from '../conductor.ts';
import type { Model } from '../model.ts';
import { once } from '../perModel.ts';
import { type LeastFigures, type LotSizes, lotSizes } from './bounds.ts';
import type { Judge } from './judge.ts';
import type { Breach, Criterion, Trial } from './trial.ts';

export interface LotChoice {
  readonly cables: readonly number[];
  readonly size: GaugeId;
  /** What the next smaller size in stock would break; 'smallest' when there is none. */
  readonly governs: Criterion | 'smallest' | null;
  /** Smallest size of the plan's system, stocked or not, that does it with the rest as chosen. */
  readonly smallest: GaugeId | null;
}

interface Chosen {
  readonly model: Model;
  readonly lots: readonly LotSizes[];
  readonly least: LeastFigures;
  readonly budgetV: readonly number[];
  /** By cable, as chosen. */
  readonly sizes: readonly GaugeId[];
  readonly stock: readonly GaugeId[];
  readonly judge: Judge;
  readonly tryOnce: (sizes: readonly GaugeId[]) => Trial;
}

const CRITERIA: readonly Criterion[] = ['drop', 'fuse', 'ampacity', 'heating', 'ground'];

const firstOf = (breaches: readonly Breach[]): Criterion | null =>
  CRITERIA.find((criterion) => breaches.some((breach) => breach.criterion === criterion)) ?? null;

/** The sets of sizes that differ from the chosen one in a single lot. */
export class Neighbours {
  readonly #chosen: Chosen;
  /** By load: the least drop of all lots as chosen, V. */
  readonly #spentV: readonly number[];

  constructor(chosen: Chosen) {
    this.#chosen = chosen;
    const spent = chosen.budgetV.map(() => 0);
    for (const lot of chosen.lots) {
      const pick = lot.sizes.indexOf(this.#sizeOf(lot));
      for (const { loads, dropV } of lot.parts) {
        for (const load of loads) spent[load] = (spent[load] ?? 0) + (dropV[pick] ?? 0);
      }
    }
    this.#spentV = spent;
  }

  #sizeOf({ cables }: LotSizes): GaugeId {
    return this.#chosen.sizes[cables[0] ?? -1] as GaugeId;
  }

  /** What one lot at another size breaks; found without an operating point where it can be. */
  #breaksAt(lot: LotSizes, size: GaugeId): Criterion | null {
    const { model, budgetV, least, sizes, judge, tryOnce } = this.#chosen;
    const pick = lot.sizes.indexOf(this.#sizeOf(lot));
    const other = lotSizes(model, lot, [size], least);
    const overspent = lot.parts.some(({ loads, dropV }, part) => {
      const more = (other.parts[part]?.dropV[0] ?? 0) - (dropV[pick] ?? 0);
      return loads.some((load) => exceeds((this.#spentV[load] ?? 0) + more, budgetV[load] ?? Infinity));
    });
    if (overspent) return 'drop';
    const [sure] = other.breaks;
    if (sure != null) return sure;
    const mine = new Set(lot.cables);
    return firstOf(judge.faults(tryOnce(sizes.map((at, cable) => (mine.has(cable) ? size : at)))));
  }

  /** What binds is worked out when it is first asked for: a finger that drags asks it of the feed alone. */
  describe(lot: LotSizes): LotChoice {
    const { stock } = this.#chosen;
    const size = this.#sizeOf(lot);
    const smaller = stock[stock.indexOf(size) - 1];
    const governs = once(() => (smaller === undefined ? 'smallest' : this.#breaksAt(lot, smaller)));
    const smallest = once(() => this.#smallest(lot, size, governs() === null ? undefined : smaller));
    return {
      cables: lot.cables,
      size,
      get governs() {
        return governs();
      },
      get smallest() {
        return smallest();
      },
    };
  }

  /**
   * Where no current has a choice of way: down from the size chosen, as far as the rules hold, and no size as small as
   * one that fails need be tried. Elsewhere a thinner one may hold where a thicker one fails: every one is tried.
   */
  #smallest(lot: LotSizes, size: GaugeId, fails: GaugeId | undefined): GaugeId | null {
    const { model } = this.#chosen;
    const all = gaugesOf(model.settings.sizeSystem);
    const enough = all.find((candidate) => gauge(candidate).areaMm2 >= gauge(size).areaMm2) ?? null;
    const thinner = all.filter((candidate) => gauge(candidate).areaMm2 < gauge(size).areaMm2);
    const holds = (candidate: GaugeId): boolean => this.#breaksAt(lot, candidate) === null;
    if (!model.ways.radial) return thinner.find(holds) ?? enough;
    const belowMm2 = fails === undefined ? 0 : gauge(fails).areaMm2;
    let smallest = enough;
    for (const candidate of thinner.toReversed()) {
      if (gauge(candidate).areaMm2 <= belowMm2 || !holds(candidate)) break;
      smallest = candidate;
    }
    return smallest;
  }
}
