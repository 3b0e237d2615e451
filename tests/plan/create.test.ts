import { describe, expect, it } from 'vitest';
import { ALL_GAUGES, DEFAULT_STOCK } from '../../src/calc/conductor/gauge.ts';
import { SOURCES } from '../../src/calc/sources.ts';
import { LINK_FAMILY_IDS, linkFamily } from '../../src/calc/tables/links.ts';
import { defaultSettings, newFitting, newId, newPlan, newRun } from '../../src/plan/create.ts';
import { defaultStock, KNOWN_GAUGES } from '../../src/plan/gauges.ts';
import { openPlan } from '../../src/plan/open.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { savePlan } from '../../src/plan/save.ts';
import { type FittingKind, type Input, settingsSchema } from '../../src/plan/schema.ts';
import { terminalsOf } from '../../src/plan/terminals.ts';
import { at } from './support/samplePlan.ts';

const place = { id: 'x', name: 'X', sheetId: 'sheet', at: at(1, 1) };
const given = (input: { value: unknown }) => input.value;

describe('the calc room and the plan room hold the same lists', () => {
  it('of sizes', () => {
    expect([...KNOWN_GAUGES]).toEqual([...ALL_GAUGES]);
  });

  it('of default stock', () => {
    for (const system of ['sae', 'awg', 'mm2'] as const) expect(defaultStock(system)).toEqual(DEFAULT_STOCK[system]);
  });

  it('of link families; those on by default state what they break', () => {
    const families = settingsSchema.entries.linkFamilies.item.options;
    expect([...families].sort()).toEqual([...LINK_FAMILY_IDS].sort());
    for (const id of defaultSettings().linkFamilies) expect(linkFamily(id).breakingA).not.toBeNull();
  });
});

describe('defaultSettings', () => {
  it('are the figures of the rules', () => {
    const settings = defaultSettings();
    expect(settings).toMatchObject({
      ruleSet: 'vehicle',
      sizeSystem: 'sae',
      stock: ['sae:8', 'sae:4', 'sae:2', 'sae:1/0', 'sae:2/0', 'sae:4/0'],
      engineAlwaysRunning: false,
    });
    const { restV, chargingV, duty, dropLimit, cutOutV, bodyOhm, jointOhm, linkDropV } = settings;
    expect([restV, chargingV, duty, dropLimit, cutOutV].map(given)).toEqual([12.6, 14.4, 1 / 3, 0.03, 10.5]);
    expect([bodyOhm, jointOhm, linkDropV].map(given)).toEqual([0.001, 0.0001, 0.075]);
    const { bayC, wingC, hotC, cabinC, cargoC, underC } = settings;
    expect([bayC, wingC, hotC, cabinC, cargoC, underC].map(given)).toEqual([80, 65, 100, 50, 50, 50]);
  });

  it('on a bench the return is the board’s bar and the air is a room’s', () => {
    const bench = newPlan({ id: 'p', name: 'Bench', sheetId: 's', outline: DEFAULT_OUTLINES.bench, mirrored: false });
    expect(bench.settings.bodyOhm.value).toBe(0.0001);
    expect(bench.settings.cabinC.value).toBe(30);
    expect(bench.settings.bayC.value).toBe(80);
  });

  it('every assumed value names a source that the calc room lists', () => {
    const isInput = (value: unknown): value is Input<unknown> =>
      typeof value === 'object' && value !== null && 'origin' in value;
    const parts = [defaultSettings(), newFitting('battery', place), newFitting('amplifier', place)];
    const assumed = parts.flatMap((part): unknown[] => Object.values(part)).filter(isInput);
    expect(assumed).toHaveLength(18);
    for (const input of assumed) {
      expect(input).toMatchObject({ origin: 'assumed', source: expect.any(String) });
      expect(Object.keys(SOURCES)).toContain(input.source);
    }
  });
});

describe('newFitting', () => {
  it('a battery of unknown make: 600 A, 60 Ah, strap 0.4 m of 25 mm2 in a vehicle, none on a bench', () => {
    expect(newFitting('battery', place)).toMatchObject({
      ccaA: { value: 600, origin: 'assumed' },
      capacityAh: { value: 60, origin: 'assumed' },
      strap: { lengthM: { value: 0.4, origin: 'assumed' }, areaMm2: { value: 25, origin: 'assumed' } },
    });
    expect(newFitting('battery', place, 'bench').strap).toBeNull();
  });

  it('an amplifier tells nothing that was not told', () => {
    expect(newFitting('amplifier', place)).toMatchObject({
      ratedW: null,
      loadOhm: null,
      onboardFusesA: null,
      externalFuseMaxA: null,
      ampClass: 'D',
      efficiency: { value: 0.8, origin: 'assumed' },
      regulated: { value: true, origin: 'assumed' },
    });
  });

  it.each([
    ['battery', ['positive', 'negative']],
    ['fuse', ['in', 'out']],
    ['passThrough', ['through']],
    ['block', ['bus', 'out1', 'out2']],
    ['amplifier', ['supply', 'ground', 'remote']],
    ['ground', ['body']],
  ] satisfies [FittingKind, string[]][])(
    '%s has its terminals, stands where told and opens again',
    (kind, terminals) => {
      const fitting = newFitting(kind, { ...place, at: at(1.00004, 2) });
      expect(terminalsOf(fitting)).toEqual(terminals);
      expect(fitting).toMatchObject({ id: 'x', name: 'X', kind, zone: 'auto', locked: false, at: at(1, 2) });
      const plan = newPlan({ id: 'p', name: '', sheetId: 'sheet', outline: DEFAULT_OUTLINES.panelVan, mirrored: true });
      expect(openPlan(savePlan({ ...plan, fittings: [fitting] }))).toMatchObject({ ok: true });
    },
  );
});

describe('newRun and newId', () => {
  it('a run of any size in copper of 105 degC, assumed', () => {
    const from = { fittingId: 'a', terminal: 'out' };
    const to = { fittingId: 'b', terminal: 'in' };
    const run = newRun({ id: 'r', name: 'R', kind: 'ground', sheetId: 's', from, to, bends: [at(0.12345, 1)] });
    expect(run).toMatchObject({
      kind: 'ground',
      bends: [at(0.1235, 1)],
      tapedM: null,
      riseM: 0,
      conductor: {
        size: 'auto',
        material: { value: 'copper', origin: 'assumed' },
        insulationC: { value: 105, origin: 'assumed' },
      },
    });
  });

  it('ids are fit for a plan and differ', () => {
    const ids = Array.from({ length: 1000 }, newId);
    expect(new Set(ids).size).toBe(1000);
    for (const id of ids) expect(id).toMatch(/^[A-Za-z0-9_-]{21}$/);
  });
});
