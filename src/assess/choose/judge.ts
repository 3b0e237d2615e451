/** What of a trial's breaches the choice of sizes answers for, and what no size in stock can mend. */
import { fixedGauge } from '../capacity.ts';
import { exceeds } from '../conductor.ts';
import { cableDropV, wayDrop } from '../drop.ts';
import type { Model } from '../model.ts';
import type { Operating } from '../operate.ts';
import type { LotSizes } from './bounds.ts';
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
  const relaxed = new Set<number>();
  for (const { criterion, cable, load } of breaches) {
    if (cable !== null) {
      const lot = lots.findIndex(({ cables }) => cables.includes(cable));
      if (lot >= 0) bind(lot, criterion);
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
