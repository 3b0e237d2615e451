import type { EngineSpeed } from '../../calc/supply/alternator.ts';
import type { FittingOf } from '../../plan/schema.ts';
import type { SupplyAnswer } from '../answer.ts';
import { amplifierOf } from '../circuit.ts';
import type { Facts } from '../facts.ts';
import { fullPoint } from '../terminal.ts';
import type { WhyBook } from '../whys/lazy.ts';
import { alternatorWhy, deficitWhy, meanWhy, playWhy } from '../whys/supply.ts';
import { alternatorsA } from './point.ts';
import { lowestPostsV, supplyOf } from './supply.ts';

const SECONDS = 60;

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** What the answer says of batteries and alternators. */
export function tellSupply(facts: Facts, book: WhyBook): SupplyAnswer {
  const { circuit } = facts.model;
  const supply = supplyOf(facts);
  const point = (speed: EngineSpeed) => (circuit.alternators.length === 0 ? null : fullPoint(facts, speed));
  const [idle, cruise] = [point('idle'), point('cruise')];
  const hotA = { idle: alternatorsA(facts, 'idle'), cruise: alternatorsA(facts, 'cruise') };
  const isSaturated = (of: typeof idle, index: number): boolean | null =>
    of?.carried === true ? of.alternators[index]?.state === 'saturated' : null;
  const fullA = (state: 'rest' | 'charging', load: number): number =>
    facts.operating?.states.find((one) => one.state === state)?.loadAmps[load] ?? 0;
  const mean = (
    amplifier: FittingOf<'amplifier'>,
    load: number,
    state: 'rest' | 'charging',
    meanA: number | undefined,
  ): string | null =>
    meanA === undefined || meanA === 0
      ? null
      : book.file(`mean-${state}:${amplifier.id}`, () => meanWhy(facts, amplifier, fullA(state, load)));
  const deficit = (speed: EngineSpeed): string | null => {
    const meansA = supply?.balance?.[speed].meansA;
    return meansA === undefined ? null : book.file(`deficit:${speed}`, () => deficitWhy(facts, speed, meansA));
  };
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
              whyMeanOff: mean(amplifier, index, 'rest', supply?.offA?.[index]),
              whyMeanRunning: mean(amplifier, index, 'charging', supply?.runningA[index]),
            },
          ];
    }),
    meanOffA: supply?.offA == null ? null : total(supply.offA),
    meanRunningA: supply === null ? null : total(supply.runningA),
    alternators: circuit.alternators.map((alternator, index) => ({
      fittingId: alternator.fitting.id,
      idleOutA: idle?.carried === true ? (idle.alternators[index]?.amps ?? null) : null,
      cruiseOutA: cruise?.carried === true ? (cruise.alternators[index]?.amps ?? null) : null,
      idleHotA: hotA.idle[index] ?? null,
      cruiseHotA: hotA.cruise[index] ?? null,
      saturatedIdle: isSaturated(idle, index),
      saturatedCruise: isSaturated(cruise, index),
      whyIdleHot: book.file(`alternator-idle:${alternator.fitting.id}`, () => alternatorWhy(alternator, 'idle')),
      whyCruiseHot: book.file(`alternator-cruise:${alternator.fitting.id}`, () => alternatorWhy(alternator, 'cruise')),
    })),
    deficitIdleA: supply?.balance?.idle.deficitA ?? null,
    deficitCruiseA: supply?.balance?.cruise.deficitA ?? null,
    whyDeficitIdle: deficit('idle'),
    whyDeficitCruise: deficit('cruise'),
    groups: (supply?.groups ?? []).map(({ sources, meanA, stores, playS }) => {
      const fittingIds = sources.flatMap((source) => circuit.sources[source]?.fitting.id ?? []);
      return {
        fittingIds,
        meanA,
        minutesOff: playS === null ? null : playS / SECONDS,
        whyPlay:
          playS === null ? null : book.file(`play:${fittingIds[0] ?? ''}`, () => playWhy(facts, sources, stores)),
      };
    }),
    postsV: {
      off: lowestPostsV(facts, 'off'),
      idle: lowestPostsV(facts, 'idle'),
      cruise: lowestPostsV(facts, 'cruise'),
    },
  };
}
