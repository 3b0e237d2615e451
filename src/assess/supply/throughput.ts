/** What DC-DC chargers and alternators send through the cables and devices on their ways, beside the loads. */
import { alternatorHotA } from '../../calc/supply/alternator.ts';
import type { FittingOf } from '../../plan/schema.ts';
import type { Facts } from '../facts.ts';

type Supplying = FittingOf<'charger' | 'alternator'>;

interface SupplyEnd {
  readonly fitting: Supplying;
  readonly node: number;
  readonly amps: number;
}

/** By edge. */
export interface Throughput {
  /** Of all chargers and alternators whose way it is on, together, A; 0 for most. */
  readonly amps: Float64Array;
  /** Which those are, in the order of the plan. */
  readonly by: readonly (readonly Supplying[])[];
}

/**
 * What they draw and give at their limit. A charger: output V x A / efficiency / V at the input; it runs while the
 * engine does, yet at idle the posts fall to those of the battery: the voltage at rest, unless the engine always runs.
 * 14.4 V, 30 A and 0.9 from 12.6 V: 38.1 A at the input, 30 A at the output. An alternator: hot, on the road.
 */
function endsOf({ model: { circuit, settings } }: Pick<Facts, 'model'>): SupplyEnd[] {
  const inputV = (settings.engineAlwaysRunning ? settings.chargingV : settings.restV).value;
  return [
    ...circuit.chargers.flatMap(({ fitting, input, output }): SupplyEnd[] => {
      const outputA = fitting.outputMaxA.value;
      const inputA = (fitting.outputV.value * outputA) / fitting.efficiency.value / inputV;
      return [
        { fitting, node: input, amps: inputA },
        { fitting, node: output, amps: outputA },
      ];
    }),
    ...circuit.alternators.map(({ fitting, plus }): SupplyEnd => {
      const { ratedA, idleA, hotShare } = fitting;
      const plate = { ratedA: ratedA.value, idleA: idleA?.value ?? null, hotShare: hotShare.value };
      return { fitting, node: plus, amps: alternatorHotA(plate, 'cruise') };
    }),
  ];
}

/** Those currents by edge, between each end and the source that it is joined to; in proportion to the number of edges. */
export function throughputOf(facts: Pick<Facts, 'model'>): Throughput {
  const { sides, ways } = facts.model;
  const amps = new Float64Array(sides.edges.length);
  const none: readonly Supplying[] = [];
  const by = sides.edges.map(() => none);
  const nodeA = new Float64Array(sides.at.length);
  const nodeBy = new Map<number, readonly Supplying[]>();
  const ends = endsOf(facts);
  const all = [...new Set(ends.map(({ fitting }) => fitting))];
  const join = (node: number, some: readonly Supplying[]) => {
    const known = new Set([...(nodeBy.get(node) ?? []), ...some]);
    nodeBy.set(
      node,
      all.filter((one) => known.has(one)),
    );
  };
  for (const { fitting, node, amps: current } of ends) {
    nodeA[node] = (nodeA[node] ?? 0) + current;
    join(node, [fitting]);
  }
  for (let step = ways.steps.length - 1; step >= 0; step -= 1) {
    const { edge = -1, from = -1, to = -1 } = ways.steps[step] ?? {};
    const through = nodeA[to] ?? 0;
    const supplying = nodeBy.get(to);
    if (through === 0 || supplying === undefined) continue;
    amps[edge] = through;
    by[edge] = supplying;
    nodeA[from] = (nodeA[from] ?? 0) + through;
    join(from, supplying);
  }
  return { amps, by };
}
