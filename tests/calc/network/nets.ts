import fc from 'fast-check';
import type { Network, NetworkLoad, NetworkSource, Resistor } from '../../../src/calc/network/types.ts';

const ohm = fc.integer({ min: 1, max: 400 }).map((value) => value * 1e-4);
const watts = fc.integer({ min: 1, max: 30 });

const powerLoad = (plus: number, amount: number): NetworkLoad => ({
  plus,
  minus: 0,
  law: { kind: 'power', watts: amount },
});
const currentLoad = (plus: number, amps: number): NetworkLoad => ({
  plus,
  minus: 0,
  law: { kind: 'current', amps, atVolts: 12 },
});

/** Node 0 is the body, node 1 the battery's positive post; every further node hangs on an earlier one. */
function treeResistors(parents: readonly number[], ohms: readonly number[]): Resistor[] {
  return parents.map((parent, index) => ({ a: 1 + (parent % (index + 1)), b: index + 2, ohm: ohms[index] ?? 0.01 }));
}

function loadsOf(nodes: number, amounts: readonly number[]): NetworkLoad[] {
  return Array.from({ length: nodes - 2 }, (_, index) => {
    const amount = amounts[index] ?? 1;
    return amount % 4 === 0 ? currentLoad(index + 2, amount / 6) : powerLoad(index + 2, amount);
  });
}

const battery = (plus: number, ohms: number): NetworkSource => ({ plus, minus: 0, volts: 12.6, ohm: ohms });

const size = fc.integer({ min: 1, max: 12 });
const many = <T>(one: fc.Arbitrary<T>): fc.Arbitrary<T[]> => fc.array(one, { minLength: 12, maxLength: 12 });
const parents = many(fc.nat(1000));

/** Branching feeds from one battery, held at its posts or behind a resistance. */
export const trees: fc.Arbitrary<Network> = fc
  .record({ size, parents, ohms: many(ohm), watts: many(watts), inner: fc.constantFrom(0, 0.005) })
  .map(({ size: count, parents: above, ohms, watts: amounts, inner }) => ({
    nodes: count + 2,
    resistors: treeResistors(above.slice(0, count), ohms),
    sources: [battery(1, inner)],
    loads: loadsOf(count + 2, amounts),
  }));

/** Every load on a ground cable of its own, which shares a ground point with its neighbour, so that the body side drops too. */
export const grounded: fc.Arbitrary<Network> = fc
  .record({ tree: trees, ohms: many(ohm), point: ohm })
  .map(({ tree, ohms, point }) => ({
    ...tree,
    nodes: tree.nodes + tree.loads.length + 1,
    resistors: [
      ...tree.resistors,
      ...tree.loads.map((_, index) => ({
        a: tree.nodes + index,
        b: tree.nodes + tree.loads.length,
        ohm: ohms[index] ?? 0.01,
      })),
      { a: tree.nodes + tree.loads.length, b: 0, ohm: point },
    ],
    loads: tree.loads.map((load, index) => ({ ...load, minus: tree.nodes + index })),
  }));

/** Trees with a few cables more, so that rings arise. */
export const rings: fc.Arbitrary<Network> = fc
  .record({ tree: trees, chords: fc.array(fc.tuple(fc.nat(1000), fc.nat(1000), ohm), { minLength: 1, maxLength: 4 }) })
  .map(({ tree, chords }) => {
    const live = (value: number): number => 1 + (value % (tree.nodes - 1));
    const extra = chords.map(([a, b, ohms]) => ({ a: live(a), b: live(b), ohm: ohms })).filter(({ a, b }) => a !== b);
    return { ...tree, resistors: [...tree.resistors, ...extra] };
  });

/** A second battery somewhere in the net, of another voltage, behind a resistance. */
export const twoSources: fc.Arbitrary<Network> = fc
  .record({ ring: rings, at: fc.nat(1000), volts: fc.constantFrom(12, 12.6, 13), inner: ohm })
  .map(({ ring, at, volts, inner }) => ({
    ...ring,
    sources: [...ring.sources, { plus: 2 + (at % (ring.nodes - 2)), minus: 0, volts, ohm: inner }],
  }));
