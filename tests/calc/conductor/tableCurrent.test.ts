import { describe, expect, it } from 'vitest';
import { type Cable, tableCurrentA } from '../../../src/calc/conductor/tableCurrent.ts';
import { NO_WHY, type Why, whyBuilder } from '../../../src/calc/why.ts';
import { evaluateWhy } from '../evaluateWhy.ts';
import { gaugeId } from './gaugeId.ts';

const AWG_4: Cable = { gauge: gaugeId('awg:4'), material: 'copper', insulationC: 105 };

function whyOf(change: Partial<Cable>): Why {
  const builder = whyBuilder();
  tableCurrentA({ ...AWG_4, ...change }, builder);
  return builder.done('I30');
}

const symbols = (change: Partial<Cable>): string[] => whyOf(change).steps.map(({ symbol }) => symbol);

describe('bundled cable, 33 CFR 183.425 Table 5 note 2', () => {
  it.each([
    [1, 1],
    [2, 1],
    [3, 0.7],
    [4, 0.6],
    [6, 0.6],
    [7, 0.5],
    [24, 0.5],
    [25, 0.4],
  ])('%i loaded conductors: 160 A x %f', (bundled, factor) => {
    expect(tableCurrentA({ ...AWG_4, bundled }, NO_WHY)).toBeCloseTo(160 * factor, 9);
    expect(evaluateWhy(whyOf({ bundled }))).toBeCloseTo(160 * factor, 9);
  });

  it('takes every factor that applies: 4 AWG of clad wire under carpet, three together', () => {
    const change: Partial<Cable> = { material: 'cca10', carpet: true, bundled: 3 };
    expect(tableCurrentA({ ...AWG_4, ...change }, NO_WHY)).toBeCloseTo(160 * 0.793 * 0.65 * 0.7, 9);
    expect(evaluateWhy(whyOf(change))).toBeCloseTo(160 * 0.793 * 0.65 * 0.7, 9);
  });
});

describe('why of a table current names what applies and no more', () => {
  it.each<[string, Partial<Cable>, string[]]>([
    ['AWG, copper, free: the row itself', {}, ['Itable', 'I30']],
    ['in loom', { loom: true }, ['Itable', 'kWrapping', 'Icopper', 'I30']],
    ['bundled', { bundled: 3 }, ['Itable', 'kBundle', 'Icopper', 'I30']],
    ['of clad wire', { material: 'cca15' }, ['Itable', 'kMaterial', 'Icopper', 'I30']],
    ['SAE: by its area', { gauge: gaugeId('sae:4') }, ['Itable', 'Stable', 'S', 'I30']],
  ])('%s', (_, change, named) => expect(symbols(change)).toEqual(named));
});
