import { solveNetwork } from '../../../src/calc/network/solve.ts';
import type { Network, NetworkSolved } from '../../../src/calc/network/types.ts';
import type { LimitedSource, LimitedState } from '../../../src/calc/supply/limited.ts';

/** Rounding allowed in amps and volts. */
export const NEAR_A = 1e-5;
export const NEAR_V = 1e-7;

/** One without resistance is taken as of 0.1 microohm, so that two on one post have a share each. */
export const ownOhm = ({ ohm }: LimitedSource): number => Math.max(ohm, 1e-7);

export const across = ({ nodeVolts }: NetworkSolved, plus: number, minus: number): number =>
  (nodeVolts[plus] ?? Number.NaN) - (nodeVolts[minus] ?? Number.NaN);

interface Agreeing {
  readonly states: readonly LimitedState[];
  readonly solved: NetworkSolved;
}

/** Every combination of states, each checked here against the law of the sources: no search, no order. */
export function allAgreeing(net: Network, given: readonly LimitedSource[]): Agreeing[] {
  const limited = given.map((source) => ({ ...source, ohm: ownOhm(source) }));
  const kinds = ['holding', 'saturated', 'off'] as const;
  let combinations: LimitedState[][] = [[]];
  for (const _ of limited) combinations = combinations.flatMap((some) => kinds.map((kind) => [...some, kind]));
  return combinations.flatMap((states) => {
    const holding = limited.filter((_, index) => states[index] === 'holding');
    const saturated = limited.filter((_, index) => states[index] === 'saturated');
    const solved = solveNetwork({
      ...net,
      sources: [...net.sources, ...holding],
      injections: saturated.map(({ plus, minus, maxA }) => ({ from: minus, to: plus, amps: maxA })),
    });
    // a current without a way is no state
    if (!solved.ok || solved.undelivered.length > 0) return [];
    const agrees = limited.every((source, index) => {
      const below = source.volts - across(solved, source.plus, source.minus);
      if (states[index] === 'off') return below <= NEAR_V;
      if (states[index] === 'saturated') return below >= source.maxA * ownOhm(source) - NEAR_V;
      const amps = solved.sourceAmps[net.sources.length + holding.indexOf(source)] ?? Number.NaN;
      return amps >= -NEAR_A && amps <= source.maxA + NEAR_A;
    });
    return agrees ? [{ states, solved }] : [];
  });
}
