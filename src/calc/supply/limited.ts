import { solveNetwork } from '../network/solve.ts';
import type { Network, NetworkResult, NetworkSolved, NetworkSource } from '../network/types.ts';

/**
 * A source that holds its voltage while its current stays between 0 and a limit: an alternator with its regulator and
 * its rectifier, the output of a current-limited charger.
 */
export interface LimitedSource extends NetworkSource {
  readonly maxA: number;
}

/** holding: at its voltage; saturated: at its greatest current, the posts below; off: the posts above, nothing flows. */
export type LimitedState = 'holding' | 'saturated' | 'off';

export const LIMITED_STATES: readonly LimitedState[] = ['holding', 'saturated', 'off'];

/** What may be rounding, as a share of the voltage and of 1 A and the limit. */
const ROUNDING_V = 1e-9;
const ROUNDING_A = 1e-7;

/** The net with every limited source as what its state makes of it: a source, a constant current or nothing. */
function networkIn(network: Network, limited: readonly LimitedSource[], states: readonly LimitedState[]): Network {
  const inState = (state: LimitedState): LimitedSource[] => limited.filter((_, index) => states[index] === state);
  return {
    ...network,
    sources: [...network.sources, ...inState('holding')],
    injections: [
      ...(network.injections ?? []),
      ...inState('saturated').map(({ plus, minus, maxA }) => ({ from: minus, to: plus, amps: maxA })),
    ],
  };
}

/** What the solver says of the net with the limited sources in those states. */
export function solveIn(
  network: Network,
  limited: readonly LimitedSource[],
  states: readonly LimitedState[],
): NetworkResult {
  return solveNetwork(networkIn(network, limited, states));
}

/** Current out of the plus post of each limited source, A. */
export function limitedAmps(
  { sources }: Network,
  limited: readonly LimitedSource[],
  states: readonly LimitedState[],
  { sourceAmps }: NetworkSolved,
): number[] {
  let next = sources.length;
  return limited.map(({ maxA }, index) => {
    if (states[index] === 'off') return 0;
    if (states[index] === 'saturated') return maxA;
    next += 1;
    return sourceAmps[next - 1] ?? 0;
  });
}

export const voltsAcross = (
  { nodeVolts }: Pick<NetworkSolved, 'nodeVolts'>,
  { plus, minus }: { readonly plus: number; readonly minus: number },
): number => (nodeVolts[plus] ?? 0) - (nodeVolts[minus] ?? 0);

function nextState(source: LimitedSource, state: LimitedState, amps: number, volts: number): LimitedState {
  const { maxA } = source;
  const belowV = source.volts - volts;
  const near = ROUNDING_V * Math.max(1, source.volts);
  const nearA = ROUNDING_A * Math.max(1, maxA);
  switch (state) {
    case 'holding':
      if (amps > maxA + nearA) return 'saturated';
      return amps < -nearA ? 'off' : 'holding';
    case 'saturated':
      return belowV >= maxA * source.ohm - near ? 'saturated' : 'holding';
    case 'off':
      return belowV > near ? 'holding' : 'off';
  }
}

/**
 * The state that the solution asks of each limited source: its own where the two agree. Where nothing holds a voltage,
 * the highest of those that are off there is woken, alone, so that none charges another; where all of them are saturated,
 * and their current has no way, they are asked to hold.
 */
export function statesAsked(
  network: Network,
  limited: readonly LimitedSource[],
  states: readonly LimitedState[],
  solved: NetworkSolved,
): LimitedState[] {
  const amps = limitedAmps(network, limited, states, solved);
  const stuck = new Set(solved.undelivered);
  let injection = (network.injections?.length ?? 0) - 1;
  const asked = limited.map((source, index) => {
    const state = states[index] ?? 'off';
    if (state === 'saturated') {
      injection += 1;
      if (stuck.has(injection)) return 'holding';
    }
    return nextState(source, state, amps[index] ?? 0, voltsAcross(solved, source));
  });
  const asleep = limited.filter(
    ({ plus }, index) => states[index] === 'off' && asked[index] === 'holding' && solved.dead.includes(plus),
  );
  const highest = asleep.find(({ volts }) => asleep.every((other) => other.volts <= volts));
  if (highest === undefined) return asked;
  return limited.map((source, index) => (source === highest ? 'holding' : (states[index] ?? 'off')));
}
