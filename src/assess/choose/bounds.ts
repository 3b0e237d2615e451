/**
 * Figures that no choice of sizes can undercut: least currents, and with them the least drop, fuse and heat of every
 * size of every cable. They rule sizes out without working an operating point.
 */
import { type GaugeId, gauge } from '../../calc/conductor/gauge.ts';
import { neededRating } from '../../calc/fuse/rating.ts';
import { cableAmpacityA } from '../capacity.ts';
import { conductorOhm, exceeds, isTooHot, settledC } from '../conductor.ts';
import { drawnA } from '../demand.ts';
import { limitsOf } from '../limits.ts';
import type { Model } from '../model.ts';
import { fixedOhms } from '../ohms.ts';
import { ANY_SIZE } from '../operate.ts';
import { linkEdge, pickRating } from '../ratings.ts';
import { decidingStates, heatingShare } from '../states.ts';
import { ambientC } from '../surroundings.ts';
import type { Lot } from './lots.ts';
import { type Criterion, dropLimitV } from './trial.ts';

/** With several sources a return that differs between them may lift a load above the voltage of one; taken as a tenth. */
const SEVERAL_SOURCES = 1.1;
const ROUNDS = 3;

export interface LeastFigures {
  /** By edge, A; 0 where the current has a choice of way. */
  readonly amps: readonly number[];
  /** By cable, A: what the fuses let in at the very least. */
  readonly limits: readonly number[];
}

/** Least voltage a load that is to keep the drop limit can have: what it draws in proportion is no less than there. */
function leastVolts(model: Model, volts: number, load: number, fixed: readonly number[]): number {
  const { demands, ways, settings, circuit } = model;
  const most = demands.map((demand) =>
    demand === null ? 0 : Math.max(drawnA(demand, volts / 2), drawnA(demand, volts)),
  );
  let lost = dropLimitV(model);
  for (const edge of ways.edgesOf[load] ?? []) {
    const isLink = edge >= circuit.cables.length && edge < circuit.cables.length + circuit.links.length;
    const amps = (ways.behind[edge] ?? []).reduce((sum, other) => sum + (most[other] ?? 0), 0);
    lost += isLink ? 2 * settings.linkDropV.value : (fixed[edge] ?? 0) * amps;
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
    return ohm + conductorOhm(model, edge, size, settledC(model, edge, size, 0));
  });
  let amps: number[] = sides.edges.map(() => 0);
  for (let round = 0; round < ROUNDS; round += 1) {
    const before = amps;
    amps = sides.edges.map(() => 0);
    for (const [load, demand] of demands.entries()) {
      if (demand === null) continue;
      const way = ways.edgesOf[load] ?? [];
      const lost = way.reduce((sum, edge) => sum + (ohms[edge] ?? 0) * (before[edge] ?? 0), 0);
      const at =
        demand.law === 'proportional'
          ? leastVolts(model, volts, load, fixed)
          : Math.max(volts / 2, volts * reach - lost);
      for (const edge of way) amps[edge] = (amps[edge] ?? 0) + drawnA(demand, at);
    }
  }
  const share = heatingShare(model);
  const capacities = circuit.links.map(({ zone }, link) => {
    const fullA = amps[linkEdge(model, link)] ?? 0;
    const need = neededRating({ fullA, heatingA: fullA * share, holderC: ambientC(settings, zone) });
    return pickRating(model, link, need) ?? need;
  });
  return { amps, limits: limitsOf(model, capacities) };
}

/** A lot with what is known of every size of it. */
export interface LotSizes extends Lot {
  /** Sizes to choose from, ascending in area. */
  readonly sizes: readonly GaugeId[];
  /** By size: metal, m x mm2. */
  readonly cost: readonly number[];
  /** By size: the least drop it makes on the way of each load, V. */
  readonly dropV: readonly (readonly number[])[];
  /** By size: the rule it breaks whatever else is chosen; null when none is proven. */
  readonly breaks: readonly (Criterion | null)[];
}

/** The first rule that a cable at a size breaks even at the least current. */
function surelyBreaks(model: Model, index: number, size: GaugeId, least: LeastFigures): Criterion | null {
  const cable = model.circuit.cables[index];
  if (cable === undefined) return null;
  const ampacityA = cableAmpacityA(model, cable, size);
  const heatingA = (least.amps[index] ?? 0) * heatingShare(model);
  if (ampacityA === 0 || exceeds(heatingA, ampacityA)) return 'ampacity';
  const limitA = least.limits[index] ?? 0;
  if (limitA !== Infinity && exceeds(limitA, ampacityA)) return 'fuse';
  return isTooHot(model, index, settledC(model, index, size, heatingA)) ? 'heating' : null;
}

/** Least drop of one cable at a size on the way of each load, V. */
export function leastDropV(model: Model, index: number, size: GaugeId, least: LeastFigures): number[] {
  const drops = model.demands.map(() => 0);
  const behind = model.ways.behind[index] ?? [];
  if (behind.length === 0) return drops;
  const amps = least.amps[index] ?? 0;
  // a conductor that settles at no temperature is ruled out by heat; here it counts at its coolest
  const stretchC = settledC(model, index, size, amps * heatingShare(model)).map((conductorC) => conductorC ?? 20);
  const volts = amps * conductorOhm(model, index, size, stretchC);
  for (const load of behind) drops[load] = volts;
  return drops;
}

export function lotSizes(model: Model, lot: Lot, sizes: readonly GaugeId[], least: LeastFigures): LotSizes {
  const { cables } = lot;
  const lengthM = cables.reduce((sum, cable) => sum + (model.circuit.cables[cable]?.length.lengthM ?? 0), 0);
  return {
    ...lot,
    sizes,
    cost: sizes.map((size) => lengthM * gauge(size).areaMm2),
    dropV: sizes.map((size) =>
      cables
        .map((cable) => leastDropV(model, cable, size, least))
        .reduce(
          (sums, drops) => sums.map((sum, load) => sum + (drops[load] ?? 0)),
          model.demands.map(() => 0),
        ),
    ),
    breaks: sizes.map(
      (size) => cables.map((cable) => surelyBreaks(model, cable, size, least)).find((found) => found !== null) ?? null,
    ),
  };
}
