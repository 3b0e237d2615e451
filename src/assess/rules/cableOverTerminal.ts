import { type GaugeId, gauge, isGaugeId } from '../../calc/conductor/gauge.ts';
import type { Fitting, TerminalRef } from '../../plan/schema.ts';
import { terminalKey } from '../../plan/terminals.ts';
import type { Finding } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import { type Facts, sizeOf } from '../facts.ts';
import { NEAR_SIZE } from '../nearSize.ts';
import { finding, fittingPlace, ofOutput, type Rule, runPlace } from './rule.ts';

/** Fittings with a clamp that takes bare strands: what lies in it lies there together. A stud takes a lug beside another. */
const CLAMPS: ReadonlySet<Fitting['kind']> = new Set(['block', 'amplifier', 'load', 'charger', 'reducer']);

interface Ended {
  readonly ref: TerminalRef;
  readonly cables: number[];
}

/** Terminals with the cables that end there, in the order of the cables. */
function endsOf({ model: { circuit } }: Facts): Ended[] {
  const ends = new Map<string, Ended>();
  for (const [cable, { run }] of circuit.cables.entries()) {
    for (const ref of [run.from, run.to]) {
      const here = ends.get(terminalKey(ref));
      if (here === undefined) ends.set(terminalKey(ref), { ref, cables: [cable] });
      else here.cables.push(cable);
    }
  }
  return [...ends.values()];
}

/** What is told of a terminal: the largest conductor that it takes; null where nothing is. */
function takenBy(fitting: Fitting, { terminal }: TerminalRef): GaugeId | null {
  const told = fitting.kind === 'block' && terminal !== 'bus' ? fitting.outputsTake : fitting.takes;
  // a remote lead has a terminal of its own kind
  return told !== null && isGaugeId(told) && terminal !== 'remote' ? told : null;
}

const areaMm2 = (size: GaugeId): number => gauge(size).areaMm2;

/** One number of SAE and AWG is one size; across the series it is the area that counts. */
function isLarger(size: GaugeId, takes: GaugeId): boolean {
  const { awgSize } = gauge(size);
  if (awgSize !== null && awgSize === gauge(takes).awgSize) return false;
  return exceeds(areaMm2(size), NEAR_SIZE * areaMm2(takes));
}

/** A cable thicker than its terminal takes, or several that are so together in one clamp: fix. Only where it is told what it takes. */
export const cableOverTerminal: Rule = {
  id: 'cable-over-terminal',
  sensitive: false,
  check: (facts) => {
    const { plan } = facts.model;
    const told = plan.fittings.filter(
      (fitting) => fitting.takes !== null || (fitting.kind === 'block' && fitting.outputsTake !== null),
    );
    if (told.length === 0) return [];
    const byId = new Map(told.map((fitting) => [fitting.id, fitting]));
    return endsOf(facts).flatMap(({ ref, cables }): Finding[] => {
      const fitting = byId.get(ref.fittingId);
      const takes = fitting === undefined ? null : takenBy(fitting, ref);
      if (fitting === undefined || takes === null) return [];
      const sized = cables.flatMap((cable) => {
        const size = sizeOf(facts, cable);
        return size === null ? [] : [{ cable, size }];
      });
      const larger = sized.filter(({ size }) => isLarger(size, takes));
      const totalMm2 = sized.reduce((sum, { size }) => sum + areaMm2(size), 0);
      const together = sized.length > 1 && CLAMPS.has(fitting.kind) && exceeds(totalMm2, NEAR_SIZE * areaMm2(takes));
      const [first, ...rest] = larger.length > 0 ? larger : together ? sized : [];
      if (first === undefined) return [];
      const found = finding('cable-over-terminal', {
        severity: 'fix',
        places: [fittingPlace(fitting), ...[first, ...rest].map(({ cable }) => runPlace(facts, cable))],
        params: {
          terminal: ref.terminal,
          gauge: first.size,
          takes,
          cables: 1 + rest.length,
          areaMm2: larger.length > 0 ? null : totalMm2,
        },
        source: 'commonPractice',
      });
      return [ofOutput(ref.terminal, found)];
    });
  },
};
