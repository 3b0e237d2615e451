import type { Network, NetworkLoad, NetworkRefused, NetworkSolved } from '../network/types.ts';
import { findStates, type StatesFound } from './activeSet.ts';
import { type LimitedSource, type LimitedState, limitedAmps, voltsAcross } from './limited.ts';

/** A current-limited DC-DC charger: its output is a limited source, its input draws the output's power / efficiency. */
export interface Charger {
  readonly input: { readonly plus: number; readonly minus: number };
  readonly output: LimitedSource;
  /** Above 0, at most 1. */
  readonly efficiency: number;
}

interface LimitedSolved {
  readonly state: LimitedState;
  readonly amps: number;
  /** Between its posts. */
  readonly volts: number;
}

interface ChargerSolved extends LimitedSolved {
  readonly inputAmps: number;
  readonly inputVolts: number;
}

export interface SuppliedSolved extends NetworkSolved {
  readonly limited: readonly LimitedSolved[];
  readonly chargers: readonly ChargerSolved[];
}

export type SuppliedResult =
  | SuppliedSolved
  | NetworkRefused
  /** noState: none was found that agrees, and not all were tried. unsettled: chargers in a circle, whose powers never agree. */
  | { readonly ok: false; readonly reason: 'noState' | 'unsettled' };

/**
 * Least resistance of a limited source: 10 uV at 100 A. With none at all two of them on one post would contradict
 * one another, or share their current in no way that is defined.
 */
const LEAST_OHM = 1e-7;
const MOST_ROUNDS = 300;
const CLOSE = 1e-9;
/** Finest share of the loads told apart where they cannot all be carried. */
const FINEST_SHARE = 1e-6;

function check(limited: readonly LimitedSource[], chargers: readonly Charger[]): void {
  const sources = [...limited, ...chargers.map(({ output }) => output)];
  const sound =
    sources.every(({ maxA }) => Number.isFinite(maxA) && maxA >= 0) &&
    chargers.every(({ efficiency }) => efficiency > 0 && efficiency <= 1);
  if (!sound) throw new RangeError('supply: a limit below 0 or an efficiency outside 0 to 1');
}

/** The net with its constant-power loads scaled, and what the chargers draw beside them. */
function drawing(network: Network, share: number, chargers: readonly Charger[], watts: readonly number[]): Network {
  const loads = network.loads.map(({ plus, minus, law }): NetworkLoad => {
    return { plus, minus, law: law.kind === 'power' ? { kind: 'power', watts: law.watts * share } : law };
  });
  const inputs = chargers.map(({ input: { plus, minus } }, index): NetworkLoad => {
    return { plus, minus, law: { kind: 'power', watts: watts[index] ?? 0 } };
  });
  return { ...network, loads: [...loads, ...inputs] };
}

type Refused = Extract<SuppliedResult, { ok: false }>;

const without = ({ refused, triedAll }: Extract<StatesFound, { ok: false }>): Refused =>
  refused ?? (triedAll ? { ok: false, reason: 'cannotCarry', largestShare: 0 } : { ok: false, reason: 'noState' });

interface Supply {
  readonly network: Network;
  readonly limited: readonly LimitedSource[];
  readonly chargers: readonly Charger[];
}

/** Which chargers have a voltage at their input before anything draws: batteries first, then chargers behind chargers. */
function awakeChargers({ network, limited, chargers }: Supply): readonly boolean[] | Refused {
  let awake = chargers.map(() => false);
  while (awake.includes(false)) {
    const outputs = chargers.flatMap(({ output }, index) => (awake[index] ? [output] : []));
    const found = findStates(drawing(network, 0, [], []), [...limited, ...outputs]);
    if (!found.ok) return without(found);
    const next = chargers.map(({ input }, index) => awake[index] === true || voltsAcross(found.solved, input) > 1e-6);
    if (next.every((is, index) => is === awake[index])) return awake;
    awake = next;
  }
  return awake;
}

interface Attempt extends Supply {
  readonly awake: readonly boolean[];
}

/** The operating point with the loads at that share: states for the power the chargers draw, then that power anew, until both agree. */
function attempt(
  { network, limited, chargers, awake }: Attempt,
  share: number,
  { thorough, start }: { readonly thorough: boolean; readonly start?: readonly LimitedState[] | undefined },
): SuppliedResult {
  const on = chargers.filter((_, index) => awake[index]);
  const sources = [...limited, ...on.map(({ output }) => output)];
  let watts = on.map(() => 0);
  let states = start;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const net = drawing(network, share, on, watts);
    const found = findStates(net, sources, { start: states, thorough });
    if (!found.ok) return without(found);
    const { solved } = found;
    states = found.states;
    const amps = limitedAmps(net, sources, states, solved);
    const next = on.map(({ output, efficiency }, index) => {
      return Math.max(0, (voltsAcross(solved, output) * (amps[limited.length + index] ?? 0)) / efficiency);
    });
    const settled = next.every((value, index) => Math.abs(value - (watts[index] ?? 0)) <= CLOSE * Math.max(1, value));
    watts = next;
    if (settled) return told({ network, limited, chargers, awake }, solved, states, amps);
  }
  return { ok: false, reason: 'unsettled' };
}

