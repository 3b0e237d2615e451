/** What a search over sizes is given, and what it gives back. */
import type { GaugeId } from '../../calc/conductor/gauge.ts';
import type { Material } from '../../calc/tables/materials.ts';
import { conductsLess } from '../grounds.ts';
import type { LotSizes } from './bounds.ts';
import type { Criterion } from './trial.ts';

/** A ground may not conduct less than a feed; the feed is a searched lot, or of a size that is decided. */
export interface AtLeast {
  readonly ground: number;
  readonly feed: number | GaugeId;
  readonly groundMaterial: Material;
  readonly feedMaterial: Material;
}

export interface Problem {
  readonly lots: readonly LotSizes[];
  /** By load: what the least drop of the searched cables may reach, V; Infinity where nothing is asked. */
  readonly budgetV: readonly number[];
  readonly atLeast: readonly AtLeast[];
  /** The whole rule book on one set of sizes: one size for each lot. */
  readonly trial: (sizes: readonly GaugeId[]) => Outcome;
  /** Sets of sizes it may be asked about. */
  readonly mostTrials: number;
}

export interface Outcome {
  readonly accepted: boolean;
  /** By load whose drop is too great: by how much, V. */
  readonly overV: ReadonlyMap<number, number>;
  /** By lot at fault of itself: the rule that it breaks. */
  readonly atFault: ReadonlyMap<number, Criterion>;
}

export interface Found {
  readonly sizes: readonly GaugeId[];
  /** Every cheaper set was ruled out. */
  readonly proven: boolean;
}

/** Sizes of a lot not yet ruled out, as indices. */
export const openSizes = ({ breaks }: LotSizes): number[] => [...breaks.keys()].filter((size) => breaks[size] === null);

export const sizesAt = (lots: readonly LotSizes[], picks: readonly number[]): GaugeId[] =>
  lots.flatMap((lot, index) => lot.sizes[picks[index] ?? -1] ?? []);

/** Whether no ground conducts less than its feed, as far as both are decided. `picks`: by lot, undefined for one still open. */
export function groundsHold(
  { lots, atLeast }: Pick<Problem, 'lots' | 'atLeast'>,
  picks: readonly (number | undefined)[],
): boolean {
  const sizeAt = (lot: number): GaugeId | undefined => lots[lot]?.sizes[picks[lot] ?? -1];
  return atLeast.every(({ ground, feed, groundMaterial, feedMaterial }) => {
    const [groundSize, feedSize] = [sizeAt(ground), typeof feed === 'number' ? sizeAt(feed) : feed];
    if (groundSize === undefined || feedSize === undefined) return true;
    return !conductsLess({ size: groundSize, material: groundMaterial }, { size: feedSize, material: feedMaterial });
  });
}
