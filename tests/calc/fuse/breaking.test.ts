import { describe, expect, it } from 'vitest';
import {
  type BreakingCase,
  breakingAskedA,
  breakingAskedWhy,
  breakingVerdict,
} from '../../../src/calc/fuse/breaking.ts';
import printed from '../../fixtures/published/abycTableVA.json' with { type: 'json' };
import { evaluateWhy } from '../evaluateWhy.ts';

describe('ABYC E-11 Table V-A', () => {
  it.each(printed.rows)('$ccaA CCA: main $mainA A, branch $branchA A', ({ ccaA, mainA, branchA }) => {
    for (const cca of ccaA) {
      expect(breakingAskedA(cca, 'main')).toBe(mainA);
      expect(breakingAskedA(cca, 'branch')).toBe(branchA);
      const why = breakingAskedWhy(cca, 'main');
      expect(evaluateWhy(why)).toBe(mainA);
      expect(why.steps).toContainEqual({ symbol: 'CCA', unit: 'A', value: cca });
    }
  });
});

describe('breaking capacity', () => {
  const link: BreakingCase = { breakingA: 2000, place: 'main', totalCcaA: 600, estimateA: 1900, doubledA: 1200 };
  it.each([
    ['enough', {}],
    ['enough', { estimateA: 2000 }],
    ['belowEstimate', { estimateA: 2900, doubledA: 1700 }],
    ['belowDoubled', { estimateA: 4000, doubledA: 2100 }],
    ['belowTable', { totalCcaA: 800 }],
    ['enough', { totalCcaA: 800, place: 'branch' }],
    ['belowTable', { totalCcaA: 800, estimateA: 4000, doubledA: 3000 }],
    ['belowDoubled', { totalCcaA: null, estimateA: 4000, doubledA: 2100 }],
    ['notStated', { breakingA: null }],
    ['belowTable', { breakingA: 1000 }],
    ['enough', { breakingA: 1000, place: 'branch', estimateA: 900, doubledA: 500 }],
    // The table asks 1500 A at 600 CCA, and nothing where no lead-acid battery is joined.
    ['enough', { breakingA: 1500, estimateA: 1400, doubledA: 1000 }],
    ['enough', { totalCcaA: null, breakingA: 1000, estimateA: 900, doubledA: 500 }],
    // As much as is asked is not below it.
    ['belowEstimate', { estimateA: 2900, doubledA: 2000 }],
  ] as const)('%s: %j', (verdict, change) => {
    expect(breakingVerdict({ ...link, ...change })).toBe(verdict);
  });
});