/** The solution in the terms of the net asked for. States that agree leave no saturated source without a way. */
function told(
  { network, limited, chargers, awake }: Attempt,
  solved: NetworkSolved,
  states: readonly LimitedState[],
  amps: readonly number[],
): SuppliedSolved {
  const loads = network.loads.length;
  const one = (source: LimitedSource, at: number): LimitedSolved => ({
    state: states[at] ?? 'off',
    amps: amps[at] ?? 0,
    volts: voltsAcross(solved, source),
  });
  let next = -1;
  return {
    ...solved,
    sourceAmps: solved.sourceAmps.slice(0, network.sources.length),
    loadAmps: solved.loadAmps.slice(0, loads),
    unfed: solved.unfed.filter((load) => load < loads),
    limited: limited.map((source, index) => one(source, index)),
    chargers: chargers.map(({ input, output }, index) => {
      if (awake[index]) next += 1;
      return {
        ...one(output, awake[index] ? limited.length + next : -1),
        inputAmps: awake[index] ? (solved.loadAmps[loads + next] ?? 0) : 0,
        inputVolts: voltsAcross(solved, input),
      };
    }),
  };
}

/**
 * Raises the constant-power loads from nothing, each time from the states of the share carried before, and so either
 * gets to all of them after all or tells the largest share found carried. What the solver says of the states refused
 * last is nearly always that share, so it is tried, and a little more; else the gap is halved.
 */
function raise(of: Attempt, refused: Extract<Refused, { reason: 'cannotCarry' }>): SuppliedResult {
  let carried = 0;
  let tooMuch = 1;
  let guess = refused.largestShare;
  let start: readonly LimitedState[] | undefined;
  while (tooMuch - carried > FINEST_SHARE) {
    const share = guess > carried ? guess : (carried + tooMuch) / 2;
    const result = attempt(of, share, { thorough: false, start });
    if (result.ok) {
      // a little more, once: that it is too much ends the search
      guess = share - carried > FINEST_SHARE ? share + 0.9 * FINEST_SHARE : 0;
      carried = share;
      start = [...result.limited, ...result.chargers.filter((_, index) => of.awake[index])].map(({ state }) => state);
    } else {
      guess = result.reason === 'cannotCarry' && tooMuch - share > FINEST_SHARE ? share * result.largestShare : 0;
      tooMuch = share;
    }
  }
  const all = tooMuch === 1 ? attempt(of, 1, { thorough: false, start }) : refused;
  return all.ok ? all : { ...refused, largestShare: carried };
}

/**
 * Direct-current operating point with limited sources (alternators, 0 <= I <= maxA, no reverse current) and chargers,
 * V, A, ohm, W; any number at once. Each limited source holds its voltage, or is saturated, when the posts fall and the
 * batteries carry the rest, or is off, the posts being above it. One without resistance counts as of 0.1 microohm.
 * A charger with no voltage at its input is off. A limited source without anything else that holds a voltage carries up
 * to its limit: beyond, 'cannotCarry'. Refusals as of `solveNetwork`, with the largest share of the constant-power loads
 * found carried (0 where the others alone are too much), and 'noState' or 'unsettled' where the search ends without an
 * answer. RangeError on limits below 0 or efficiencies outside 0 to 1. Source: Kirchhoff's laws.
 * 14.4 V, at most 50 A, beside a battery of 12.6 V and 10 mohm, 100 A drawn: saturated, 50 A from the battery, 12.1 V.
 */
export function solveSupplied(
  network: Network,
  limited: readonly LimitedSource[],
  chargers: readonly Charger[] = [],
): SuppliedResult {
  check(limited, chargers);
  const soft = (source: LimitedSource): LimitedSource => ({ ...source, ohm: Math.max(source.ohm, LEAST_OHM) });
  const supply = {
    network,
    limited: limited.map(soft),
    chargers: chargers.map((charger) => ({ ...charger, output: soft(charger.output) })),
  };
  const awake = awakeChargers(supply);
  if ('ok' in awake) return awake;
  const of = { ...supply, awake };
  const result = attempt(of, 1, { thorough: true });
  return result.ok || result.reason !== 'cannotCarry' ? result : raise(of, result);
}
