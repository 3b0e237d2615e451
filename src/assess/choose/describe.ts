/** Why a lot has the size it has: what the next smaller one breaks, and the smallest of all that would do. */
import { type GaugeId, gauge, gaugesOf } from '../../calc/conductor/gauge.ts';
import { exceeds } from '../conductor.ts';
import type { Model } from '../model.ts';
import { type LeastFigures, type LotSizes, leastDropV, lotSizes } from './bounds.ts';
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
    for (const { cables } of chosen.lots) this.#addDropV(spent, cables, null, 1);
    this.#spentV = spent;
  }

  #addDropV(spent: number[], cables: readonly number[], size: GaugeId | null, sign: 1 | -1): void {
    const { model, sizes, least } = this.#chosen;
    for (const cable of cables) {
      const at = size ?? sizes[cable];
      if (at === undefined) continue;
      for (const [load, dropV] of leastDropV(model, cable, at, least).entries()) {
        spent[load] = (spent[load] ?? 0) + sign * dropV;
      }
    }
  }

  /** What one lot at another size breaks; found without an operating point where it can be. */
  #breaksAt(lot: LotSizes, size: GaugeId): Criterion | null {
    const { model, budgetV, least, sizes, judge, tryOnce } = this.#chosen;
    const spent = [...this.#spentV];
    this.#addDropV(spent, lot.cables, null, -1);
    this.#addDropV(spent, lot.cables, size, 1);
    if (lot.loads.some((load) => exceeds(spent[load] ?? 0, budgetV[load] ?? Infinity))) return 'drop';
    const [sure] = lotSizes(model, lot, [size], least).breaks;
    if (sure != null) return sure;
    const mine = new Set(lot.cables);
    return firstOf(judge.faults(tryOnce(sizes.map((at, cable) => (mine.has(cable) ? size : at)))));
  }

  describe(lot: LotSizes): LotChoice {
    const { sizes, stock } = this.#chosen;
    const size = sizes[lot.cables[0] ?? -1] as GaugeId;
    const smaller = stock[stock.indexOf(size) - 1];
    const governs = smaller === undefined ? 'smallest' : this.#breaksAt(lot, smaller);
    return {
      cables: lot.cables,
      size,
      governs,
      smallest: this.#smallest(lot, size, governs === null ? undefined : smaller),
    };
  }

  /** Down from the size chosen, as far as the rules hold; no size as small as one that fails need be tried. */
  #smallest(lot: LotSizes, size: GaugeId, fails: GaugeId | undefined): GaugeId | null {
    const belowMm2 = fails === undefined ? 0 : gauge(fails).areaMm2;
    const all = gaugesOf(this.#chosen.model.settings.sizeSystem);
    let smallest = all.find((candidate) => gauge(candidate).areaMm2 >= gauge(size).areaMm2) ?? null;
    const thinner = all.filter((candidate) => gauge(candidate).areaMm2 < gauge(size).areaMm2);
    for (const candidate of thinner.toReversed()) {
      if (gauge(candidate).areaMm2 <= belowMm2 || this.#breaksAt(lot, candidate) !== null) break;
      smallest = candidate;
    }
    return smallest;
  }
}
