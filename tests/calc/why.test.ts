import { describe, expect, it } from 'vitest';
import { cited, largestAtMost, NO_WHY, smallestAtLeast, whyBuilder, whyValue } from '../../src/calc/why.ts';
import { evaluateWhy } from './evaluateWhy.ts';

describe('the why builder', () => {
  it('hands back what it records, so that computing and recording are one act', () => {
    const builder = whyBuilder();
    const ohm = builder.input('R', 'ohm', 0.002, { origin: 'assumed', edit: 'settings.bodyOhm' });
    const drop = builder.step('U', 'V', 'R * 50', ohm * 50);
    expect(drop).toBe(0.1);
    const why = builder.done('U');
    expect(why.steps[0]).toEqual({
      symbol: 'R',
      unit: 'ohm',
      value: 0.002,
      origin: 'assumed',
      edit: 'settings.bodyOhm',
    });
    expect(whyValue(why)).toBe(0.1);
  });

  it('keeps a symbol recorded twice with one meaning once, and refuses two meanings', () => {
    const builder = whyBuilder();
    builder.input('I', 'A', 10);
    builder.input('I', 'A', 10);
    expect(builder.done('I').steps).toHaveLength(1);
    expect(() => builder.input('I', 'A', 11)).toThrow('two meanings');
    expect(() => builder.done('U')).toThrow('never recorded');
  });

  it('lists every input before what is worked out', () => {
    const builder = whyBuilder();
    builder.input('a', '1', 1);
    builder.step('b', '1', 'a + 1', 2);
    builder.input('c', '1', 3);
    builder.step('d', '1', 'b + c', 5);
    expect(builder.done('d').steps.map(({ symbol }) => symbol)).toEqual(['a', 'c', 'b', 'd']);
  });

  it('says of a figure out of a source no more than the source is trusted for', () => {
    expect(cited('iec60228')).toEqual({ origin: 'published', source: 'iec60228' });
    expect(cited('saeJ1127Memory')).toEqual({ origin: 'memory', source: 'saeJ1127Memory' });
    expect(cited('saeDerived')).toEqual({ source: 'saeDerived' });
  });

  it('takes over another why under a suffix, and the whole still evaluates', () => {
    const drop = (ohm: number) => {
      const builder = whyBuilder();
      builder.input('R', 'ohm', ohm);
      builder.input('RR', 'ohm', 1);
      builder.step('U', 'V', 'R * 10 + RR', ohm * 10 + 1);
      return builder.done('U');
    };
    const builder = whyBuilder();
    const feed = builder.include(drop(0.01), '_feed');
    const back = builder.include(drop(0.02), '_back');
    builder.step('Uboth', 'V', `${feed} + ${back}`, 2.3);
    const why = builder.done('Uboth');
    expect(evaluateWhy(why)).toBeCloseTo(2.3, 12);
    expect(why.steps.find(({ symbol }) => symbol === 'R_back')?.label).toBe('R');
  });

  it('refuses a symbol recorded again with another value, another unit or another formula, and no other', () => {
    const begun = () => {
      const builder = whyBuilder();
      builder.input('a', 'A', 2);
      builder.list('l', 'A', [1, 2]);
      builder.step('b', 'A', 'a + 1', 3);
      return builder;
    };
    expect(() => begun().input('a', 'V', 2)).toThrow('two meanings');
    expect(() => begun().step('b', 'A', 'a + 2', 3)).toThrow('two meanings');
    expect(() => begun().step('b', 'A', 'a + 1', 4)).toThrow('two meanings');
    expect(() => begun().list('l', 'A', [1, 3])).toThrow('two meanings');
    expect(begun().list('l', 'A', [1, 2])).toEqual([1, 2]);
    expect(begun().step('b', 'A', 'a + 1', 3)).toBe(3);
  });

  it('takes over another why as it is where no suffix is given, and keeps a label told', () => {
    const inner = whyBuilder();
    inner.input('R', 'ohm', 2, { label: 'body' });
    inner.step('U', 'V', 'R * 3', 6);
    const plain = whyBuilder();
    expect(plain.include(inner.done('U'))).toBe('U');
    expect(plain.done('U')).toEqual(inner.done('U'));
    const other = whyBuilder();
    other.include(inner.done('U'), '_2');
    expect(other.done('U_2').steps).toEqual([
      { symbol: 'R_2', unit: 'ohm', value: 2, label: 'body' },
      { symbol: 'U_2', unit: 'V', value: 6, expression: 'R_2 * 3', label: 'U' },
    ]);
  });

  it('has no single value where the result is a list or missing', () => {
    const builder = whyBuilder();
    builder.list('l', 'A', [1, 2]);
    expect(() => whyValue(builder.done('l'))).toThrow('not a number');
    expect(() => whyValue({ steps: [], result: 'x' })).toThrow('not a number');
  });

  it('computes the same without recording', () => {
    expect(NO_WHY.input('a', '1', 4)).toBe(4);
    expect(NO_WHY.list('l', 'A', [1, 2])).toEqual([1, 2]);
    expect(NO_WHY.step('b', '1', 'a + 1', 5)).toBe(5);
  });
});

describe('list functions of why expressions', () => {
  it.each([
    [[10, 15, 20], 12, 15, 10],
    [[20, 10, 15], 15, 15, 15],
    [[10, 15], 16, null, 15],
    [[10, 15], 9, 10, null],
    [[], 1, null, null],
  ])('of %j at %d: at least %s, at most %s', (list, x, least, most) => {
    expect(smallestAtLeast(list, x)).toBe(least);
    expect(largestAtMost(list, x)).toBe(most);
  });
});
