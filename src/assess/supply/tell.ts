import type { EngineSpeed } from '../../calc/supply/alternator.ts';
import type { SupplyAnswer } from '../answer.ts';
import { amplifierOf } from '../circuit.ts';
import type { Facts } from '../facts.ts';
import { fullPoint } from '../terminal.ts';
import { alternatorsA } from './point.ts';
import { lowestPostsV, supplyOf } from './supply.ts';

const SECONDS = 60;

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** What the answer says of batteries and alternators. */
export function tellSupply(facts: Facts): SupplyAnswer {
  const { circuit } = facts.model;
  const supply = supplyOf(facts);
  const point = (speed: EngineSpeed) => (circuit.alternators.length === 0 ? null : fullPoint(facts, speed));
  const [idle, cruise] = [point('idle'), point('cruise')];
  const hotA = { idle: alternatorsA(facts, 'idle'), cruise: alternatorsA(facts, 'cruise') };
  const isSaturated = (of: typeof idle, index: number): boolean | null =>
    of?.carried === true ? of.alternators[index]?.state === 'saturated' : null;
  return {
    amplifiers: circuit.loads.flatMap((load, index) => {
      const amplifier = amplifierOf(load);
      return amplifier === null
        ? []
        : [
            {
              fittingId: amplifier.id,
              meanOffA: supply?.offA?.[index] ?? null,
              meanRunningA: supply?.runningA[index] ?? null,
            },
          ];
    }),
    meanOffA: supply?.offA == null ? null : total(supply.offA),
    meanRunningA: supply === null ? null : total(supply.runningA),
    alternators: circuit.alternators.map(({ fitting }, index) => ({
      fittingId: fitting.id,
      idleOutA: idle?.carried === true ? (idle.alternators[index]?.amps ?? null) : null,
      cruiseOutA: cruise?.carried === true ? (cruise.alternators[index]?.amps ?? null) : null,
      idleHotA: hotA.idle[index] ?? null,
      cruiseHotA: hotA.cruise[index] ?? null,
      saturatedIdle: isSaturated(idle, index),
      saturatedCruise: isSaturated(cruise, index),
    })),
    deficitIdleA: supply?.balance?.idle.deficitA ?? null,
    deficitCruiseA: supply?.balance?.cruise.deficitA ?? null,
    groups: (supply?.groups ?? []).map(({ sources, meanA, playS }) => ({
      fittingIds: sources.flatMap((source) => circuit.sources[source]?.fitting.id ?? []),
      meanA,
      minutesOff: playS === null ? null : playS / SECONDS,
    })),
    postsV: {
      off: lowestPostsV(facts, 'off'),
      idle: lowestPostsV(facts, 'idle'),
      cruise: lowestPostsV(facts, 'cruise'),
    },
  };
}
