/** The plan as a circuit: terminals are nodes, fittings add elements between them, the body is a node. */
import type { Conductor, FittingOf, Link, Plan, Run, TerminalRef } from '../plan/schema.ts';
import type { LengthAnswer } from './answer.ts';
import type { MarkedZone, Stretch } from './surroundings.ts';

/** A run that carries power or may be live. The label says nothing: what it is joined to does. */
export interface Cable {
  readonly run: Run;
  readonly a: number;
  readonly b: number;
  readonly length: LengthAnswer;
  readonly stretches: readonly Stretch[];
  /** Crimped and bolted joints at its ends, those left out whose resistance was measured. */
  readonly joints: number;
  /** Joints at its ends as measured, together, ohm. */
  readonly measuredOhm: number;
  /** Cables joined through pass-throughs are one cable; the index of that cable. */
  readonly group: number;
  /** What it is made of: its own, or where a run joined to it is fixed by hand, that run's. */
  readonly conductor: Conductor;
}

/**
 * A device that opens on too great a current: a fuse, a breaker, a fused output of a block, a link on a battery's post,
 * or the factory's own fuse before a take-off. `a` is its in, the bus, the post or the factory's side.
 */
export interface CircuitLink {
  readonly fitting: FittingOf<'fuse' | 'breaker' | 'block' | 'battery' | 'takeOff'>;
  /** The block output it stands in, else null. */
  readonly terminal: string | null;
  readonly link: Link;
  readonly a: number;
  readonly b: number;
  readonly zone: MarkedZone;
}

/** A fixed conductor that is no run: a ground point's contact with the body, or a battery's factory strap. */
export type Bond = { readonly a: number; readonly b: number } & (
  | { readonly kind: 'body'; readonly fitting: FittingOf<'ground'> }
  | { readonly kind: 'strap'; readonly fitting: FittingOf<'battery'> }
);

/**
 * What joins two nodes and is neither an added cable nor a device: a relay, a switch, a reducer, or a factory cable.
 * Sizing and protection take every contact as closed; one that is open in a state carries nothing there.
 */
export type Contact = { readonly a: number; readonly b: number } & (
  | { readonly kind: 'relay'; readonly fitting: FittingOf<'relay'> }
  | { readonly kind: 'switch'; readonly fitting: FittingOf<'switch'> }
  | { readonly kind: 'reducer'; readonly fitting: FittingOf<'reducer'> }
  | { readonly kind: 'factory'; readonly run: Run }
);

/** What holds a voltage: a battery, or a post or stud that stands for one elsewhere. */
export interface CircuitSource {
  readonly fitting: FittingOf<'battery' | 'jumpPost' | 'takeOff'>;
  readonly plus: number;
  readonly minus: number;
}

/** Where live cable begins that must soon meet a device. `plus` is the post or stud that the user's cable leaves. */
export interface Start {
  readonly fitting: FittingOf<'battery' | 'jumpPost' | 'takeOff' | 'alternator' | 'capacitor'>;
  readonly plus: number;
}

export interface CircuitCharger {
  readonly fitting: FittingOf<'charger'>;
  readonly input: number;
  readonly output: number;
  readonly ground: number;
}

export interface CircuitAlternator {
  readonly fitting: FittingOf<'alternator'>;
  readonly plus: number;
  readonly minus: number;
}

export interface CircuitCapacitor {
  readonly fitting: FittingOf<'capacitor'>;
  readonly plus: number;
  readonly minus: number;
}

export interface CircuitLoad {
  readonly fitting: FittingOf<'amplifier' | 'load'>;
  readonly plus: number;
  readonly minus: number;
  /** Where a remote lead ends: it may be live, and draws nothing to speak of; null where there is no such terminal. */
  readonly remote: number | null;
}

export interface Circuit {
  readonly plan: Plan;
  readonly nodes: number;
  readonly body: number;
  readonly cables: readonly Cable[];
  readonly groups: readonly (readonly number[])[];
  readonly links: readonly CircuitLink[];
  readonly bonds: readonly Bond[];
  readonly contacts: readonly Contact[];
  readonly sources: readonly CircuitSource[];
  /** The sources, in their order, then every other fitting at which live cable begins. */
  readonly starts: readonly Start[];
  readonly loads: readonly CircuitLoad[];
  readonly chargers: readonly CircuitCharger[];
  readonly alternators: readonly CircuitAlternator[];
  readonly capacitors: readonly CircuitCapacitor[];
  /** By node: the fitting and terminal it is; null for the body. */
  readonly places: readonly (TerminalRef | null)[];
  /** Node of a terminal; undefined for one that the plan does not hold. */
  nodeOf(ref: TerminalRef): number | undefined;
}

/** The amplifier a load is; null for any other load. */
export const amplifierOf = ({ fitting }: CircuitLoad): FittingOf<'amplifier'> | null =>
  fitting.kind === 'amplifier' ? fitting : null;
