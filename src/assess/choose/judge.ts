/** What of a trial's breaches the choice of sizes answers for, and what no size in stock can mend. */
import { fixedGauge } from '../capacity.ts';
import { exceeds } from '../conductor.ts';
import { cableDropV, wayDrop } from '../drop.ts';
import type { Model } from '../model.ts';
import type { Operating } from '../operate.ts';
import type { LotSizes } from './bounds.ts';
import type { Outcome } from './problem.ts';
import { type Breach, type Criterion, dropLimitV, type Trial } from './trial.ts';

export interface Failing {
  readonly failing: readonly { readonly cables: readonly number[]; readonly binds: Criterion }[];
  /** Loads on the way of a failing lot. */
  readonly unknown: ReadonlySet<number>;
  /** Loads whose limit cables fixed by hand break by themselves: it then holds for the chosen cables alone. */
  readonly relaxed: ReadonlySet<number>;
}

export interface Judge extends Pick<Failing, 'unknown' | 'relaxed'> {
  faults(trial: Trial): Breach[];
}

/** What the auto cables alone lose on the way of a load, the worst of the states, V. */
function autoDropV(model: Model, operating: Operating, load: number): number {
  return Math.max(
    ...operating.states.map((point) => {
      const { feed, back } = wayDrop(model, point, load);
      return [...feed, ...back].reduce((volts, index) => {
        const cable = model.circuit.cables[index];
        return cable === undefined || fixedGauge(cable) !== null ? volts : volts + cableDropV(point, index);
      }, 0);
    }),
  );
}

const lotByCable = (lots: readonly LotSizes[]): ReadonlyMap<number, number> =>
  new Map(lots.flatMap(({ cables }, lot) => cables.map((cable) => [cable, lot] as const)));

/**
 * Sorts out what no size in stock can mend: lots of which every size is ruled out, and what still breaks with every
 * auto cable at its largest. A drop that cables fixed by hand make too great by themselves is no lot's failing: the
 * rest is sized to the limit as if they were none, and the finding on the drop stays.
 */
export function findFailing(model: Model, lots: readonly LotSizes[], { operating, breaches }: Trial): Failing {
  const binds = new Map<number, Criterion>();
  const bind = (lot: number, criterion: Criterion): void => {
    if (!binds.has(lot)) binds.set(lot, criterion);
  };
  for (const [lot, { breaks }] of lots.entries()) {
    const atLargest = breaks.at(-1);
    if (atLargest != null && breaks.every((found) => found !== null)) bind(lot, atLargest);
  }
  const lotOf = lotByCable(lots);
  const relaxed = new Set<number>();
  for (const { criterion, cable, load, feed } of breaches) {
    // a feed that is chosen too may yet be small enough for the largest ground
    if (feed !== undefined && lotOf.has(feed)) continue;
    if (cable !== null) {
      const lot = lotOf.get(cable);
      if (lot !== undefined) bind(lot, criterion);
    } else if (load !== null) {
      const autoV = operating.ok ? autoDropV(model, operating, load) : Infinity;
      if (!exceeds(autoV, dropLimitV(model))) relaxed.add(load);
      else for (const [lot, { loads }] of lots.entries()) if (loads.includes(load)) bind(lot, 'drop');
    }
  }
  const failing = [...binds].map(([lot, criterion]) => ({ cables: lots[lot]?.cables ?? [], binds: criterion }));
  const unknown = new Set([...binds.keys()].flatMap((lot) => lots[lot]?.loads ?? []));
  return { failing, unknown, relaxed };
}

/** Judges trials for these lots: breaches at cables fixed by hand, and on the way of unknown loads, are not theirs. */
export function judgeOf(model: Model, lots: readonly LotSizes[], { unknown, relaxed }: Failing): Judge {
  const mine = new Set(lots.flatMap(({ cables }) => cables));
  const isFault = ({ operating }: Trial, { criterion, cable, load }: Breach): boolean => {
    if (cable !== null) return mine.has(cable);
    if (load === null || unknown.has(load)) return false;
    if (criterion !== 'drop' || !relaxed.has(load) || !operating.ok) return true;
    return exceeds(autoDropV(model, operating, load), dropLimitV(model));
  };
  return { unknown, relaxed, faults: (trial) => trial.breaches.filter((breach) => isFault(trial, breach)) };
}

/** What a trial means for the search: whether it will do, and if not, by how much and whose fault. */
export function outcomeOf(model: Model, lots: readonly LotSizes[], judge: Judge): (trial: Trial) => Outcome {
  const lotOf = lotByCable(lots);
  return (trial) => {
    const faults = judge.faults(trial);
    const overV = new Map<number, number>();
    const atFault = new Map<number, Criterion>();
    for (const { criterion, cable, load } of faults) {
      const lot = lotOf.get(cable ?? -1);
      if (lot !== undefined) atFault.set(lot, criterion);
      else if (load !== null && trial.operating.ok) {
        const drops = trial.operating.states.map((point) => wayDrop(model, point, load));
        overV.set(load, Math.max(...drops.map(({ feedV, backV }) => feedV + backV)) - dropLimitV(model));
      }
    }
    return { accepted: faults.length === 0, overV, atFault };
  };
}
