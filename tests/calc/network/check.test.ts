import { describe, expect, it } from 'vitest';
import { checkNetwork } from '../../../src/calc/network/check.ts';
import type { Network } from '../../../src/calc/network/types.ts';

const SOUND: Network = {
  nodes: 3,
  resistors: [{ a: 0, b: 1, ohm: 0.01 }],
  sources: [{ plus: 0, minus: 2, volts: 12, ohm: 0.005 }],
  loads: [
    { plus: 1, minus: 2, law: { kind: 'power', watts: 100 } },
    { plus: 1, minus: 2, law: { kind: 'current', amps: 5, atVolts: 14.4 } },
  ],
  injections: [{ from: 2, to: 1, amps: 10 }],
};

const [resistor, source, load, injection] = [
  { a: 0, b: 1, ohm: 0.01 },
  { plus: 0, minus: 2, volts: 12, ohm: 0.005 },
  { plus: 1, minus: 2, law: { kind: 'power', watts: 100 } },
  { from: 2, to: 1, amps: 10 },
] as const;
const inProportion = (amps: number, atVolts: number): Partial<Network> => ({
  loads: [{ plus: 1, minus: 2, law: { kind: 'current', amps, atVolts } }],
});
const drawing = (watts: number): Partial<Network> => ({
  loads: [{ plus: 1, minus: 2, law: { kind: 'power', watts } }],
});

describe('a net', () => {
  it.each<[string, Partial<Network>]>([
    ['as it is', {}],
    ['with nothing in it', { resistors: [], sources: [], loads: [] }],
    ['with 0 ohm, 0 W, 0 A', { resistors: [{ ...resistor, ohm: 0 }], sources: [{ ...source, ohm: 0 }], ...drawing(0) }],
    ['with a load of 0 A', inProportion(0, 12)],
    ['with a load told at half a volt', inProportion(5, 0.5)],
    ['with a source the other way round', { sources: [{ ...source, volts: -12 }] }],
    ['with an injection the other way round', { injections: [{ ...injection, amps: -10 }] }],
  ])('%s is taken', (_name, change) => {
    expect(() => checkNetwork({ ...SOUND, ...change })).not.toThrow();
  });

  const amiss = [-1, 3, 0.5, Number.NaN];
  const noAmount = [-0.001, Number.NaN, Number.POSITIVE_INFINITY];
  it.each<[string, readonly Partial<Network>[]]>([
    ['a resistor from no node', amiss.map((a) => ({ resistors: [resistor, { ...resistor, a }] }))],
    ['a resistor to no node', amiss.map((b) => ({ resistors: [resistor, { ...resistor, b }] }))],
    ['a resistance that is none', noAmount.map((ohm) => ({ resistors: [resistor, { ...resistor, ohm }] }))],
    ['a source from no node', amiss.map((minus) => ({ sources: [source, { ...source, minus }] }))],
    ['a source to no node', amiss.map((plus) => ({ sources: [source, { ...source, plus }] }))],
    ['a source of no voltage', [Number.NaN, 1 / 0].map((volts) => ({ sources: [source, { ...source, volts }] }))],
    ['a source of no resistance', noAmount.map((ohm) => ({ sources: [source, { ...source, ohm }] }))],
    ['a load at no node', amiss.map((plus) => ({ loads: [load, { ...load, plus }] }))],
    ['a load back to no node', amiss.map((minus) => ({ loads: [load, { ...load, minus }] }))],
    ['a load of no power', noAmount.map(drawing)],
    ['a load of no current', noAmount.map((amps) => inProportion(amps, 12))],
    ['a load at no voltage', [0, ...noAmount].map((volts) => inProportion(5, volts))],
    ['an injection from no node', amiss.map((from) => ({ injections: [injection, { ...injection, from }] }))],
    ['an injection to no node', amiss.map((to) => ({ injections: [injection, { ...injection, to }] }))],
    ['an injection of no current', [Number.NaN, 1 / 0].map((amps) => ({ injections: [{ ...injection, amps }] }))],
  ])('with %s is refused', (_name, changes) => {
    for (const change of changes) expect(() => checkNetwork({ ...SOUND, ...change })).toThrow(RangeError);
  });
});
