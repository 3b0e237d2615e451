import type { Network, NetworkRefused, NetworkResult, NetworkSolved } from '../network/types.ts';
import { LIMITED_STATES, type LimitedSource, type LimitedState, solveIn, statesAsked } from './limited.ts';

/** Up to here every combination of states may be tried: 3^3 = 27. */
const MOST_TO_EXHAUST = 3;
/** Changes of state before a way of changing them is given up; no net is known to need more than a few. */
const MOST_CHANGES = 200;

export type StatesFound =
  | { readonly ok: true; readonly states: readonly LimitedState[]; readonly solved: NetworkSolved }
  /** refused: what is said of the states tried; null where all were solved and none agreed with what they led to. */
  | { readonly ok: false; readonly refused: NetworkRefused | null; readonly triedAll: boolean };

type Agreed = Extract<StatesFound, { ok: true }>;

/** One net with one set of limited sources; what has been solved once is kept. */
class Trials {
  private readonly results = new Map<string, NetworkResult>();

  constructor(
    private readonly network: Network,
    readonly limited: readonly LimitedSource[],
  ) {}

  solve(states: readonly LimitedState[]): NetworkResult {
    const key = states.join();
    const result = this.results.get(key) ?? solveIn(this.network, this.limited, states);
    this.results.set(key, result);
    return result;
  }

  asked(states: readonly LimitedState[], solved: NetworkSolved): LimitedState[] {
    return statesAsked(this.network, this.limited, states, solved);
  }

  /** Whether a saturated source finds no way for its current: nothing else holds a voltage there. */
  isStuck({ undelivered }: NetworkSolved): boolean {
    return undelivered.some((injection) => injection >= (this.network.injections?.length ?? 0));
  }
}

type Change = (states: readonly LimitedState[], asked: readonly LimitedState[]) => LimitedState[];

/** All at once: nearly always there in two or three steps. */
const changeAll: Change = (_, asked) => [...asked];

/** The first that disagrees alone: the rule of the least index, which cannot cycle where currents only fall with voltage. */
const changeFirst: Change = (states, asked) => {
  const first = states.findIndex((state, index) => state !== asked[index]);
  return states.map((state, index) => (index === first ? (asked[index] ?? state) : state));
};

const same = (one: readonly LimitedState[], other: readonly LimitedState[]): boolean =>
  one.every((state, index) => state === other[index]);

/** Changes states until they agree with the solution, come back to where they were (null), or cannot be solved. */
function pursue(trials: Trials, start: readonly LimitedState[], change: Change): Agreed | NetworkRefused | null {
  const seen = new Set<string>();
  let refused: NetworkRefused | null = null;
  let states = start;
  while (seen.size < MOST_CHANGES && !seen.has(states.join())) {
    seen.add(states.join());
    const result = trials.solve(states);
    if (!result.ok) return result;
    const asked = trials.asked(states, result);
    if (same(asked, states)) return { ok: true, states, solved: result };
    if (trials.isStuck(result)) refused = { ok: false, reason: 'cannotCarry', largestShare: 0 };
    states = change(states, asked);
  }
  return refused;
}

const combinations = (count: number): LimitedState[][] =>
  count === 0 ? [[]] : combinations(count - 1).flatMap((some) => LIMITED_STATES.map((state) => [...some, state]));

/** Every combination of states; the first that agrees. */
function exhaust(trials: Trials): Agreed | null {
  for (const states of combinations(trials.limited.length)) {
    const solved = trials.solve(states);
    if (solved.ok && same(trials.asked(states, solved), states)) return { ok: true, states, solved };
  }
  return null;
}

/**
 * States of the limited sources that agree with the solution they lead to. From all holding (or from `start`), then from
 * all saturated, which no low voltage held can pull down, then from all off, which come in one after the other, highest
 * first, where no battery holds a voltage: first all that disagree change together, then one at a time by the least
 * index (block and single principal pivoting, Murty; Judice and Pires; from memory). Each way ends when a combination
 * comes back. Last, where asked for and for up to three sources, every combination: there an overload is certain.
 * One 14.4 V source of at most 50 A and a 12.6 V battery of 10 mohm on a load of 0.12 ohm: saturated.
 */
export function findStates(
  network: Network,
  limited: readonly LimitedSource[],
  {
    start,
    thorough = true,
  }: { readonly start?: readonly LimitedState[] | undefined; readonly thorough?: boolean } = {},
): StatesFound {
  const trials = new Trials(network, limited);
  const every = (state: LimitedState): LimitedState[] => limited.map(() => state);
  // without a battery the highest come first, so that the highest of several answers is the one found
  const first = start ?? every(network.sources.length === 0 ? 'off' : 'holding');
  let refused: NetworkRefused | null = null;
  for (const change of [changeAll, changeFirst]) {
    for (const from of [first, every('saturated'), every('off')]) {
      const found = pursue(trials, from, change);
      if (found?.ok) return found;
      refused ??= found;
    }
  }
  const all = thorough && limited.length <= MOST_TO_EXHAUST;
  return (all ? exhaust(trials) : null) ?? { ok: false, refused, triedAll: all };
}
