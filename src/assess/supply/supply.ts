/** What music asks of batteries and alternators: mean currents, charging balance, minutes with the engine off. */
import type { EngineSpeed } from '../../calc/supply/alternator.ts';
import { playTimeS, type Store, sharedByCapacity } from '../../calc/supply/endurance.ts';
import { meanCurrentA } from '../../calc/supply/mean.ts';
import type { FittingOf } from '../../plan/schema.ts';
import type { CircuitLoad } from '../circuit.ts';
import type { Facts } from '../facts.ts';
import { per } from '../perModel.ts';
import { partsOf } from '../sides.ts';
import { fullPoint } from '../terminal.ts';
import { alternatorsA, type SupplyPoint, supplyPoint } from './point.ts';

/** Batteries that feed as one with the engine off. */
interface Group {
  /** As indices of the circuit's sources. */
  readonly sources: readonly number[];
  readonly meanA: number;
  readonly stores: readonly Store[];
  /** Until the first of them has given its usable share, s; null where nothing is drawn from them. */
  readonly playS: number | null;
}

interface Balance {
  /** What the batteries must add to the alternators in the mean, A: above 0 they empty. */
  readonly deficitA: number;
  /** By load, in the mean, A: as the voltage of that balance has it. */
  readonly meansA: readonly number[];
  /** What the alternators can bring hot, A. */
  readonly outputA: number;
}

interface Supply {
  /** By load, in the mean, A: engine off, and at the charging voltage; 0 for one that draws nothing. */
  readonly offA: readonly number[] | null;
  readonly runningA: readonly number[];
  readonly groups: readonly Group[] | null;
  /** null where no alternator is drawn, or no point can be told. */
  readonly balance: Readonly<Record<EngineSpeed, Balance>> | null;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Output stage, as far as its mean current goes. */
export const stageOf = ({ ampClass }: FittingOf<'amplifier'>): 'B' | 'D' => (ampClass === 'D' ? 'D' : 'B');

/** Mean over peak power of what it plays. */
export const dutyOf = ({ settings }: Facts['model'], { duty }: FittingOf<'amplifier'>): number =>
  duty ?? settings.duty.value;

/** Mean current of a load of which the full current is told, A: music for an amplifier, all of it for any other. */
function meanOf({ model }: Pick<Facts, 'model'>, { fitting }: CircuitLoad, fullA: number): number {
  if (fitting.kind === 'load' || fullA === 0) return fullA;
  return meanCurrentA({
    stage: stageOf(fitting),
    fullA,
    idleA: fitting.idleA.value,
    duty: dutyOf(model, fitting),
  });
}

function meansIn(facts: Facts, state: 'rest' | 'charging'): number[] | null {
  const point = facts.operating?.states.find((one) => one.state === state);
  if (point === undefined) return null;
  return facts.model.circuit.loads.map((load, index) => meanOf(facts, load, point.loadAmps[index] ?? 0));
}

/** Sources joined at rest: relays open, switches as drawn. */
function groupsAtRest({ model }: Facts): number[][] {
  const { circuit, sides } = model;
  const part = partsOf(sides, ({ kind, index }) => {
    const contact = kind === 'contact' ? circuit.contacts[index] : undefined;
    return kind !== 'bond' && contact?.kind !== 'relay' && !(contact?.kind === 'switch' && !contact.fitting.closed);
  });
  const groups = new Map<number, number[]>();
  for (const [source, { plus }] of circuit.sources.entries()) {
    const key = part[plus] ?? -1;
    groups.set(key, [...(groups.get(key) ?? []), source]);
  }
  return [...groups.values()];
}

/** Minutes of each group. Its batteries share by capacity, which makes the most of them: none is longer. */
function groupOf({ model }: Facts, sources: readonly number[], { sourceAmps }: SupplyPoint): Group {
  const { circuit, settings } = model;
  const capacitiesAh = sources.map((source) => circuit.sources[source]?.fitting.capacityAh.value ?? 0);
  const meanA = Math.max(0, sum(sources.map((source) => sourceAmps[source] ?? 0)));
  const stores = sharedByCapacity(capacitiesAh, meanA).map((currentA, index) => ({
    capacityAh: capacitiesAh[index] ?? 0,
    usableShare: settings.usableShare.value,
    peukert: settings.peukert.value,
    currentA,
  }));
  return { sources, meanA, stores, playS: playTimeS(stores) };
}

/** Rounding of the solver, A. */
const NO_AMPS = 1e-6;

const deficitOf = ({ sourceAmps }: SupplyPoint): number => {
  const deficitA = sum(sourceAmps.map((amps) => Math.max(0, amps)));
  return deficitA < NO_AMPS ? 0 : deficitA;
};

/**
 * The balance at a speed: at the charging voltage first; where the batteries must help, the posts fall to theirs, and
 * regulated amplifiers draw more: then at that of rest.
 */
function balanceAt(
  facts: Facts,
  speed: EngineSpeed,
  runningA: readonly number[],
  offA: readonly number[] | null,
): Balance | null {
  const outputA = sum(alternatorsA(facts, speed));
  const at = (drawnA: readonly number[]): Balance | null => {
    const point = supplyPoint(facts, { speed, drawnA, switches: 'asDrawn' });
    return point?.carried === true ? { deficitA: deficitOf(point), meansA: drawnA, outputA } : null;
  };
  const held = at(runningA);
  return held === null || held.deficitA === 0 || offA === null ? held : (at(offA) ?? held);
}

/** What the sources bring and what is asked of them; null where no current can be told, or some rating is not told. */
export const supplyOf = per((facts: Facts): Supply | null => {
  const { model, choice } = facts;
  const runningA = meansIn(facts, 'charging');
  if (runningA === null || !model.rated || choice.unknownLoads.size > 0 || model.shorted) return null;
  const offA = meansIn(facts, 'rest');
  const off = offA === null ? null : supplyPoint(facts, { speed: 'off', drawnA: offA, switches: 'asDrawn' });
  const groups = off?.carried === true ? groupsAtRest(facts).map((sources) => groupOf(facts, sources, off)) : null;
  const [idle, cruise] =
    model.circuit.alternators.length === 0
      ? [null, null]
      : [balanceAt(facts, 'idle', runningA, offA), balanceAt(facts, 'cruise', runningA, offA)];
  return { offA, runningA, groups, balance: idle === null || cruise === null ? null : { idle, cruise } };
});

/** The lowest voltage between any battery's posts at full output, V; null where it cannot be told. */
export function lowestPostsV(facts: Facts, speed: 'off' | EngineSpeed): number | null {
  const { settings, circuit } = facts.model;
  if (speed === 'off' ? settings.engineAlwaysRunning : circuit.alternators.length === 0) return null;
  const point = fullPoint(facts, speed);
  return point?.carried === true && point.postsV.length > 0 ? Math.min(...point.postsV) : null;
}
