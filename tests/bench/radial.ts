import type { Network, NetworkLoad, Resistor } from '../../src/calc/network/types.ts';

/** Pseudo-random numbers from 0 to 1, the same in every run (a linear congruence is enough to shuffle a net). */
function numbers(): () => number {
  let state = 1;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

/**
 * A radial feed of `runs` cables from one battery held at its posts: two thirds of them branch out on the plus side, and
 * every end has a load of constant power with a ground cable of its own. The loads together ask for 1 kW; a cable
 * is the shorter the more there are.
 */
export function radialNet(runs: number): Network {
  const next = numbers();
  const feeds = Math.max(1, Math.round((runs * 2) / 3));
  const ohm = (): number => ((0.5 + next()) * 40e-3) / Math.log2(runs + 2);
  const resistors: Resistor[] = [];
  const isParent = new Uint8Array(feeds + 2);
  for (let node = 2; node < feeds + 2; node += 1) {
    const parent = 1 + Math.floor(next() * (node - 1));
    isParent[parent] = 1;
    resistors.push({ a: parent, b: node, ohm: ohm() });
  }
  let nodes = feeds + 2;
  const ends: [number, number][] = [];
  for (let node = 2; node < feeds + 2; node += 1) {
    if (isParent[node] === 1) continue;
    let minus = 0;
    if (resistors.length < runs) {
      minus = nodes;
      nodes += 1;
      resistors.push({ a: minus, b: 0, ohm: ohm() });
    }
    ends.push([node, minus]);
  }
  // what is left of the runs: cables with nothing on them yet
  while (resistors.length < runs) {
    resistors.push({ a: 2 + Math.floor(next() * feeds), b: nodes, ohm: ohm() });
    nodes += 1;
  }
  const loads = ends.map(
    ([plus, minus]): NetworkLoad => ({ plus, minus, law: { kind: 'power', watts: 1000 / ends.length } }),
  );
  return { nodes, resistors, sources: [{ plus: 1, minus: 0, volts: 12.6, ohm: 0 }], loads };
}
