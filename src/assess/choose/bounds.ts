/**
 * Figures that no choice of sizes can undercut: least currents, and with them the least drop, fuse and heat of every
 * size of every cable. They rule sizes out without working an operating point.
 */
import { type GaugeId, gauge } from '../../calc/conductor/gauge.ts';
import { neededRating } from '../../calc/fuse/rating.ts';
import { cableAmpacityA } from '../capacity.ts';
import { ANY_SIZE, exceeds, heldOhm, isTooHot } from '../conductor.ts';
import { drawnA } from '../demand.ts';
import { limitsOf } from '../limits.ts';
import type { Model } from '../model.ts';
import { fixedOhms } from '../ohms.ts';
import { summedBehind } from '../operate.ts';
import { hotAtOverload } from '../overload.ts';
import { linkEdge, pickRating } from '../ratings.ts';
import { decidingStates, heatingShareAt } from '../states.ts';
import { ambientC } from '../surroundings.ts';
import type { Lot } from './lots.ts';
import { type Criterion, dropLimitV } from './trial.ts';

/** With several sources a return that differs between them may lift a load above the voltage of one; taken as a tenth. */
const SEVERAL_SOURCES = 1.1;
const ROUNDS = 3;
const COOLEST_C = 20;

export interface LeastFigures {
  /** By edge, A; 0 where the current has a choice of way. */
  readonly amps: readonly number[];
  /** By cable, A: what the fuses let in at the very least. */
  readonly limits: readonly number[];
}

/** Least voltage a load that is to keep the drop limit can have: what it draws in proportion is no less than there. */
function leastVolts(
  model: Model,
  volts: number,
  load: number,
  fixed: readonly number[],
  mostA: readonly number[],
): number {
  const { ways, settings, circuit } = model;
  let lost = dropLimitV(model);
  for (const edge of ways.wayOf(load)) {
    const isLink = edge >= circuit.cables.length && edge < circuit.cables.length + circuit.links.length;
    lost += isLink ? 2 * settings.linkDropV.value : (fixed[edge] ?? 0) * (mostA[edge] ?? 0);
  }
  return Math.max(volts / 2, volts - lost);
}

/** Least currents of any choice: every auto cable at its largest size and no warmer than its surroundings. */
export function leastFigures(model: Model, largest: readonly GaugeId[]): LeastFigures {
  const { circuit, demands, ways, sides, settings } = model;
  const volts = Math.min(...decidingStates(model).map((source) => source.volts));
  const reach = circuit.sources.length > 1 ? SEVERAL_SOURCES : 1;
  const fixed = fixedOhms(
    model,
    circuit.links.map(({ link }) => (link.ratingA === 'auto' ? null : link.ratingA)),
  );
  const ohms = fixed.map((ohm, edge) => {
    if (edge >= circuit.cables.length) return ohm;
    const size = largest[edge] ?? ANY_SIZE;
    return ohm + heldOhm(model, edge, size, 0);
  });
  const mostA = summedBehind(
    model,
    demands.map((demand) => (demand === null ? 0 : Math.max(drawnA(demand, volts / 2), drawnA(demand, volts)))),
  );
  let amps: number[] = sides.edges.map(() => 0);
  for (let round = 0; round < ROUNDS; round += 1) {
    const lostV = new Float64Array(sides.at.length);
    for (const { edge, from, to } of ways.steps) lostV[to] = (lostV[from] ?? 0) + (ohms[edge] ?? 0) * (amps[edge] ?? 0);
    const drawn = demands.map((demand, load) => {
      if (demand === null) return 0;
      const { plus = -1, minus = -1 } = circuit.loads[load] ?? {};
      const lost = (lostV[plus] ?? 0) + (lostV[minus] ?? 0);
      const at =
        demand.law === 'proportional'
          ? leastVolts(model, volts, load, fixed, mostA)
          : Math.max(volts / 2, volts * reach - lost);
      return drawnA(demand, at);
    });
    amps = summedBehind(model, drawn);
  }
  const capacities = circuit.links.map(({ zone }, link) => {
    const edge = linkEdge(model, link);
    const fullA = amps[edge] ?? 0;
    const need = neededRating({
      fullA,
      heatingA: fullA * heatingShareAt(model, edge),
      holderC: ambientC(settings, zone),
    });
    return pickRating(model, link, need) ?? need;
  });
  return { amps, limits: limitsOf(model, capacities) };
}

