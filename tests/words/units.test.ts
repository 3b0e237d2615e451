import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unitsOf } from '../../src/words/units.ts';

const metric = unitsOf('m', 'en');
const feet = unitsOf('ft-in', 'en');

describe('lengths for reading', () => {
  it.each([
    [0.45, '45 cm'],
    [0.178, '17.8 cm'],
    [0.9996, '1 m'],
    [1.2, '1.2 m'],
    [12.345, '12.3 m'],
    [0, '0 cm'],
  ])('%d m in metres is %s', (m, text) => {
    expect(metric.length(m)).toBe(text);
  });

  it.each([
    // 1.6129 m = 63.5 in
    [1.6129, '5 ft 3 1/2 in'],
    [0.178, '7 in'],
    // 0.45 m = 17.717 in, to the nearest eighth
    [0.45, '17 3/4 in'],
    [0.3048, '12 in'],
    [0.9144, '3 ft'],
    [0, '0 in'],
    [0.0127, '1/2 in'],
    // rounds up over the foot: 35.99 in
    [0.9142, '3 ft'],
  ])('%d m in feet and inches is %s', (m, text) => {
    expect(feet.length(m)).toBe(text);
  });

  it('a length just beyond a limit is not said as the limit itself', () => {
    expect(metric.lengthBeside(0.4504, 0.45)).toBe('0.4504 m');
    expect(metric.lengthBeside(1.2, 0.45)).toBe('1.2 m');
    expect(metric.lengthBeside(0.45, 0.45)).toBe('45 cm');
  });
});

describe('other figures', () => {
  it('gauges by their system', () => {
    expect(['sae:4', 'awg:1/0', 'mm2:25'].map(metric.gauge)).toEqual(['SAE 4', '1/0 AWG', '25 mm²']);
    expect([metric.gauge('mm2:1.5'), unitsOf('m', 'de').gauge('mm2:1.5')]).toEqual(['1.5 mm²', '1,5 mm²']);
  });

  it('each with its unit', () => {
    expect(metric.current(102.4)).toBe('102 A');
    expect(metric.current(7.55)).toBe('7.55 A');
    expect(metric.voltage(0.4)).toBe('0.40 V');
    expect(metric.percent(3.44)).toBe('3.4 %');
    expect(metric.resistance(0.001)).toBe('1 mΩ');
    expect(metric.power(1000)).toBe('1000 W');
    expect(metric.temperature(84.4)).toBe('84 °C');
  });

  it('another language brings its own decimal sign', () => {
    expect(unitsOf('m', 'de').length(1.2)).toBe('1,2 m');
  });

  it('an exact figure reads back to six figures', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 1e9, noNaN: true }), (value) => {
        return Math.abs(Number(metric.exact(value)) - value) <= Math.abs(value) * 1e-5;
      }),
    );
  });
});
