/** Seeded random nets for the comparison with ngspice, loaded to a known share of what they can carry. */
import type { Network, NetworkLoad, NetworkSource, Resistor } from '../../../../src/calc/network/types.ts';
import { portShare, portsOf } from '../ports.ts';

/** Pseudo-random numbers from 0 to 1, the same on every machine (mulberry32). */
function numbersFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const KINDS = ['tree', 'grounded', 'ring', 'two sources'] as const;
/** Shares of what can be carried; past 1 both solvers must refuse. */
const SHARES = [0.3, 0.8, 0.95, 0.99, 0.999, 0.999] as const;
const BEYOND = [1.001, 1.01, 1.2, 4] as const;

export interface LoadedNet {
  readonly name: string;
  readonly share: number;
  readonly net: Network;
}

/** Figures short enough to be written down whole. */
const short = (value: number): number => Number(value.toPrecision(4));

function unloaded(kind: (typeof KINDS)[number], next: () => number): Network {
  const below = (count: number): number => Math.floor(next() * count);
  const ohm = (): number => short((0.1 + 20 * next() * next()) * 1e-3);
  const inner = (): number => (next() < 0.5 ? 0 : short(0.002 + 0.02 * next()));
  const feeds = 1 + below(24);
  // Node 0 is the minus post, node 1 the plus post.
  const resistors: Resistor[] = Array.from({ length: feeds }, (_, index) => ({
    a: 1 + below(index + 1),
    b: index + 2,
    ohm: ohm(),
  }));
  let nodes = feeds + 2;
  const fed = (): number => 1 + below(feeds + 1);
  const sources: NetworkSource[] = [{ plus: 1, minus: 0, volts: 12.6, ohm: inner() }];
  if (kind === 'ring' || kind === 'two sources') {
    for (let chords = 1 + below(3); chords > 0; chords -= 1) {
      const [a, b] = [fed(), fed()];
      if (a !== b) resistors.push({ a, b, ohm: ohm() });
    }
  }
  if (kind === 'two sources') {
    // held at its posts, the second battery must hang on a cable of its own
    resistors.push({ a: fed(), b: nodes, ohm: ohm() });
    sources.push({ plus: nodes, minus: 0, volts: [12, 12.6, 13.2][below(3)] ?? 12, ohm: inner() });
    nodes += 1;
  }
  const loads: NetworkLoad[] = [];
  const body = kind === 'tree' ? 0 : nodes;
  if (kind !== 'tree') {
    resistors.push({ a: body, b: 0, ohm: ohm() });
    nodes += 1;
  }
  for (let node = 2; node < feeds + 2; node += 1) {
    const isLast = node === feeds + 1;
    if (!isLast && next() < 0.4) continue;
    let minus = body;
    if (kind === 'grounded') {
      minus = nodes;
      resistors.push({ a: minus, b: body, ohm: ohm() });
      nodes += 1;
    }
    const draw = 1 + 30 * next();
    const powered = isLast || next() < 0.75;
    const law = powered
      ? ({ kind: 'power', watts: short(10 * draw) } as const)
      : ({ kind: 'current', amps: short(draw / 3), atVolts: 12 } as const);
    loads.push({ plus: node, minus, law });
  }
  return { nodes, resistors, sources, loads };
}

/** The net of one seed. What it can carry comes from the full port equations, not from the solver under test. */
export function loadedNet(seed: number, isBeyond: boolean): LoadedNet {
  const next = numbersFrom(seed);
  const kind = KINDS[seed % KINDS.length] ?? 'tree';
  const net = unloaded(kind, next);
  const shares = isBeyond ? BEYOND : SHARES;
  const share = shares[Math.floor(next() * shares.length)] ?? 1;
  const watts = net.loads.flatMap(({ law }) => (law.kind === 'power' ? [law.watts] : []));
  const carried = portShare(portsOf(net), watts, 1e4);
  const loads = net.loads.map((load): NetworkLoad => {
    const { law } = load;
    return law.kind === 'power'
      ? { ...load, law: { kind: 'power', watts: Number((law.watts * carried * share).toPrecision(8)) } }
      : load;
  });
  return { name: `${kind}, seed ${seed}`, share, net: { ...net, loads } };
}
