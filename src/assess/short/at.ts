/** One short, as the user slides it: a place along a cable, a resistance, and what opens one after the other. */
import { temperatureAfterC } from '../../calc/conductor/shortHeating.ts';
import { damageSeconds } from '../../calc/fault/damage.ts';
import { type FaultVerdictId, faultAt } from '../../calc/fault/point.ts';
import { clearingBand } from '../../calc/fuse/timeCurrent.ts';
import { faultsTo } from '../../calc/network/fault.ts';
import type { Network } from '../../calc/network/types.ts';
import { type Facts, sizeOf } from '../facts.ts';
import { linkEdge } from '../ratings.ts';
import type { Extreme } from './battery.ts';
import { faultConductor } from './conductor.ts';
import { familyNameOf, type RatedLink, ratedLinks } from './links.ts';
import { faultNetwork, NO_A, returnOf } from './net.ts';

export interface ShortQuery {
  readonly runId: string;
  /** Along the run, 0 at its 'from' end, 1 at its 'to' end. */
  readonly share: number;
  /** 0: a dead short. */
  readonly faultOhm: number;
}

/** A device in the way of the current, and when it opens at what it carries; null: never. */
interface StageFuse {
  readonly fittingId: string;
  readonly terminal: string | null;
  readonly ratingA: number;
  readonly currentA: number;
  readonly fastestS: number | null;
  readonly slowestS: number | null;
  /** No time limits are held for its family. */
  readonly withoutLimits: boolean;
}

/** From one opening to the next: currents that hold until the slowest line of some fuse opens it. */
interface ShortStage {
  readonly faultA: number;
  /** Heat at the fault, W. */
  readonly faultW: number;
  readonly bySource: readonly { readonly fittingId: string; readonly currentA: number }[];
  /** Through the conductor on either side of the place, A. */
  readonly fromA: number;
  readonly toA: number;
  readonly fuses: readonly StageFuse[];
  /** The fuse that ends the stage and when, s after the start of the short; null: nothing ends it. */
  readonly opens: { readonly fittingId: string; readonly terminal: string | null; readonly atS: number } | null;
  /** Hotter side of the conductor at the end of the stage, degC. */
  readonly conductorC: number;
}

interface ShortCase {
  readonly stages: readonly ShortStage[];
  readonly verdict: FaultVerdictId;
  /** The last fuse has opened, s; null: current flows on. */
  readonly clearedS: number | null;
  /** At the first stage's current, the insulation would be damaged then, s; null: never. */
  readonly damageS: number | null;
  readonly hottestC: number;
  readonly limitC: number;
}

export interface ShortAt {
  readonly to: 'body' | 'negative';
  /** Cold and aged batteries, hot conductor, the body in the way; and warm ones, conductor at 20 degC. */
  readonly lowest: ShortCase;
  readonly highest: ShortCase;
}

/** The network with a node added where the short is, and the cable in two pieces there; the pieces' places. */
function withPlace(net: Network, cable: number, share: number): { net: Network; place: number; rest: number } {
  const whole = net.resistors[cable];
  if (whole === undefined) throw new RangeError('short: no such cable');
  const place = net.nodes;
  const first = { a: whole.a, b: place, ohm: whole.ohm * share };
  const second = { a: place, b: whole.b, ohm: whole.ohm * (1 - share) };
  const resistors = net.resistors.map((one, index) => (index === cable ? first : one));
  return { net: { ...net, nodes: net.nodes + 1, resistors: [...resistors, second] }, place, rest: resistors.length };
}

