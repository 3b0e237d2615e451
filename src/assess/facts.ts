/** Everything worked out of a plan, for the rules to judge and the answer to tell. */
import type { GaugeId } from '../calc/conductor/gauge.ts';
import { cableAmpacityA } from './capacity.ts';
import type { Choice } from './choose/choose.ts';
import { limitsOf } from './limits.ts';
import type { Model } from './model.ts';
import type { CannotCarry, Operating } from './operate.ts';
import { linkEdge } from './ratings.ts';
import { countedStarts } from './supply/capacitors.ts';
import { type Unprotected, unprotectedOf } from './unprotected.ts';

export interface Facts {
  readonly model: Model;
  readonly choice: Choice;
  /** null where currents cannot be told. */
  readonly operating: Operating | null;
  readonly cannotCarry: CannotCarry | null;
  /** By link: as fitted or chosen, A; null where there is none. */
  readonly ratings: readonly (number | null)[];
  /** By cable, A: what the fuses let in; Infinity where nothing limits it. */
  readonly limits: readonly number[];
  /** Of every start; of a capacitor only where it counts as a source. */
  readonly unprotected: readonly Unprotected[];
  /** Multiplies the batteries' own resistance: 1, or what a trial puts in its place. */
  readonly batteryScale: number;
}

const fixedRatings = ({ circuit }: Model): (number | null)[] =>
  circuit.links.map(({ link }) => (link.ratingA === 'auto' ? null : link.ratingA));

export function factsOf(model: Model, choice: Choice): Facts {
  const worked = choice.trial?.operating;
  const operating = worked?.ok === true ? worked : null;
  const ratings = operating?.ratings ?? fixedRatings(model);
  // what a link would have to carry is no rating: one that is not rated limits nothing, and says so in a finding of its own
  const capacities = ratings.map((rating) => rating ?? Infinity);
  const facts: Facts = {
    model,
    choice,
    operating,
    cannotCarry: worked?.ok === false ? worked : null,
    ratings,
    limits: model.shorted ? model.circuit.cables.map(() => 0) : limitsOf(model, capacities),
    unprotected: [],
    batteryScale: 1,
  };
  const counted = countedStarts(facts);
  const unprotected = counted.flatMap((isSource, start) => (isSource ? unprotectedOf(model, start, counted) : []));
  return { ...facts, unprotected };
}

/** Whether a current can be told for an edge: currents are, and none of its loads lies on the way of a failing cable. */
function isTold({ model, choice, operating }: Facts, edge: number): boolean {
  if (operating === null) return false;
  const behind = model.ways.behind[edge];
  if (choice.unknownLoads.size === 0) return true;
  return behind != null && !behind.some((load) => choice.unknownLoads.has(load));
}

/** Full current through an edge, A; null where none can be told. */
export const fullOf = (facts: Facts, edge: number): number | null =>
  isTold(facts, edge) ? (facts.operating?.fullA[edge] ?? null) : null;

/** Whether figures can be told for a load. */
export const isLoadTold = ({ model, choice, operating }: Facts, load: number): boolean =>
  operating !== null && model.demands[load] != null && !choice.unknownLoads.has(load);

/** The size that counts for a cable and is decided; null otherwise. */
export const sizeOf = ({ choice }: Facts, cable: number): GaugeId | null => choice.sizes[cable] ?? null;

/** Air as hot as its class leaves a cable no ampacity at all: one cause, told of the cable, and of nothing that follows. */
export function carriesNothing(facts: Facts, cable: number): boolean {
  const [size, found] = [sizeOf(facts, cable), facts.model.circuit.cables[cable]];
  return size !== null && found !== undefined && cableAmpacityA(facts.model, found, size) === 0;
}

export const ratingOf = ({ ratings }: Facts, link: number): number | null => ratings[link] ?? null;

export const fullOfLink = (facts: Facts, link: number): number | null => fullOf(facts, linkEdge(facts.model, link));
