import type { ShortAnswer } from '../answer.ts';
import type { Facts } from '../facts.ts';
import type { WhyBook } from '../whys/lazy.ts';
import { clearingWhy, conductorWhy, prospectiveWhy } from '../whys/short.ts';
import { type BothFaults, bothFaults, faultA, returnOf } from './net.ts';
import { type CableShort, shortsOf } from './shorts.ts';

/** JSON holds no endless time. */
const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** The same device once, with the widest of its currents: it may see a short from both ends. */
function fusesOf({ model }: Facts, { ends }: CableShort): ShortAnswer['fuses'] {
  const byLink = new Map<number, { lowestA: number; highestA: number }>();
  for (const { link, lowestA, highestA } of ends.flatMap(({ seeing }) => seeing)) {
    const before = byLink.get(link);
    byLink.set(link, {
      lowestA: Math.min(lowestA, before?.lowestA ?? lowestA),
      highestA: Math.max(highestA, before?.highestA ?? highestA),
    });
  }
  return [...byLink].flatMap(([link, span]) => {
    const device = model.circuit.links[link];
    return device === undefined ? [] : [{ fittingId: device.fitting.id, terminal: device.terminal, ...span }];
  });
}

/** Each source's part of the prospective current, where it is highest and at the end where it is lowest, A. */
function sharesOf(facts: Facts, both: BothFaults, short: CableShort): ShortAnswer['bySource'] {
  const { circuit } = facts.model;
  const { a = 0, b = 0 } = circuit.cables[short.cable] ?? {};
  const [only, ...others] = circuit.sources;
  if (only !== undefined && others.length === 0 && circuit.alternators.length === 0)
    return [{ fittingId: only.fitting.id, lowestA: short.lowestA, highestA: short.highestA }];
  const lowNode = short.lowestShare < 0.5 ? a : b;
  const lowestA = faultA(both.lowest, lowNode, both.returnOhm);
  const highestA = faultA(both.highest, short.highestNode, 0);
  return circuit.sources.map(({ fitting }, source) => ({
    fittingId: fitting.id,
    lowestA: (sourceShares(both, 'lowest', source)?.[lowNode] ?? 0) * lowestA,
    highestA: (sourceShares(both, 'highest', source)?.[short.highestNode] ?? 0) * highestA,
  }));
}

const shares = new WeakMap<BothFaults, Map<string, readonly number[] | null>>();

function sourceShares(both: BothFaults, extreme: 'lowest' | 'highest', source: number): readonly number[] | null {
  const known = shares.get(both) ?? new Map<string, readonly number[] | null>();
  shares.set(both, known);
  const key = `${extreme} ${source}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const all = both[extreme].sharesOf(source);
  known.set(key, all);
  return all;
}

function tellShort(facts: Facts, both: BothFaults, short: CableShort, book: WhyBook): ShortAnswer {
  const { circuit } = facts.model;
  const { worst, partial, ends } = short;
  const point = worst.worst;
  const runId = circuit.cables[short.cable]?.run.id ?? '';
  const place = (link: number | null): ShortAnswer['clearedBy'] => {
    const device = circuit.links[link ?? -1];
    return device === undefined ? null : { fittingId: device.fitting.id, terminal: device.terminal };
  };
  const feeding = ends.filter(({ residualA }) => residualA > 0).flatMap(({ end }) => end.bare);
  const ended = point !== null && Number.isFinite(point.slowestS) && worst.link !== null ? point : null;
  return {
    runId,
    to: returnOf(facts.model).to,
    lowestA: short.lowestA,
    highestA: short.highestA,
    bySource: sharesOf(facts, both, short),
    fuses: fusesOf(facts, short),
    verdict: worst.verdict,
    harm: worst.harm,
    unprotected: ends.some(({ end }) => end.bare.length > 0),
    withoutLimits: worst.withoutLimits,
    extrapolated: point?.extrapolated ?? false,
    worstA: point?.currentA ?? null,
    clearedBy: place(worst.link),
    fastestS: finite(point?.fastestS ?? Infinity),
    slowestS: finite(point?.slowestS ?? Infinity),
    damageS: finite(point?.damageS ?? Infinity),
    conductorC: point === null ? null : finite(point.clearingC),
    limitC: point?.limitC ?? null,
    melts: point?.melts ?? false,
    residualA: Math.max(0, ...ends.map(({ residualA }) => residualA)),
    stillFedBy: [...new Set(feeding)].flatMap((source) => circuit.sources[source]?.fitting.id ?? []),
    partial:
      partial === null
        ? null
        : {
            currentA: partial.currentA,
            faultOhm: partial.faultOhm,
            faultW: partial.faultW,
            settledC: partial.runsAway ? null : partial.settledC,
            limitC: partial.limitC,
            damageS: finite(partial.damageS),
          },
    whyHighest: book.file(`short-highest:${runId}`, () => prospectiveWhy(facts, both, short, 'highest')),
    whyLowest: book.file(`short-lowest:${runId}`, () => prospectiveWhy(facts, both, short, 'lowest')),
    whySlowest: ended === null ? null : book.file(`short-time:${runId}`, () => clearingWhy(facts, short)),
    whyConductor: ended === null ? null : book.file(`short-heat:${runId}`, () => conductorWhy(facts, short)),
  };
}

/** An answer for every live cable of a decided size, in the order of the circuit. */
export function tellShorts(facts: Facts, book: WhyBook): ShortAnswer[] {
  const both = bothFaults(facts);
  return both === null ? [] : shortsOf(facts).map((short) => tellShort(facts, both, short, book));
}
