import { describe, expect, it } from 'vitest';
import { evaluateWhy } from './evaluateWhy.ts';

describe('re-evaluating a why', () => {
  it('returns the figure its inputs and expressions give', () => {
    const why = {
      steps: [
        { symbol: 'ratings', value: [10, 25, 15], unit: 'A' },
        { symbol: 'I', value: 12, unit: 'A' },
        { symbol: 'In', value: 15, unit: 'A', expression: 'smallestAtLeast(ratings, I)' },
        { symbol: 'least', value: 25, unit: 'A', expression: 'In + min(ratings)' },
      ],
      result: 'least',
    } as const;
    expect(evaluateWhy(why)).toBe(25);
  });

  it('refuses a step that shows another value than its expression gives', () => {
    const wrong = { symbol: 'b', value: 2.0001, unit: '1', expression: 'a + 1' } as const;
    const why = { steps: [{ symbol: 'a', value: 1, unit: '1' } as const, wrong], result: 'b' };
    expect(() => evaluateWhy(why)).toThrow('gives 2');
  });

  it('refuses a step that uses what was not shown before, a unit name included', () => {
    for (const expression of ['later + 1', 'S + 1', 'A']) {
      expect(() => evaluateWhy({ steps: [{ symbol: 'b', value: 2, unit: '1', expression }], result: 'b' })).toThrow();
    }
  });
});
