import { add } from './arrays.ts';
import { mergeRigid, rigidAmps } from './merge.ts';
import { branchVolts, operatingPoint } from './newton.ts';
import { type Branch, buildSystem } from './system.ts';
import type { Network, NetworkResult } from './types.ts';

/** Throws on what no plan can mean: a negative or missing number, a node outside the net. */
function check({ nodes, resistors, sources, loads }: Network): void {
  const node = (index: number): boolean => Number.isInteger(index) && index >= 0 && index < nodes;
  const amount = (value: number): boolean => Number.isFinite(value) && value >= 0;
  const sound =
    resistors.every(({ a, b, ohm }) => node(a) && node(b) && amount(ohm)) &&
    sources.every(
      ({ plus, minus, volts, ohm }) => node(plus) && node(minus) && Number.isFinite(volts) && amount(ohm),
    ) &&
    loads.every(({ plus, minus, law }) => {
      const drawn =
        law.kind === 'power' ? amount(law.watts) : amount(law.amps) && amount(law.atVolts) && law.atVolts > 0;
      return node(plus) && node(minus) && drawn;
    });
  if (!sound) throw new RangeError('network: a node outside the net, or a value that is negative or not a number');
}

/**
 * Direct-current operating point: volts at every node, amps through every element.
 * Nodal analysis with sources without resistance merged away; constant-power loads by Newton's method from no load.
 * Everything in V, A, ohm, W. Refuses, as an answer, contradicting sources and loads that cannot be carried.
 * 12 V held at the posts, 0.01 ohm, 1000 W: V = (12 + sqrt(144 - 4 x 1000 x 0.01)) / 2 = 11.099 V, 90.1 A.
 */
export function solveNetwork(network: Network): NetworkResult {
  check(network);
  const merged = mergeRigid(network);
  if ('conflict' in merged) {
    const { element, index } = merged.conflict;
    return { ok: false, reason: 'sourcesConflict', element, index };
  }
  const system = buildSystem(network, merged);
  const operating = operatingPoint(system);
  if (!operating.ok) return { ok: false, reason: 'cannotCarry', largestShare: operating.largestShare };
  const { x, fed } = operating;

  const amps = {
    resistor: new Array<number>(network.resistors.length).fill(0),
    source: new Array<number>(network.sources.length).fill(0),
    load: new Array<number>(network.loads.length).fill(0),
  };
  const leaving = new Float64Array(network.nodes);
  const carry = (branch: Branch, through: number): void => {
    amps[branch.kind][branch.index] = branch.kind === 'source' ? -through : through;
    add(leaving, branch.from, through);
    add(leaving, branch.to, -through);
  };
  for (const branch of system.linear) carry(branch, branch.siemens * branchVolts(branch, x));
  for (const branch of fed) carry(branch, branch.watts / branchVolts(branch, x));
  for (const [{ element, index }, delivered] of rigidAmps(merged.tree, leaving)) {
    amps[element][index] = element === 'source' ? delivered : -delivered;
  }

  const dead = new Set(system.dead);
  const nodeVolts = system.unknownOf.map((unknown, node) => {
    if (dead.has(node)) return 0;
    return (unknown < 0 ? 0 : (x[unknown] ?? 0)) + (system.addedVolts[node] ?? 0);
  });
  const feeding = new Set<number>(fed.map(({ index }) => index));
  const unfed = network.loads.flatMap(({ law }, index) => {
    const drawing = law.kind === 'power' ? feeding.has(index) : Math.abs(amps.load[index] ?? 0) > 1e-9 * law.amps;
    return drawing ? [] : [index];
  });
  return {
    ok: true,
    nodeVolts,
    dead: system.dead,
    resistorAmps: amps.resistor,
    sourceAmps: amps.source,
    loadAmps: amps.load,
    unfed,
  };
}