function caseAt(facts: Facts, cable: number, { share, faultOhm }: ShortQuery, extreme: Extreme): ShortCase | null {
  const { model } = facts;
  const size = sizeOf(facts, cable);
  const conductor = size === null ? null : faultConductor(facts, cable, size);
  if (conductor === null) return null;
  const back = returnOf(model);
  const bodyOhm = extreme === 'lowest' && back.to === 'body' ? model.settings.bodyOhm.value : 0;
  const links = ratedLinks(facts);
  const opened = new Set<number>();
  const stages: ShortStage[] = [];
  let [fromC, toC, elapsedS] = [conductor.startC, conductor.startC, 0];
  for (;;) {
    const { net, place, rest } = withPlace(faultNetwork(facts, { extreme, opened }), cable, share);
    const faults = faultsTo(net, back.node);
    const point = faults.ok ? faults.at(place, bodyOhm + faultOhm) : null;
    if (point === null) return null;
    const fromA = Math.abs(point.resistorAmps[cable] ?? 0);
    const toA = Math.abs(point.resistorAmps[rest] ?? 0);
    const seen = links.flatMap((of): { of: RatedLink; told: StageFuse }[] => {
      const device = model.circuit.links[of?.link ?? -1];
      const currentA = Math.abs(point.resistorAmps[linkEdge(model, of?.link ?? -1)] ?? 0);
      if (of === null || device === undefined || opened.has(of.link) || currentA <= NO_A) return [];
      const band = clearingBand({ family: familyNameOf(of), ratingA: of.ratingA }, currentA);
      const told = {
        fittingId: device.fitting.id,
        terminal: device.terminal,
        ratingA: of.ratingA,
        currentA,
        fastestS: band?.fastestS ?? null,
        slowestS: band?.slowestS ?? null,
        withoutLimits: band === null,
      };
      return [{ of, told }];
    });
    const [next] = seen
      .flatMap(({ of, told }) => (told.slowestS === null ? [] : [{ of, told, afterS: told.slowestS }]))
      .toSorted((one, other) => one.afterS - other.afterS);
    const stageS = next?.afterS ?? Infinity;
    const heated = (startC: number, amps: number): number =>
      temperatureAfterC(conductor.thermal, amps, stageS, { startC, ambientC: conductor.ambientC });
    [fromC, toC] = [heated(fromC, fromA), heated(toC, toA)];
    const isLive = point.amps > NO_A;
    if (isLive) {
      if (next !== undefined) elapsedS += stageS;
      stages.push({
        faultA: point.amps,
        faultW: point.amps ** 2 * faultOhm,
        bySource: model.circuit.sources.map(({ fitting }, source) => ({
          fittingId: fitting.id,
          currentA: point.sourceAmps[source] ?? 0,
        })),
        fromA,
        toA,
        fuses: seen.map(({ told }) => told),
        opens:
          next === undefined ? null : { fittingId: next.told.fittingId, terminal: next.told.terminal, atS: elapsedS },
        conductorC: Math.max(fromC, toC),
      });
    }
    if (!isLive || next === undefined) break;
    opened.add(next.of.link);
  }
  return judged(facts, conductor, stages, links);
}

function judged(
  facts: Facts,
  conductor: NonNullable<ReturnType<typeof faultConductor>>,
  stages: readonly ShortStage[],
  links: readonly (RatedLink | null)[],
): ShortCase {
  const [first] = stages;
  const last = stages.at(-1);
  const clearedS = last === undefined ? 0 : (last.opens?.atS ?? null);
  const through = first === undefined ? 0 : Math.max(first.fromA, first.toA);
  const fuses = links.flatMap((of) => {
    const device = facts.model.circuit.links[of?.link ?? -1];
    const seen = first?.fuses.find(
      ({ fittingId, terminal }) => fittingId === device?.fitting.id && terminal === device.terminal,
    );
    return of === null || seen === undefined
      ? []
      : [{ family: familyNameOf(of), ratingA: of.ratingA, currentA: seen.currentA }];
  });
  // what the first stage alone would come to, for the limit and for damage that is certain
  const alone = faultAt(conductor, through, fuses);
  const hottestC = Math.max(conductor.startC, ...stages.map(({ conductorC }) => conductorC));
  const isCool = hottestC <= alone.limitC;
  const damageS = damageSeconds(conductor, through);
  const verdict = ((): FaultVerdictId => {
    if (clearedS !== null && isCool) return 'opensInTime';
    if (last !== undefined && clearedS === null)
      return last.fuses.some(({ withoutLimits, currentA, ratingA }) => withoutLimits && currentA > ratingA)
        ? 'cannotBeTold'
        : 'nothingOpens';
    return alone.harm === 'certain' ? 'damagedFirst' : 'cannotBeTold';
  })();
  return {
    stages,
    verdict,
    clearedS,
    damageS: Number.isFinite(damageS) ? damageS : null,
    hottestC,
    limitC: alone.limitC,
  };
}

/**
 * A short at a place of a run through a resistance, worked in both extremes, fuse after fuse by the slowest line of each.
 * Null where none can be told: no such live run of a decided size, or a plan that is a short already. For one place at a
 * time: it solves the net once for each fuse that opens.
 */
export function shortAt(facts: Facts, query: ShortQuery): ShortAt | null {
  const { circuit, sides, shorted } = facts.model;
  const cable = circuit.cables.findIndex(({ run }) => run.id === query.runId);
  const found = circuit.cables[cable];
  if (found === undefined || shorted || sides.live[found.a] !== true || circuit.sources.length === 0) return null;
  if (!(query.share >= 0 && query.share <= 1 && query.faultOhm >= 0))
    throw new RangeError('short: share or resistance');
  const lowest = caseAt(facts, cable, query, 'lowest');
  const highest = caseAt(facts, cable, query, 'highest');
  return lowest === null || highest === null ? null : { to: returnOf(facts.model).to, lowest, highest };
}
