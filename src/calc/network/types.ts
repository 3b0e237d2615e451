/** Joins two nodes; amps count as positive from a to b. 0 ohm joins them outright. */
export interface Resistor {
  readonly a: number;
  readonly b: number;
  readonly ohm: number;
}

/** Holds `volts` between its posts behind `ohm`; 0 ohm: held at the posts. Amps count as positive out of plus. */
export interface NetworkSource {
  readonly plus: number;
  readonly minus: number;
  readonly volts: number;
  readonly ohm: number;
}

/** power: draws `watts` at any voltage. current: draws `amps` at `atVolts`, in proportion to the voltage elsewhere. */
type LoadLaw =
  | { readonly kind: 'power'; readonly watts: number }
  | { readonly kind: 'current'; readonly amps: number; readonly atVolts: number };

/** Amps count as positive from plus through the load to minus. */
export interface NetworkLoad {
  readonly plus: number;
  readonly minus: number;
  readonly law: LoadLaw;
}

/**
 * Draws `amps` from node `from` and delivers them into node `to`, whatever the voltage; either sign. For what is held at
 * a current limit: a saturated alternator, a current-limited charger. It joins nothing, as a load does not: its current
 * flows only where both ends stand in one part that a source reaches.
 */
export interface NetworkInjection {
  readonly from: number;
  readonly to: number;
  readonly amps: number;
}

/** A direct-current circuit over nodes 0 .. nodes-1. */
export interface Network {
  readonly nodes: number;
  readonly resistors: readonly Resistor[];
  readonly sources: readonly NetworkSource[];
  readonly loads: readonly NetworkLoad[];
  readonly injections?: readonly NetworkInjection[];
}

export interface NetworkSolved {
  readonly ok: true;
  /** Against the minus post of the first source of each connected part; 0 on dead nodes. */
  readonly nodeVolts: readonly number[];
  /** Nodes no source reaches through resistors and sources, ascending. */
  readonly dead: readonly number[];
  readonly resistorAmps: readonly number[];
  readonly sourceAmps: readonly number[];
  readonly loadAmps: readonly number[];
  /** Loads with a dead or no voltage across them, ascending: they draw 0 A. */
  readonly unfed: readonly number[];
  /** Injections, ascending, of which nothing flows: an end is dead, or the ends stand in parts that nothing joins. */
  readonly undelivered: readonly number[];
}

export type NetworkRefused =
  /** Sources held at their posts, or joined by 0 ohm, ask for two voltages at one place; which element closed the loop. */
  | {
      readonly ok: false;
      readonly reason: 'sourcesConflict';
      readonly element: 'source' | 'resistor';
      readonly index: number;
    }
  /** No operating point: the constant-power loads ask for more than the net can carry. Share of them it just carries. */
  | { readonly ok: false; readonly reason: 'cannotCarry'; readonly largestShare: number };

export type NetworkResult = NetworkSolved | NetworkRefused;
