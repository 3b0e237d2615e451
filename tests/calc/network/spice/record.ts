/** What ngspice answered, as it is kept in tests/fixtures/spice. */
import type { Network } from '../../../../src/calc/network/types.ts';

/** A net in short: resistors [a, b, ohm], sources [plus, minus, volts, ohm], loads [plus, minus, watts] or [plus, minus, amps, at volts]. */
export interface RecordedNet {
  readonly name: string;
  /** Constant-power loads as a share of what the net can carry. */
  readonly share: number;
  readonly nodes: number;
  readonly resistors: readonly (readonly [number, number, number])[];
  readonly sources: readonly (readonly [number, number, number, number])[];
  readonly loads: readonly (readonly [number, number, number] | readonly [number, number, number, number])[];
  /** By node, V; null where ngspice gave up. */
  readonly volts: readonly number[] | null;
}

export interface Recorded {
  readonly about: string;
  readonly madeBy: string;
  readonly nets: readonly RecordedNet[];
}

export const RECORDED_FILE = new URL('../../../fixtures/spice/operatingPoints.json', import.meta.url);

export function shorten(name: string, share: number, net: Network, volts: readonly number[] | null): RecordedNet {
  return {
    name,
    share,
    nodes: net.nodes,
    resistors: net.resistors.map(({ a, b, ohm }) => [a, b, ohm] as const),
    sources: net.sources.map(({ plus, minus, volts: emf, ohm }) => [plus, minus, emf, ohm] as const),
    loads: net.loads.map(({ plus, minus, law }) =>
      law.kind === 'power' ? ([plus, minus, law.watts] as const) : ([plus, minus, law.amps, law.atVolts] as const),
    ),
    volts,
  };
}

export function lengthen({ nodes, resistors, sources, loads }: RecordedNet): Network {
  return {
    nodes,
    resistors: resistors.map(([a, b, ohm]) => ({ a, b, ohm })),
    sources: sources.map(([plus, minus, volts, ohm]) => ({ plus, minus, volts, ohm })),
    loads: loads.map(([plus, minus, drawn, atVolts]) => ({
      plus,
      minus,
      law: atVolts === undefined ? { kind: 'power', watts: drawn } : { kind: 'current', amps: drawn, atVolts },
    })),
  };
}

/** Greatest |dv| / max(|v|, 1 mV) over all nodes. */
export const greatestGap = (ours: readonly number[], theirs: readonly number[]): number =>
  Math.max(
    ...theirs.map((volts, node) => Math.abs((ours[node] ?? Number.NaN) - volts) / Math.max(Math.abs(volts), 1e-3)),
  );

/**
 * Whether volts are a point where every current adds up: the greatest current left over at any node but those a source
 * holds, as a share of the greatest current at all.
 */
export function leftOver(net: Network, volts: readonly number[]): number {
  const at = (node: number): number => volts[node] ?? Number.NaN;
  const sums = new Array<number>(net.nodes).fill(0);
  let greatest = 0;
  const flow = (from: number, to: number, amps: number): void => {
    sums[from] = (sums[from] ?? 0) - amps;
    sums[to] = (sums[to] ?? 0) + amps;
    greatest = Math.max(greatest, Math.abs(amps));
  };
  const held = new Set<number>();
  for (const { a, b, ohm } of net.resistors) flow(a, b, (at(a) - at(b)) / ohm);
  for (const { plus, minus, volts: emf, ohm } of net.sources) {
    if (ohm > 0) flow(minus, plus, (emf - at(plus) + at(minus)) / ohm);
    else for (const node of [plus, minus]) held.add(node);
  }
  for (const { plus, minus, law } of net.loads) {
    const across = at(plus) - at(minus);
    flow(plus, minus, law.kind === 'power' ? law.watts / across : (law.amps * across) / law.atVolts);
  }
  return Math.max(...sums.map((sum, node) => (held.has(node) ? 0 : Math.abs(sum)))) / greatest;
}