/** Cables of a lot that the same loads' current passes. */
interface LotPart {
  readonly loads: readonly number[];
  /** By size: the least drop they make on the way of each of those loads, V. */
  readonly dropV: readonly number[];
}

/** A lot with what is known of every size of it. */
export interface LotSizes extends Lot {
  /** Sizes to choose from, ascending in area. */
  readonly sizes: readonly GaugeId[];
  /** By size: metal, m x mm2. */
  readonly cost: readonly number[];
  readonly parts: readonly LotPart[];
  /** By size: the rule it breaks whatever else is chosen; null when none is proven. */
  readonly breaks: readonly (Criterion | null)[];
}

/** The first rule that a cable at a size breaks even at the least current. */
function surelyBreaks(model: Model, index: number, size: GaugeId, least: LeastFigures): Criterion | null {
  const cable = model.circuit.cables[index];
  if (cable === undefined) return null;
  const ampacityA = cableAmpacityA(model, cable, size);
  const heatingA = (least.amps[index] ?? 0) * heatingShareAt(model, index);
  if (ampacityA === 0 || exceeds(heatingA, ampacityA)) return 'ampacity';
  const limitA = least.limits[index] ?? 0;
  if (limitA !== Infinity && exceeds(limitA, ampacityA)) return 'fuse';
  if (hotAtOverload(model, index, size, limitA) !== null) return 'heating';
  return isTooHot(model, index, size, heatingA) ? 'heating' : null;
}

/** Least drop of one cable at a size, on the way of every load behind it; 0 where the current has a choice of way, V. */
export function leastDropV(model: Model, index: number, size: GaugeId, least: LeastFigures): number {
  const amps = least.amps[index] ?? 0;
  if (amps === 0) return 0;
  // a conductor that settles at no temperature is ruled out by heat; here it counts at its coolest
  return amps * heldOhm(model, index, size, amps * heatingShareAt(model, index), COOLEST_C);
}

/** The parts of some cables by the loads that they carry. */
function partsOf(model: Model, cables: readonly number[], sizes: readonly GaugeId[], least: LeastFigures): LotPart[] {
  const { ways } = model;
  const alike = new Map<string, number[]>();
  for (const cable of cables) {
    const likeness = ways.likenessOf(cable);
    if (likeness !== null) alike.set(likeness, [...(alike.get(likeness) ?? []), cable]);
  }
  return [...alike.values()].map((same) => ({
    loads: ways.behindOf(same[0] ?? -1) ?? [],
    dropV: sizes.map((size) => same.reduce((sum, cable) => sum + leastDropV(model, cable, size, least), 0)),
  }));
}

/** The first rule that some cable of a lot breaks at a size, even at the least current; null when none is proven. */
function lotBreaks(model: Model, { cables }: Lot, size: GaugeId, least: LeastFigures): Criterion | null {
  for (const cable of cables) {
    const found = surelyBreaks(model, cable, size, least);
    if (found !== null) return found;
  }
  return null;
}

export function lotSizes(model: Model, lot: Lot, sizes: readonly GaugeId[], least: LeastFigures): LotSizes {
  const lengthM = lot.cables.reduce((sum, cable) => sum + (model.circuit.cables[cable]?.length.lengthM ?? 0), 0);
  return {
    ...lot,
    sizes,
    cost: sizes.map((size) => lengthM * gauge(size).areaMm2),
    parts: partsOf(model, lot.cables, sizes, least),
    breaks: sizes.map((size) => lotBreaks(model, lot, size, least)),
  };
}
