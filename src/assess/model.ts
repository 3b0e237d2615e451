/** All that is known of a plan before a size is chosen: what every later step works on. */

import type { GaugeId } from '../calc/conductor/gauge.ts';
import type { Cable as CableKind } from '../calc/conductor/tableCurrent.ts';
import type { InsulationC } from '../calc/tables/ampacity.ts';
import type { Plan, Settings } from '../plan/schema.ts';
import { buildCircuit } from './buildCircuit.ts';
import type { Cable, Circuit } from './circuit.ts';
import { type Demand, demandOf } from './demand.ts';
import { isShorted, type Sides, sidesOf } from './sides.ts';
import { type Ways, waysOf } from './ways.ts';

export interface Model {
  readonly plan: Plan;
  /** The plan's settings, or what a trial puts in their place. */
  readonly settings: Settings;
  readonly circuit: Circuit;
  readonly sides: Sides;
  readonly ways: Ways;
  /** By load; null for one that is not fed, has no way back, or of which no rating is told. */
  readonly demands: readonly (Demand | null)[];
  /** A live conductor is joined to the body or a negative post. */
  readonly shorted: boolean;
  /** Every amplifier that is connected has a rating: currents can be told. */
  readonly rated: boolean;
}

/** Cable that is already there and not marked counts as plain PVC. Source: our rules, section 4. */
const UNMARKED_C = 60;

/** A cable fixed by hand whose class nobody told. */
export const isUnmarked = ({ conductor }: Cable): boolean =>
  conductor.size !== 'auto' && conductor.insulationC.origin === 'assumed';

/** Insulation class that counts: 60 degC for cable that is there and unmarked. */
export const insulationOf = (cable: Cable): InsulationC =>
  isUnmarked(cable) ? UNMARKED_C : cable.conductor.insulationC.value;

/** A cable at a size, for the calc room. */
export const cableOf = (
  cable: Cable,
  gauge: GaugeId,
): CableKind & { loom: boolean; carpet: boolean; bundled: number } => ({
  gauge,
  material: cable.conductor.material.value,
  insulationC: insulationOf(cable),
  loom: cable.run.inLoom,
  carpet: cable.run.underCarpet,
  bundled: cable.run.bundled,
});

export const isFed = ({ circuit, sides }: Pick<Model, 'circuit' | 'sides'>, load: number): boolean =>
  sides.live[circuit.loads[load]?.plus ?? -1] === true;

/** Whether a positive post comes to the load's ground, and none to its supply. */
export const isReversed = ({ circuit, sides }: Pick<Model, 'circuit' | 'sides'>, load: number): boolean =>
  sides.live[circuit.loads[load]?.minus ?? -1] === true && sides.live[circuit.loads[load]?.plus ?? -1] !== true;

/** Whether the load's current finds back: to a battery that feeds it, where one does. */
export function isGrounded({ circuit, sides }: Pick<Model, 'circuit' | 'sides'>, load: number): boolean {
  const { plus = -1, minus = -1 } = circuit.loads[load] ?? {};
  const feeding = sides.live[plus] === true ? sides.livePart[plus] : null;
  return circuit.sources.some(
    (source) =>
      sides.backPart[source.minus] === sides.backPart[minus] &&
      (feeding === null || sides.livePart[source.plus] === feeding),
  );
}

export function buildModel(plan: Plan): Model {
  const circuit = buildCircuit(plan);
  const sides = sidesOf(circuit);
  const connected = circuit.loads.map(
    (_, load) => isFed({ circuit, sides }, load) && isGrounded({ circuit, sides }, load),
  );
  const demands = circuit.loads.map(({ fitting }, load) =>
    connected[load] === true ? demandOf(fitting, plan.settings.systemV) : null,
  );
  const posts = {
    plus: circuit.sources.map(({ plus }) => plus),
    minus: circuit.sources.map(({ minus }) => minus),
  };
  const ways = waysOf(sides, circuit.loads, posts, (load) => demands[load] !== null);
  const rated = connected.every((isConnected, load) => !isConnected || demands[load] !== null);
  return { plan, settings: plan.settings, circuit, sides, ways, demands, shorted: isShorted(sides), rated };
}
